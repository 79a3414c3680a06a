// Where one piece may not be put because another lies there: the no-fit region of two outlines.
import type { GridPoint, GridRing } from '../geometry/grid-ring.ts';
import { clipPolygons } from '../geometry/polygon-clip.ts';
import { convexParts } from './convex-parts.ts';

/**
 * The sum of two convex rings, each counter-clockwise: every sum of a point of one and a point of the other.
 * Source: M. de Berg et al., Computational Geometry, 3rd ed. 2008, section 13.3 (edges merged by their direction).
 */
export function convexSum(a: GridRing, b: GridRing): GridRing {
  const p = fromLowest(a);
  const q = fromLowest(b);
  const sum: GridPoint[] = [];
  let i = 0;
  let j = 0;
  while (i < p.length || j < q.length) {
    const pi = p[i % p.length];
    const qj = q[j % q.length];
    const pn = p[(i + 1) % p.length];
    const qn = q[(j + 1) % q.length];
    if (!pi || !qj || !pn || !qn) break;
    sum.push({ x: pi.x + qj.x, y: pi.y + qj.y });
    const turn = (pn.x - pi.x) * (qn.y - qj.y) - (pn.y - pi.y) * (qn.x - qj.x);
    const step = i >= p.length ? -1 : j >= q.length ? 1 : turn;
    if (step >= 0) i++;
    if (step <= 0) j++;
  }
  return sum;
}

function fromLowest(ring: GridRing): GridRing {
  let at = 0;
  ring.forEach((point, i) => {
    const least = ring[at] ?? point;
    if (point.y < least.y || (point.y === least.y && point.x < least.x)) at = i;
  });
  return [...ring.slice(at), ...ring.slice(0, at)];
}

/** An outline with its convex parts, on the grid. */
export interface Parts {
  readonly parts: readonly GridRing[];
  /** The same turned by half a turn about the origin. */
  readonly opposite: readonly GridRing[];
}

export function partsOf(outline: GridRing): Parts {
  const parts = convexParts(outline);
  return { parts, opposite: parts.map((ring) => ring.map(({ x, y }) => ({ x: -x, y: -y }))) };
}

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
export function noFit(fixed: Parts, moving: Parts, step: number): NoFit {
  const sums = fixed.parts.flatMap((a) => moving.opposite.map((b) => convexSum(a, b)));
  const rings =
    sums.length === 1
      ? sums
      : clipPolygons('union', sums, [], 'nonzero').flatMap(({ outer, holes }) => [outer, ...holes]);
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
