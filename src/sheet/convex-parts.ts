// An outline cut into convex parts: what sums of outlines are easily taken of.
import { boxCorners, boxOfPoints } from '../geometry/box.ts';
import { type GridPoint, type GridRing, ringArea } from '../geometry/grid-ring.ts';
import { triangulate } from '../geometry/polygon-clip.ts';

const turnOf = (a: GridPoint, b: GridPoint, c: GridPoint): number =>
  (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);

const isConvex = (ring: GridRing): boolean =>
  ring.every((b, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] ?? b;
    const c = ring[(i + 1) % ring.length] ?? b;
    return turnOf(a, b, c) >= 0;
  });

/** The same ring, counter-clockwise with y up. */
const counterClockwise = (ring: GridRing): GridRing => (ringArea(ring) < 0 ? [...ring].reverse() : ring);

const isSame = (p: GridPoint | undefined, q: GridPoint | undefined): boolean =>
  p?.x === q?.x && p?.y === q?.y;

/** Triangles may miss so much of an outline, as a share of its area: the grid's rounding. */
const leastMissed = 1e-9;

/**
 * Triangles that fill an outline. For some outlines the library gives none, or not all, and for the same turned by a quarter all: a
 * piece with parts left out would be laid over others.
 */
function trianglesOf(ring: GridRing): readonly GridRing[] {
  const wanted = ringArea(ring);
  for (let quarters = 0; quarters < 4; quarters++) {
    const found = triangulate(turned(ring, quarters));
    const filled = found.reduce((sum, triangle) => sum + Math.abs(ringArea(triangle)), 0);
    if (Math.abs(filled - wanted) <= leastMissed * wanted)
      return quarters === 0 ? found : found.map((triangle) => turned(triangle, 4 - quarters));
  }
  return [counterClockwise(boxRing(ring))];
}

const turned = (ring: GridRing, quarters: number): GridRing =>
  quarters === 0
    ? ring
    : turned(
        ring.map(({ x, y }) => ({ x: -y, y: x })),
        quarters - 1,
      );

/** The box around a ring: what holds all of it. */
function boxRing(ring: GridRing): GridRing {
  const { minX, minY, maxX, maxY } = boxOfPoints(ring);
  return boxCorners({ minX, minY, maxX, maxY });
}

/** Two convex rings with one common side, as one ring; undefined where they have none or it would not be convex. */
function joined(a: GridRing, b: GridRing): GridRing | undefined {
  for (let i = 0; i < a.length; i++)
    for (let j = 0; j < b.length; j++) {
      const faces = isSame(a[i], b[(j + 1) % b.length]) && isSame(a[(i + 1) % a.length], b[j]);
      if (!faces) continue;
      const around = (ring: GridRing, from: number) => [...ring.slice(from), ...ring.slice(0, from)];
      const ring = [...around(a, (i + 1) % a.length), ...around(b, (j + 1) % b.length).slice(1, -1)];
      return isConvex(ring) ? ring : undefined;
    }
  return undefined;
}

/**
 * Convex rings that fill an outline, counter-clockwise. The outline may run either way but must not cross itself.
 * Source: S. Hertel, K. Mehlhorn, Fast triangulation of simple polygons, 1983 (triangles joined while they stay
 * convex: at most four times the fewest parts), from memory.
 */
export function convexParts(outline: GridRing): readonly GridRing[] {
  const ring = counterClockwise(outline);
  if (isConvex(ring)) return [ring];
  const parts = trianglesOf(ring).map(counterClockwise);
  for (let i = 0; i < parts.length; i++)
    for (let j = i + 1; j < parts.length; j++) {
      const a = parts[i];
      const b = parts[j];
      const one = a && b ? joined(a, b) : undefined;
      if (!one) continue;
      parts[i] = one;
      parts.splice(j, 1);
      j = i;
    }
  return parts;
}
