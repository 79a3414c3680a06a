// The test piece of a cutter and of a printer: what is measured on it is typed once, and files are true from then on.
import { filmStrip } from '../../cut/drawings/film-strip.ts';
import { testPiece } from '../../cut/drawings/test-piece.ts';
import { writeSvg } from '../../deliver/write-svg.ts';
import type { Drawing } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { type Finding, look } from '../../finding.ts';
import { inMm } from '../../lengths/length.ts';
import type { WrittenPiece } from '../deliverables.ts';
import { stripLength } from '../typed/film-giving.ts';
import type { Cutter } from '../typed/material.ts';
import { correctionInWords, correctionOf, scaleLength } from '../typed/measured.ts';
import type { Job } from '../typed/resolved-job.ts';
import { forCutter } from './machine-files.ts';

export interface TestPieceInput {
  readonly cutter: Cutter;
  /** The file of the cutter, as the maker named it. */
  readonly cutterFile?: string | undefined;
  readonly printer?: Job['printer'] | undefined;
  readonly words: DrawWords;
}

export interface TestPieceDraft {
  readonly piece: WrittenPiece;
  /** The strip that tells what film gives. */
  readonly strip: WrittenPiece;
  /** What to do with it, a line each. */
  readonly lines: readonly string[];
  readonly checks: readonly Finding[];
}

export const testPieceName = 'test piece';

/** What is known of one machine's correction already. */
function stateOf(machine: string, { measured }: { readonly measured?: Cutter['measured'] }): string {
  const correction = correctionOf(measured);
  return correction
    ? `corrected for the ${machine}, ${correctionInWords(correction)}: its scales should come out at ${scaleLength} mm; to measure anew, take "measured" out first`
    : `not corrected for the ${machine}: type what you measure, "measured": { "across": ..., "up": ... }, into the ${machine}'s own file or the job`;
}

const written = (name: string, { cut, guide }: { readonly cut: Drawing; readonly guide: Drawing }) => ({
  cut: writeSvg(cut, { title: `${name}: cut`, filled: false }),
  guide: writeSvg(guide, { title: `${name}: guide`, filled: true }),
});

/** The test piece as files, for a cutter and a printer. */
export function draftTestPiece({ cutter, cutterFile, printer, words }: TestPieceInput): TestPieceDraft {
  const lines = [
    `square of 100 mm, and scales of ${scaleLength} mm: across the machine, and up along its feed`,
    'cut it, or print it at 100 %, as you do your work: the same film or paper, the same speed, loaded the same way',
    'measure each scale with a steel rule from its first line to its last, to a tenth of a mm; the square tells whether corners are right',
    stateOf('cutter', cutter),
    stateOf('printer', printer ?? {}),
  ];
  const drawn = testPiece(
    scaleLength,
    [testPieceName, ...lines, 'blades: cut away from the hand that holds, and cap them'],
    words,
  );
  const lined = { stem: 'test-piece', ...written(testPieceName, drawn) };
  const marks = [
    `film strip: cut it from the film of your work, lay it around a vessel with the pull you lay wraps with, and measure from mark to mark, ${inMm(stripLength)} drawn, with a tape; again after a day if the film shrinks`,
    'type what you measure into the film\'s own file or the job: "measured": { "laid": ... }',
  ];
  const strip = filmStrip(stripLength, marks, words);
  return {
    piece: forCutter(lined, testPieceName, cutter),
    strip: forCutter({ stem: 'film-strip', ...written('film strip', strip) }, 'film strip', cutter),
    lines: [...lines, ...marks],
    checks: bedCheck(cutter, drawn.cut, cutterFile),
  };
}

function bedCheck(
  { bed, margin }: Cutter,
  { width, height }: { readonly width: number; readonly height: number },
  file: string | undefined,
): Finding[] {
  if (!bed) return [];
  const room = [bed.across - 2 * margin, (bed.up ?? Number.POSITIVE_INFINITY) - 2 * margin];
  if (width <= (room[0] ?? 0) && height <= (room[1] ?? 0)) return [];
  const says = `reaches ${room.map((mm) => (mm === Number.POSITIVE_INFINITY ? 'any length' : inMm(mm ?? 0))).join(' by ')}, and the test piece takes ${inMm(width)} by ${inMm(height)}; cut the square alone, and type its measures with "drawn": 100`;
  return [look('sheet-too-small', { ...(file === undefined ? {} : { file }), key: 'bed' }, says)];
}
