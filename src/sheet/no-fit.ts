// Where one piece may not be put because another lies there: the no-fit region of two outlines.
import { type GridRing, ringsIn } from '../geometry/grid-ring.ts';
import type { Point } from '../geometry/point.ts';
import { clipPolygons } from '../geometry/polygon-clip.ts';
import { type Corners, convolution, oppositeOf } from './convolution.ts';

/**
 * A turn that keeps whole numbers whole, by the angle of the right triangle of 3, 4 and 5. Sides of sheet pieces are mostly level or plumb,
 * and where many level ones lie on each other the polygon engine now and then fills what is empty.
 */
const aslant = (ring: GridRing): GridRing => ring.map(({ x, y }) => ({ x: 3 * x - 4 * y, y: 4 * x + 3 * y }));
const upright = (ring: GridRing): readonly Point[] =>
  ring.map(({ x, y }) => ({ x: (3 * x + 4 * y) / 25, y: (3 * y - 4 * x) / 25 }));

/** The sides of a no-fit region as columns, and the box around them. */
export interface NoFit {
  readonly x0: Float64Array;
  readonly y0: Float64Array;
  readonly x1: Float64Array;
  readonly y1: Float64Array;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * Where the origin of `moving` may not be, measured from the origin of `fixed`: inside the region the two overlap, on
 * its border they touch. Holes are places where `moving` fits into a bay of `fixed`. Units: `step` a grid unit.
 * Source: the region is the sum of `fixed` and of `moving` turned by half a turn; J. A. Bennell and J. F. Oliveira, The
 * geometry of nesting problems: a tutorial, European Journal of Operational Research 184, 2008, from memory.
 */
export function noFit(fixed: Corners, moving: Corners, step: number): NoFit {
  const ways = convolution(fixed, oppositeOf(moving)).map(aslant);
  const rings = ringsIn(clipPolygons('union', ways, [], 'nonzero')).map(upright);
  const sides = rings.reduce((sum, ring) => sum + ring.length, 0);
  const x0 = new Float64Array(sides);
  const y0 = new Float64Array(sides);
  const x1 = new Float64Array(sides);
  const y1 = new Float64Array(sides);
  let at = 0;
  for (const ring of rings)
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length] ?? p;
      x0[at] = p.x * step;
      y0[at] = p.y * step;
      x1[at] = q.x * step;
      y1[at] = q.y * step;
      at++;
    });
  const least = (values: Float64Array) => values.reduce((a, b) => Math.min(a, b), Infinity);
  const most = (values: Float64Array) => values.reduce((a, b) => Math.max(a, b), -Infinity);
  return { x0, y0, x1, y1, minX: least(x0), minY: least(y0), maxX: most(x0), maxY: most(y0) };
}
