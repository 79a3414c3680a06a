// What straight lines up the wall cut of a pattern before it is laid: wherever in one period they stand.
import type { Affine } from '../../geometry/affine.ts';
import type { Box } from '../../geometry/box.ts';
import type { Contour } from '../../geometry/contour.ts';
import { least, most } from '../../geometry/extremes.ts';
import type { Point } from '../../geometry/point.ts';
import { chordCount, xAt, yAt } from '../../geometry/segment.ts';
import { type Lattice, stepsIn } from '../lattice/lattice.ts';
import type { Lay } from '../lay/lay.ts';

/** One piece of a band, and how the pattern lies on it. */
export interface SeamPiece {
  readonly lay: Pick<Lay, 'around' | 'toAlong' | 'fromAlong'>;
  /** Finished, mm along the sheet. */
  readonly band: { readonly from: number; readonly to: number };
  /** How far an edge `offset` mm to the right of a line straight up the wall is from it at a height, in turns. */
  readonly beside: (offset: number, along: number) => number;
}

/** Chords stray by less than this, drawn mm: what a line cuts is told to about a tenth of a mm. */
const chordTolerance = 0.01;

/** A contour in the laid pattern: its corners, x and y in turn, and their box. */
interface Corners {
  readonly places: readonly number[];
  readonly box: Box;
}

function cornersOf({ segments }: Contour, m: Affine): Corners {
  const places: number[] = [];
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const s of segments) {
    const count = chordCount(s, chordTolerance);
    for (let i = 0; i < count; i++) {
      const [px, py] = i === 0 ? [s.from.x, s.from.y] : [xAt(s, i / count), yAt(s, i / count)];
      const x = m.a * px + m.c * py + m.e;
      const y = m.b * px + m.d * py + m.f;
      places.push(x, y);
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  return { places, box: { minX, minY, maxX, maxY } };
}

/** One period of a pattern, in the laid pattern. */
export interface FilmUp {
  /** Of each layer. */
  readonly layers: readonly (readonly Corners[])[];
  readonly steps: Lattice;
  /** Of the period around, mm. */
  readonly width: number;
}

/** A period of contours drawn by a lattice, brought into the laid pattern. */
export function filmUpOf(
  layers: readonly (readonly { readonly contour: Contour }[])[],
  { a, b }: Lattice,
  m: Affine,
  width: number,
): FilmUp {
  const linear = (p: Point): Point => ({ x: m.a * p.x + m.c * p.y, y: m.b * p.x + m.d * p.y });
  return {
    layers: layers.map((layer) => layer.map(({ contour }) => cornersOf(contour, m))),
    steps: { a: linear(a), b: linear(b) },
    width,
  };
}

/**
 * What so many lines cut of film within the finished band, mm, all layers summed: evenly over one period from turn 0 on, each an edge
 * `offset` mm beside the line up at its turn.
 */
export function filmCutUp(
  film: FilmUp,
  pieces: readonly SeamPiece[],
  lines: number,
  offset: number,
): Float64Array {
  const sums = new Float64Array(lines);
  for (const piece of pieces) for (const layer of film.layers) addFilm(sums, layer, film, piece, offset);
  return sums;
}

function addFilm(
  sums: Float64Array,
  layer: readonly Corners[],
  { steps, width }: FilmUp,
  { lay, band, beside: turnsBeside }: SeamPiece,
  offset: number,
): void {
  const [foot, lip] = [lay.fromAlong(band.from), lay.fromAlong(band.to)];
  const beside = (y: number): number =>
    lay.around * turnsBeside(offset, lay.toAlong(Math.max(foot, Math.min(lip, y))));
  const apart = width / sums.length;
  const lineAt = (x: number, y: number): number => (offset === 0 ? x : x - beside(y)) / apart;
  const shifts = [beside(foot), beside(lip)];
  const [first, last] = [least(shifts), (sums.length - 1) * apart + most(shifts)];
  const crossings = Array.from(sums, (): Crossings => ({ begins: [], ends: [] }));
  for (const { places, box } of layer) {
    const reach = {
      minX: first - box.maxX,
      minY: foot - box.maxY,
      maxX: last - box.minX,
      maxY: lip - box.minY,
    };
    for (const { at } of stepsIn(steps, reach)) cross(places, at, lineAt, crossings);
  }
  const placeOf = (y: number): number => lay.toAlong(Math.max(foot, Math.min(lip, y)));
  for (const [i, found] of crossings.entries()) sums[i] = (sums[i] ?? 0) + filled(found, placeOf);
}

/** Where edges cross a line: how high up, of those that wind one way and the other. Of numbers alone: there are millions. */
interface Crossings {
  readonly begins: number[];
  readonly ends: number[];
}

/** Tell each line, by its number, where the chords of a contour moved by a step cross it. */
function cross(
  places: readonly number[],
  step: Point,
  lineAt: (x: number, y: number) => number,
  crossings: readonly Crossings[],
): void {
  const { length } = places;
  let y0 = (places[length - 1] ?? 0) + step.y;
  let line0 = lineAt((places[length - 2] ?? 0) + step.x, y0);
  for (let i = 0; i < length; i += 2) {
    const y1 = (places[i + 1] ?? 0) + step.y;
    const line1 = lineAt((places[i] ?? 0) + step.x, y1);
    const isBegin = line0 < line1;
    // Half open, so that a corner on a line counts once.
    const past = Math.min(isBegin ? line1 : line0, crossings.length);
    for (let n = Math.max(0, Math.ceil(isBegin ? line0 : line1)); n < past; n++) {
      const found = crossings[n];
      (isBegin ? found?.begins : found?.ends)?.push(y0 + ((y1 - y0) * (n - line0)) / (line1 - line0));
    }
    [y0, line0] = [y1, line1];
  }
}

/** How much of a line lies in film; copies that lie over one another count once. */
function filled(crossings: Crossings, placeOf: (y: number) => number): number {
  const begins = Float64Array.from(crossings.begins).sort();
  const ends = Float64Array.from(crossings.ends).sort();
  let [winding, sum, from] = [0, 0, 0];
  for (let i = 0, j = 0; i < begins.length || j < ends.length; ) {
    const isBegin = i < begins.length && !((ends[j] ?? Infinity) < (begins[i] ?? 0));
    const y = (isBegin ? begins[i++] : ends[j++]) ?? 0;
    if (winding === 0) from = placeOf(y);
    winding += isBegin ? 1 : -1;
    if (winding === 0) sum += placeOf(y) - from;
  }
  return sum;
}
