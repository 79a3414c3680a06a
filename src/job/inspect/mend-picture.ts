// The picture of mended artwork over what it was: what was added, what was taken away, each kind of mend marked.
import type { FilmLayer } from '../../cut/checks/art-faults.ts';
import type { DrawWords } from '../../drawing/words.ts';
import type { Shape } from '../../geometry/contour.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { inMm, type Units } from '../../lengths/length.ts';
import { inspectedPicture } from '../../picture/inspected.ts';
import type { MendNote } from '../artwork/mend-art.ts';

export interface MendPictureInput {
  readonly title: string;
  /** mm */
  readonly width: number;
  readonly height: number;
  readonly before: readonly FilmLayer[];
  readonly after: readonly FilmLayer[];
  readonly notes: readonly MendNote[];
  readonly largestMove: number;
  /** Of its words. */
  readonly units: Units;
}

/** Film added and taken away, set apart from any art by being strong where the art is pale. */
const added = '#1f7a3d';
const taken = '#c0392b';

export function mendPicture(
  { title, width, height, before, after, notes, largestMove, units }: MendPictureInput,
  words: DrawWords,
): string {
  const shapesOf = (layers: readonly FilmLayer[], layer: string) =>
    layers.find(({ name }) => name === layer)?.shapes ?? [];
  const names = after.map(({ name }) => name);
  const differences = (from: readonly FilmLayer[], less: readonly FilmLayer[]) =>
    names.flatMap((name) => differenceOf(shapesOf(from, name), shapesOf(less, name)));
  const more = differences(after, before);
  const gone = differences(before, after);
  const marks = notes.flatMap(({ finding: { rule, says }, places: [first, ...again] }, i) =>
    first ? [{ number: i + 1, at: first, rule, says, again }] : [],
  );
  return inspectedPicture(
    {
      title,
      width,
      height,
      layers: [
        ...after,
        { colour: added, shapes: more, strong: true },
        { colour: taken, shapes: gone, strong: true },
      ],
      lines: [...more, ...gone].flatMap(({ contours }) => contours),
      marks,
      notes: [
        marks.length === 0
          ? 'nothing had to be mended'
          : `an edge moved by ${inMm(largestMove)} at most; film added is green with a dark edge, film taken away red on bare ground`,
      ],
    },
    words,
    units,
  );
}

/** What of areas that overlap nowhere lies outside others. Those in both are left out, as most of a mended text is: nothing else meets them. */
function differenceOf(shapes: readonly Shape[], others: readonly Shape[]): Shape[] {
  const keyOf = ({ contours }: Shape) => JSON.stringify(contours);
  const apartFrom = (some: readonly Shape[], all: readonly Shape[]) => {
    const known = new Set(all.map(keyOf));
    return some.filter((shape) => !known.has(keyOf(shape)));
  };
  return clippedShapes(apartFrom(shapes, others), apartFrom(others, shapes), 'difference', chordTolerance);
}
