// The edge of film as directed chords in plain columns: what widths are measured on.

import type { Contour, Shape } from '../geometry/contour.ts';
import { directed } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { norm } from '../geometry/point.ts';
import { chordCount, pointAt } from '../geometry/segment.ts';
import type { Chords } from './chord-grid.ts';

/**
 * Chords numbered through all contours. Chord k runs from its own start to the start of chord `next[k]`, along the unit
 * vector (ux, uy), and what is measured lies at its left: the normal (-uy, ux).
 */
export interface EdgeChords extends Chords {
  readonly ux: Float64Array;
  readonly uy: Float64Array;
  readonly length: Float64Array;
  readonly next: Int32Array;
  readonly before: Int32Array;
  readonly contour: Int32Array;
  /** How far along its contour a chord starts, mm. */
  readonly at: Float64Array;
  /** Length of each contour, mm, and the shape it is of. */
  readonly around: readonly number[];
  readonly shapeOf: readonly number[];
}

/** What is measured: the film itself, or the bare places between its edges. */
export type Side = 'film' | 'gap';

export interface EdgeOptions {
  readonly side: Side;
  /** Sagitta of the chords, mm. */
  readonly tolerance: number;
  /** Longest chord, mm: straight lines are parted into stretches no longer. */
  readonly longest: number;
}

/** Chords shorter than this have no direction worth the name, mm. */
const shortest = 1e-6;

/** The corners of a contour's chords; of an open one, its last place too. */
export function cornersOf(
  contour: Contour,
  { tolerance, longest }: Pick<EdgeOptions, 'tolerance' | 'longest'>,
): Point[] {
  const corners: Point[] = [];
  for (const s of contour.segments) {
    const curve = chordCount(s, tolerance);
    const reach = norm(s.to.x - s.from.x, s.to.y - s.from.y);
    const count = Math.max(curve, Math.ceil(reach / longest));
    for (let i = 0; i < count; i++) {
      const p = i === 0 ? s.from : pointAt(s, i / count);
      const last = corners.at(-1);
      if (!last || norm(p.x - last.x, p.y - last.y) > shortest) corners.push(p);
    }
  }
  const [first] = corners;
  const last = corners.at(-1);
  const finish = contour.segments.at(-1)?.to;
  if (!contour.closed && finish && last && norm(finish.x - last.x, finish.y - last.y) > shortest)
    corners.push(finish);
  if (
    contour.closed &&
    first &&
    last &&
    corners.length > 1 &&
    norm(first.x - last.x, first.y - last.y) <= shortest
  )
    corners.pop();
  return corners;
}

/** The edge of areas that overlap nowhere. */
export function edgeChords(shapes: readonly Shape[], options: EdgeOptions): EdgeChords {
  const rings = shapes
    .flatMap((shape, i) =>
      directed(shape).map((contour) => ({ ring: cornersOf(contour, options), shape: i })),
    )
    .filter(({ ring }) => ring.length > 2);
  if (options.side === 'gap') for (const { ring } of rings) ring.reverse();
  const count = rings.reduce((sum, { ring }) => sum + ring.length, 0);
  const column = () => new Float64Array(count);
  const numbers = () => new Int32Array(count);
  const chords = {
    count,
    x: column(),
    y: column(),
    toX: column(),
    toY: column(),
    ux: column(),
    uy: column(),
    length: column(),
    next: numbers(),
    before: numbers(),
    contour: numbers(),
    at: column(),
    around: [] as number[],
    shapeOf: rings.map(({ shape }) => shape),
  };
  let k = 0;
  rings.forEach(({ ring }, contour) => {
    const first = k;
    let at = 0;
    ring.forEach((p, i) => {
      const q = ring[i + 1] ?? ring[0] ?? p;
      const length = norm(q.x - p.x, q.y - p.y);
      chords.x[k] = p.x;
      chords.y[k] = p.y;
      chords.toX[k] = q.x;
      chords.toY[k] = q.y;
      chords.ux[k] = (q.x - p.x) / length;
      chords.uy[k] = (q.y - p.y) / length;
      chords.length[k] = length;
      chords.next[k] = i === ring.length - 1 ? first : k + 1;
      chords.before[k] = i === 0 ? first + ring.length - 1 : k - 1;
      chords.contour[k] = contour;
      chords.at[k] = at;
      at += length;
      k += 1;
    });
    chords.around.push(at);
  });
  return chords;
}

/** The sine of the turn at the start of a chord: below zero where the edge turns away from what is measured. */
export function turnAt({ ux, uy, before }: EdgeChords, k: number): number {
  const b = before[k] ?? 0;
  return (ux[b] ?? 0) * (uy[k] ?? 0) - (uy[b] ?? 0) * (ux[k] ?? 0);
}
