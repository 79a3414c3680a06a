// How much film a line would cut, exactly: where it crosses edges of the art, and what of it lies between.
import { BoxIndex } from '../../geometry/box-index.ts';
import { chorded } from '../../geometry/chords.ts';
import type { Shape } from '../../geometry/contour.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';

/** What a line cuts of film. */
export interface FilmCut {
  /** Stretches of the line that lie in film. */
  readonly crossings: number;
  /** Their length together, mm. */
  readonly length: number;
}

/** Touching edges leave stretches this short by rounding; they are no film, mm. */
const shortest = 0.01;

/** A line of chords that begins and ends outside of all film, and the points between which it counts. */
export interface CountedLine {
  readonly points: readonly Point[];
  readonly first: number;
  readonly last: number;
}

/** What a line cuts of the film of all layers together, between its two points. */
export function filmCut(
  { points, first, last }: CountedLine,
  layers: readonly { readonly shapes: readonly Shape[] }[],
): FilmCut {
  const chords = points.slice(1).map((to, i) => ({ from: points[i] ?? to, to }));
  const starts: number[] = [0];
  for (const { from, to } of chords) starts.push((starts.at(-1) ?? 0) + distance(from, to));
  const index = new BoxIndex(chords.length, (add) => {
    for (const { from, to } of chords)
      add(Math.min(from.x, to.x), Math.min(from.y, to.y), Math.max(from.x, to.x), Math.max(from.y, to.y));
  });
  const [from, to] = [starts[first] ?? 0, starts[last] ?? 0];
  const inFilm = layers
    .flatMap(({ shapes }) => shapes.flatMap((shape) => stretches(crossed(shape, chords, starts, index))))
    .map(([begin, end]): Stretch => [Math.max(begin, from), Math.min(end, to)])
    .filter(([begin, end]) => end > begin);
  return merged(inFilm);
}

type Stretch = readonly [number, number];

/** How far along the line the edges of a shape cross it. */
function crossed(
  { contours }: Shape,
  chords: readonly { readonly from: Point; readonly to: Point }[],
  starts: readonly number[],
  index: BoxIndex,
): number[] {
  const found: number[] = [];
  for (const contour of contours) {
    const { x, y } = chorded(contour, chordTolerance);
    for (let i = 0; i < x.length; i++) {
      const [ax, ay] = [x[i] ?? 0, y[i] ?? 0];
      const j = (i + 1) % x.length;
      const [bx, by] = [x[j] ?? 0, y[j] ?? 0];
      for (const k of index.meeting(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by))) {
        const chord = chords[k];
        if (!chord) continue;
        const { from, to } = chord;
        const side = (px: number, py: number) =>
          (to.x - from.x) * (py - from.y) - (to.y - from.y) * (px - from.x);
        const [a, b] = [side(ax, ay), side(bx, by)];
        if (a > 0 === b > 0) continue;
        const cut = { x: ax + ((bx - ax) * a) / (a - b), y: ay + ((by - ay) * a) / (a - b) };
        const length = distance(from, to);
        const at = ((cut.x - from.x) * (to.x - from.x) + (cut.y - from.y) * (to.y - from.y)) / length;
        // Half open, so that a crossing at a corner of the line counts once.
        if (at >= 0 && at < length) found.push((starts[k] ?? 0) + at);
      }
    }
  }
  return found.sort((a, b) => a - b);
}

const stretches = (at: readonly number[]): Stretch[] =>
  at.flatMap((from, i): Stretch[] => (i % 2 === 0 ? [[from, at[i + 1] ?? from]] : []));

/** Stretches of all layers as one, those that meet joined. */
function merged(all: readonly Stretch[]): FilmCut {
  const sorted = [...all].sort((a, b) => a[0] - b[0]);
  let [crossings, length, reached] = [0, 0, -Infinity];
  for (const [from, to] of sorted) {
    const begins = Math.max(from, reached);
    if (to - begins > shortest) {
      if (from > reached + shortest) crossings += 1;
      length += to - begins;
    }
    reached = Math.max(reached, to);
  }
  return { crossings, length };
}
