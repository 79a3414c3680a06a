// The convex hull of a profile as its two sides, and what is farthest from each edge of a side.
import type { Point } from './point.ts';

/** The sides of a convex hull from its first point to its last: the one with the larger y, and the other. */
export interface ConvexChains {
  readonly above: readonly Point[];
  readonly below: readonly Point[];
}

/** The convex hull of points in the order of rising x. Source: Andrew's monotone chain, from memory. */
export const convexChains = (points: readonly Point[]): ConvexChains => ({
  above: chainOf(points, -1),
  below: chainOf(points, 1),
});

function chainOf(points: readonly Point[], turn: 1 | -1): Point[] {
  const chain: Point[] = [];
  for (const p of points) {
    for (;;) {
      const a = chain[chain.length - 2];
      const b = chain[chain.length - 1];
      if (!a || !b || turn * ((b.x - a.x) * (p.y - b.y) - (b.y - a.y) * (p.x - b.x)) > 0) break;
      chain.pop();
    }
    chain.push(p);
  }
  return chain;
}

/** The smallest convex outline around points in any order, closed back to its first point. */
export function hull(points: readonly Point[]): readonly Point[] {
  const { above, below } = convexChains([...points].sort((a, b) => a.x - b.x || a.y - b.y));
  return [...below.slice(0, -1), ...above.slice(1).reverse()];
}

/** An edge of one side, and the largest value any vertex of the other side has for it. */
export interface EdgeSummit {
  readonly a: Point;
  readonly b: Point;
  readonly summit: number;
}

/**
 * The edge whose summit is least; undefined where there is none. Needs a value that rises to one summit along the other
 * side, as the distance from the edge does, and a summit that only moves one way from edge to edge: it is then found by
 * walking on from the last one.
 */
export function leastSummit(
  edges: readonly Point[],
  others: readonly Point[],
  value: (a: Point, b: Point, p: Point) => number,
): EdgeSummit | undefined {
  let least: EdgeSummit | undefined;
  let at = 0;
  for (let i = 1; i < edges.length; i++) {
    const a = edges[i - 1];
    const b = edges[i];
    const other = others[at];
    if (!a || !b || !other) continue;
    let summit = value(a, b, other);
    for (const step of [1, -1]) {
      for (;;) {
        const next = others[at + step];
        const tried = next ? value(a, b, next) : -Infinity;
        if (!(tried > summit)) break;
        summit = tried;
        at += step;
      }
    }
    if (!least || summit < least.summit) least = { a, b, summit };
  }
  return least;
}
