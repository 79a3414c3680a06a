// Words laid on the pattern or over other words: letters that lie half on film and half beside it are hard to read, and nothing else would say so.
import { type Finding, note } from '../../finding.ts';
import { boxAround, boxesMeet } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import { boxedShapes, filmAlong, type Stretch, uncovered } from '../../pattern/film/film-along.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import { motifOnPiece, shapesOf } from '../../pattern/rigid/motif.ts';
import type { MakeInput } from '../make-input.ts';
import { motifOnSheet } from '../plan/on-sheet.ts';
import { type Plan, runOff } from '../plan/plan.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';
import { typedAt } from '../typed/typed-at.ts';

/** So many level lines are looked along, evenly up the words. */
const lines = 15;

/** Letters of which less than this lies on film, or beside it, are read all the same: a share. Ours. */
const readable = 0.05;

/** Words of which less than this lies on others only touch them: a share. Ours. */
const touching = 0.005;

const rightwards = { x: 1, y: 0 };

const lengthOf = (stretches: readonly Stretch[]): number =>
  stretches.reduce((sum, { from, to }) => sum + to.at - from.at, 0);

/** How much of the area of shapes lies on that of others, as a share; found along level lines. */
export function shareOn(shapes: readonly Shape[], under: readonly Shape[]): number {
  const [own, others] = [boxedShapes(shapes), boxedShapes(under)];
  const box = boxAround(own.map((one) => one.box));
  let [all, beside] = [0, 0];
  for (let i = 0; i < lines; i++) {
    const through = { x: 0, y: box.minY + ((i + 0.5) / lines) * (box.maxY - box.minY) };
    const along = filmAlong(own, through, rightwards);
    all += lengthOf(along);
    beside += lengthOf(uncovered(along, filmAlong(others, through, rightwards)));
  }
  return all === 0 ? 0 : 1 - beside / all;
}

/** Words cut with the wrap that nothing sets apart from the pattern: neither room around them nor a film under them. */
const isBare = ({ isApart, clear, told, motif }: PlacedMotif): boolean =>
  told.text !== undefined && !isApart && clear === undefined && motif.layers.length === 1;

/** The outlines of a motif on a piece, of all its layers or of these. */
function outlinesOn(
  { template, lengths }: Pick<Plan, 'template' | 'lengths'>,
  placed: PlacedMotif,
  layers: readonly WrapLayer[] = placed.motif.layers,
): readonly Shape[] {
  const onSheet = motifOnSheet(placed, lengths);
  return shapesOf(motifOnPiece({ ...placed.motif, layers }, template, onSheet, runOff));
}

/** Findings `words-on-words`, one a pair of texts whose letters lie over one another, whatever films are under them. */
export function wordsOnWords(
  { jobFile }: Pick<MakeInput, 'jobFile'>,
  motifs: readonly PlacedMotif[],
  plan: Pick<Plan, 'template' | 'lengths'>,
): Finding[] {
  const texts = motifs.filter(({ told }) => told.text !== undefined);
  if (texts.length < 2) return [];
  const words = texts.flatMap((placed) => {
    // The topmost layer is the letters.
    const letters = outlinesOn(plan, placed, placed.motif.layers.slice(-1));
    const box = boxAround(boxedShapes(letters).map((one) => one.box));
    return letters.length > 0 ? [{ placed, letters, box }] : [];
  });
  return words.flatMap((under, i) =>
    words.slice(i + 1).flatMap(({ placed, letters, box }) => {
      const share = boxesMeet(box, under.box) ? shareOn(letters, under.letters) : 0;
      if (share < touching) return [];
      const says = `${placed.says} lies over ${under.placed.says} (${Math.max(1, Math.round(share * 100))} % of its letters); move one of them, or make it smaller, unless that is meant`;
      return [{ ...note('words-on-words', typedAt(jobFile, placed.key, placed.at), says), size: share }];
    }),
  );
}

/** Findings `words-on-pattern`, one a text, of a piece and the pattern on it. */
export function wordsOnPattern(
  { jobFile }: Pick<MakeInput, 'jobFile'>,
  motifs: readonly PlacedMotif[],
  plan: Plan,
  pattern: readonly WrapLayer[],
): Finding[] {
  const under = shapesOf(pattern);
  return motifs.filter(isBare).flatMap((placed) => {
    const letters = outlinesOn(plan, placed);
    if (letters.length === 0) return [];
    const share = shareOn(letters, under);
    if (share < readable || share > 1 - readable) return [];
    const says = `${placed.says} lies half on the pattern and half beside it (${Math.round(share * 100)} % of it on film), which is hard to read; "clear": 2 takes the pattern away around it, "backing" puts a film under it`;
    return [{ ...note('words-on-pattern', typedAt(jobFile, placed.key, placed.at), says), size: share }];
  });
}
