// The edge of film as directed chords in plain columns: what widths are measured on.

import type { Contour, Shape } from '../../geometry/contour.ts';
import { directed } from '../../geometry/measure.ts';
import { norm } from '../../geometry/point.ts';
import { chordCount, xAt, yAt } from '../../geometry/segment.ts';
import type { Chords } from './chord-grid.ts';

/**
 * Chords numbered through all contours. Chord k runs from its own start to the start of chord `next[k]`, along the unit
 * vector (ux, uy), and what is measured lies at its left: the normal (-uy, ux).
 */
export interface EdgeChords extends Chords {
  readonly side: Side;
  readonly ux: Float64Array;
  readonly uy: Float64Array;
  readonly length: Float64Array;
  /** The sine of the turn at the start of each: below zero where the edge turns away from what is measured. */
  readonly turn: Float64Array;
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

/** Corners in columns: there may be millions. */
export interface Corners {
  readonly x: number[];
  readonly y: number[];
}

/** The corners of a contour's chords; of an open one, its last place too. */
export function cornersOf(
  { segments, closed }: Contour,
  { tolerance, longest }: Pick<EdgeOptions, 'tolerance' | 'longest'>,
): Corners {
  const x: number[] = [];
  const y: number[] = [];
  const isAway = (atX: number, atY: number, from: number): boolean =>
    x.length === 0 || norm(atX - (x[from] ?? 0), atY - (y[from] ?? 0)) > shortest;
  const put = (atX: number, atY: number): void => {
    if (!isAway(atX, atY, x.length - 1)) return;
    x.push(atX);
    y.push(atY);
  };
  for (const s of segments) {
    const reach = norm(s.to.x - s.from.x, s.to.y - s.from.y);
    const count = Math.max(chordCount(s, tolerance), Math.ceil(reach / longest));
    put(s.from.x, s.from.y);
    for (let i = 1; i < count; i++) put(xAt(s, i / count), yAt(s, i / count));
  }
  const finish = segments.at(-1)?.to;
  if (!closed && finish && x.length > 0) put(finish.x, finish.y);
  if (closed && x.length > 1 && !isAway(x[0] ?? 0, y[0] ?? 0, x.length - 1)) {
    x.pop();
    y.pop();
  }
  return { x, y };
}

/** The edge of areas that overlap nowhere. */
export function edgeChords(shapes: readonly Shape[], options: EdgeOptions): EdgeChords {
  const rings = shapes
    .flatMap((shape, i) =>
      directed(shape).map((contour) => ({ ring: cornersOf(contour, options), shape: i })),
    )
    .filter(({ ring }) => ring.x.length > 2);
  if (options.side === 'gap')
    for (const { ring } of rings) {
      ring.x.reverse();
      ring.y.reverse();
    }
  const count = rings.reduce((sum, { ring }) => sum + ring.x.length, 0);
  const column = () => new Float64Array(count);
  const numbers = () => new Int32Array(count);
  const [x, y, toX, toY] = [column(), column(), column(), column()];
  const [ux, uy, length, turn, at] = [column(), column(), column(), column(), column()];
  const [next, before, contour] = [numbers(), numbers(), numbers()];
  const around: number[] = [];
  let k = 0;
  for (const { ring } of rings) {
    const first = k;
    const last = ring.x.length - 1;
    let run = 0;
    for (let i = 0; i <= last; i++, k++) {
      const then = i === last ? 0 : i + 1;
      const [px, py, qx, qy] = [ring.x[i] ?? 0, ring.y[i] ?? 0, ring.x[then] ?? 0, ring.y[then] ?? 0];
      const own = norm(qx - px, qy - py);
      x[k] = px;
      y[k] = py;
      toX[k] = qx;
      toY[k] = qy;
      ux[k] = (qx - px) / own;
      uy[k] = (qy - py) / own;
      length[k] = own;
      next[k] = first + then;
      before[k] = i === 0 ? first + last : k - 1;
      contour[k] = around.length;
      at[k] = run;
      run += own;
    }
    around.push(run);
  }
  for (k = 0; k < count; k++) {
    const b = before[k] ?? 0;
    turn[k] = (ux[b] ?? 0) * (uy[k] ?? 0) - (uy[b] ?? 0) * (ux[k] ?? 0);
  }
  const shapeOf = rings.map(({ shape }) => shape);
  const { side } = options;
  return { side, count, x, y, toX, toY, ux, uy, length, turn, next, before, contour, at, around, shapeOf };
}
