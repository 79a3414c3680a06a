// The convolution of two outlines: what goes around their sum, every sum of a point of one and a point of the other.
import { type GridPoint, type GridRing, ringArea } from '../geometry/grid-ring.ts';
import { add, cross, type Point, subtract } from '../geometry/point.ts';

/** A corner of an outline that is gone around counter-clockwise. */
interface Corner {
  readonly at: GridPoint;
  /** The side that leads to it, and the one that leads on. */
  readonly into: Point;
  readonly out: Point;
  readonly isConvex: boolean;
}

/** An outline by the corners at which it turns. */
export type Corners = readonly Corner[];

/** What stands twice in a row and what does not turn, or turns straight back, encloses nothing. */
function turningOnly(ring: GridRing): GridRing {
  const before = (all: GridRing, i: number, point: GridPoint) =>
    all[(i + all.length - 1) % all.length] ?? point;
  const after = (all: GridRing, i: number, point: GridPoint) => all[(i + 1) % all.length] ?? point;
  const once = ring.filter((q, i) => {
    const p = before(ring, i, q);
    return p.x !== q.x || p.y !== q.y;
  });
  const left = once.filter(
    (q, i) => cross(subtract(q, before(once, i, q)), subtract(after(once, i, q), q)) !== 0,
  );
  return left.length === ring.length ? ring : turningOnly(left);
}

/** The corners of an outline on the grid, which may run either way but must not cross itself. */
export function cornersOf(outline: GridRing): Corners {
  const turning = turningOnly(outline);
  const ring = ringArea(turning) < 0 ? [...turning].reverse() : turning;
  return ring.map((at, i) => {
    const into = subtract(at, ring[(i + ring.length - 1) % ring.length] ?? at);
    const out = subtract(ring[(i + 1) % ring.length] ?? at, at);
    return { at, into, out, isConvex: cross(into, out) > 0 };
  });
}

/** The same turned by half a turn about the origin. */
export const oppositeOf = (corners: Corners): Corners =>
  corners.map(({ at, into, out, isConvex }) => ({
    at: { x: -at.x, y: -at.y },
    into: { x: -into.x, y: -into.y },
    out: { x: -out.x, y: -out.y },
    isConvex,
  }));

/** Whether a corner turns past a direction; of the two ends of its turn, counter-clockwise, the first or the last counts. */
function turnsPast({ into, out, isConvex }: Corner, direction: Point, counts: 'first' | 'last'): boolean {
  const fromFirst = cross(isConvex ? into : out, direction);
  const toLast = cross(direction, isConvex ? out : into);
  return counts === 'first' ? fromFirst >= 0 && toLast > 0 : fromFirst > 0 && toLast >= 0;
}

/**
 * Closed ways around the sum of two outlines, which go around each of its points at least once and around no other: the sides of each are
 * carried past the corners of the other that turn past their direction, backwards where that corner turns to the right.
 * A side that goes the way of one of the other's is taken as turned by a hair against it, one way throughout, so that the ways close.
 * Source: L. Guibas, L. Ramshaw, J. Stolfi, A kinetic framework for computational geometry, 24th Symposium on Foundations of Computer
 * Science, 1983 (convolution: what it goes around a point is how many parts the one outline and the other, turned and moved there, have in common),
 * from memory.
 */
export function convolution(a: Corners, b: Corners): readonly GridRing[] {
  const onward: number[][] = Array.from({ length: a.length * b.length }, () => []);
  const place = (i: number, j: number) => (i % a.length) * b.length + (j % b.length);
  const carry = (from: number, to: number, isForward: boolean) =>
    isForward ? onward[from]?.push(to) : onward[to]?.push(from);
  a.forEach((p, i) => {
    b.forEach((q, j) => {
      if (turnsPast(q, p.out, 'first')) carry(place(i, j), place(i + 1, j), q.isConvex);
      if (turnsPast(p, q.out, 'last')) carry(place(i, j), place(i, j + 1), p.isConvex);
    });
  });
  const ways: GridRing[] = [];
  onward.forEach((_, start) => {
    const way: GridPoint[] = [];
    for (let at = onward[start]?.pop(); at !== undefined; at = onward[at]?.pop()) {
      const [p, q] = [a[Math.floor(at / b.length)], b[at % b.length]];
      if (p && q) way.push(add(p.at, q.at));
    }
    if (way.length > 0) ways.push(way);
  });
  return ways;
}
