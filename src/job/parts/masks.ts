// The mask of a job and its window: worked out, drawn, and told.

import { wrapDrawings } from '../../cut/drawings/wrap-drawing.ts';
import {
  borderOf,
  decalOnPiece,
  maskShapes,
  patternOnPiece,
  reachesPiece,
  windowShapes,
} from '../../cut/films/mask.ts';
import { writeSvg } from '../../deliver/write-svg.ts';
import { type Finding, look, note, Refused, stop } from '../../finding.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { shapeArea } from '../../geometry/measure.ts';
import { filledShapes } from '../../geometry/regions.ts';
import { pointAt } from '../../geometry/segment.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { inMm } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';
import { toldIn } from '../../lengths/told-in.ts';
import { layMotif, shapesOf } from '../../pattern/rigid/motif.ts';
import { toWall, wallBox } from '../../unroll/flat-wall.ts';
import { outline, type Template } from '../../unroll/template.ts';
import type { Draft } from '../draft.ts';
import type { MakeInput } from '../make-input.ts';
import { motifOnSheet } from '../plan/on-sheet.ts';
import { runOff } from '../plan/plan.ts';
import type { Mask } from '../typed/resolved-mask.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';
import type { Part, PartMaker } from './part.ts';

/** The mask of a piece, in the flat wall's frame. */
export interface LaidMask {
  readonly mask: Mask;
  /** What it follows as it lies on the piece and past its ends. */
  readonly onPiece: readonly Shape[];
  readonly border: Contour;
  /** mm² */
  readonly area: number;
}

const refused = (file: TypedIn, key: string, says: string) =>
  new Refused([stop('mask', typedAt(file, key), says)]);

/** What a mask follows, in the flat wall's frame: what is laid once, and a pattern that goes around. */
interface Followed {
  readonly laid: readonly Shape[];
  readonly around: readonly Shape[];
}

/** What a mask calls the pattern. */
const patternName = 'artwork';

/** What the mask follows: what it names, or all motifs; without any, the pattern. @throws Refused where there is no such thing. */
function followed({ jobFile }: MakeInput, draft: Draft, mask: Mask): Followed {
  const { motifs, plan, pattern } = draft;
  const names = [...motifs.map(({ name }) => name), ...(pattern ? [patternName] : [])];
  const unknown = (mask.follows ?? []).filter((name) => !names.includes(name));
  if (unknown.length > 0)
    throw refused(
      jobFile,
      'mask.follows',
      `${unknown.map(shown).join(', ')} is nothing that this job lays on the wall; ${names.length > 0 ? `it has ${names.join(', ')}` : 'give it artwork, items or lettering'}`,
    );
  const some = motifs.filter(({ name }) => mask.follows?.includes(name) ?? true);
  const laid = some
    .map((placed) => motifOnSheet(placed, plan.lengths))
    .flatMap(({ motif, at, lay }) =>
      shapesOf(layMotif(motif.layers, plan.template.wall, { at, lay }).layers),
    );
  const isPattern = mask.follows?.includes(patternName) ?? motifs.length === 0;
  const around = isPattern ? (pattern?.wrap.layers ?? []).flatMap(({ shapes }) => shapes) : [];
  if (laid.length + around.length > 0) return { laid, around };
  throw refused(jobFile, 'mask', 'has nothing to follow; give the job artwork, items or lettering');
}

/** The mask of a job, undefined where it has none. @throws Refused where it can't be one piece around the wall. */
export function laidMask(input: MakeInput, drafts: readonly Draft[]): LaidMask | undefined {
  const { mask } = input.job;
  const [draft] = drafts;
  if (!mask || !draft) return undefined;
  if (drafts.length > 1 || draft.plan.template.winding)
    throw refused(
      input.jobFile,
      'mask',
      'goes around a wall in one piece; this job is cut in several, or its ends wind',
    );
  const { laid, around } = followed(input, draft, mask);
  const { template } = draft.plan;
  refuseBeside(input, template, [...laid, ...around], mask);
  if (input.blank.handle && !reachesPiece({ template, decal: [...laid, ...around], ...mask }))
    throw refused(
      input.jobFile,
      'mask',
      `follows what lies behind the handle, ${inMm(mask.standOff)} and more beside its piece; move that around the wall (at.turn)`,
    );
  const shapes = maskShapes({ template, decal: [...laid, ...around], ...mask });
  const border = borderOf(shapes);
  if (!border || shapes.length > 1) {
    const says = `does not hold together: ${inMm(mask.standOff)} ${mask.covers === 'foot' ? 'below' : 'above'} what it follows its edge reaches the ${mask.covers} edge of the band; move that away from the ${mask.covers}, make the band longer there, or let the mask come nearer (standOff)`;
    throw refused(input.jobFile, 'mask', says);
  }
  const room = mask.standOff + Math.abs(mask.window?.grow ?? 0);
  // United: of two things that overlap, across the seam too, an edge within the other is none that a window follows.
  const onPiece = united([
    ...decalOnPiece({ template, decal: laid }),
    ...patternOnPiece({ template, decal: around }, room),
  ]);
  return { mask, onPiece, border, area: shapes.reduce((sum, shape) => sum + shapeArea(shape), 0) };
}

const united = (shapes: readonly Shape[]): readonly Shape[] =>
  filledShapes(
    shapes.flatMap(({ contours }) => contours),
    'nonzero',
    chordTolerance,
  );

/** A mask whose edge nothing on the band shapes would be a plain piece of film. @throws Refused */
function refuseBeside(
  { jobFile }: MakeInput,
  { wall, band }: Template,
  decal: readonly Shape[],
  { covers, standOff }: Mask,
): void {
  const { minY: lowest, maxY: highest } = wallBox(
    decal.flatMap(({ contours }) =>
      contours.flatMap(({ segments }) =>
        segments.flatMap((s) => [0, 0.25, 0.5, 0.75].map((t) => toWall(wall, pointAt(s, t)))),
      ),
    ),
  );
  const isBeside = covers === 'lip' ? highest + standOff < band.from : lowest - standOff > band.to;
  if (!isBeside) return;
  const says = `follows what lies beside its piece: that is from ${inMm(lowest)} to ${inMm(highest)} along the wall, and the band goes from ${inMm(band.from)} to ${inMm(band.to)}; give a "band" that holds both, or lay it on this one`;
  throw refused(jobFile, 'mask', says);
}

const sideOf = ({ covers }: Mask): string => (covers === 'foot' ? 'lower' : 'upper');

function maskFinding({ mask, area }: LaidMask, input: MakeInput): Finding {
  const { covers, standOff, smooth } = mask;
  const says = `mask.cut.svg follows the ${sideOf(mask)} edge of what is laid at ${inMm(standOff)}, nowhere nearer, and covers ${(area / 100).toFixed(0)} cm² from there to the ${covers} edge${smooth > 0 ? `; where it stands up between things it is rounded to ${inMm(smooth)}` : ''}. Spray and solvents: fresh air, gloves and breathing protection that suit the product; its own sheet and your local rules come first`;
  return note('mask', typedAt(input.jobFile, 'mask'), says);
}

/** Film that is said to be a mask, where the mask is a piece beside it: what is laid would be told as sprayed over and pulled. */
const maskFilmFindings = ({ job: { film }, jobFile }: MakeInput): Finding[] =>
  film.use === 'mask'
    ? [
        look(
          'mask-film',
          typedAt(jobFile, 'film.use'),
          'is "mask", so what is laid is told to be sprayed over and pulled, and the job\'s own "mask" is cut beside it; give "decal" if what is laid stays on the wall, or leave "mask" out',
        ),
      ]
    : [];

/** The two files of a piece that goes around as the wrap does. */
function partOf(
  laid: LaidMask,
  { job, tools: { words } }: MakeInput,
  { plan, job: { seam } }: Draft,
  piece: {
    readonly stem: string;
    readonly border?: Contour;
    readonly openings?: readonly Shape[];
    readonly says: string;
    readonly where: string;
  },
): Pick<Part, 'stem' | 'cut' | 'guide' | 'sheet'> {
  const { template, flatBands } = plan;
  const { stem, border, openings = [], says, where } = piece;
  const drawn = wrapDrawings({
    template,
    ...(border ? { border } : {}),
    flatLimits: flatBands.flatMap(({ from, to }) => [from, to].map(plan.lengths.toGrown)),
    layers: openings.length > 0 ? [{ name: stem, colour: laid.mask.sprayed, shapes: openings }] : [],
    runOff,
    notes: [
      `${job.name}: ${toldIn(says, job.units)}`,
      where,
      'measure the squares before you cut: 25 mm and 1 in',
    ],
    noted: [
      {
        says: 'decal',
        shapes: laid.onPiece.map((shape, i) => ({
          ...shape,
          id: `decal-${i + 1}`,
        })),
      },
    ],
    ...(seam.style === 'overlap' ? { seamSays: 'seam: the finish lies over it' } : {}),
    words,
  });
  return {
    stem,
    cut: writeSvg(drawn.cut, { title: `${job.name}: ${stem}, cut`, filled: false }),
    guide: writeSvg(drawn.guide, { title: `${job.name}: ${stem}, guide`, filled: true }),
    sheet: {
      says,
      where,
      size: `${inMm(template.piece.to - template.piece.from)} of wall`,
      outlines: [border ?? outline(template)],
    },
  };
}

/** What the mask is called among the parts of a job. */
export const maskStem = 'mask';

/** The mask and its window, where the job has them. */
export const maskParts: PartMaker = (input, drafts) => {
  const laid = laidMask(input, drafts);
  const [draft] = drafts;
  if (!laid || !draft) return [];
  const { mask } = laid;
  const mine = partOf(laid, input, draft, {
    stem: maskStem,
    border: laid.border,
    says: `mask from the ${sideOf(mask)} edge of the decal to the ${mask.covers}`,
    where: 'lay it by the seam line and the trim line as the wrap; spray; pull it before the coat is hard',
  });
  const parts: Part[] = [{ ...mine, findings: [maskFinding(laid, input), ...maskFilmFindings(input)] }];
  if (!mask.window) return parts;
  const { grow } = mask.window;
  const openings = windowShapes(draft.plan.template, laid.onPiece, grow);
  if (openings.length === 0)
    throw refused(
      input.jobFile,
      'mask.window.grow',
      `leaves no window: ${inMm(-grow)} is more than half of what is laid is wide`,
    );
  const window = partOf(laid, input, draft, {
    stem: 'window',
    openings,
    says: `window ${inMm(Math.abs(grow))} ${grow < 0 ? 'within' : 'past'} the decal, to spray behind it`,
    where: 'lay it by the seam line as the wrap, weed the openings, spray, pull it, then lay the decal over',
  });
  return [...parts, { ...window, findings: [] }];
};
