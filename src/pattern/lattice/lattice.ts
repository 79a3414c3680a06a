// The lattice of a pattern: the two steps by which it repeats.
import { type Box, boxCorners } from '../../geometry/box.ts';
import { add, cross, type Point, scale } from '../../geometry/point.ts';

/** The pattern is the same after a step of `a` (to the next repeat around) or `b` (to the next row up). */
export interface Lattice {
  readonly a: Point;
  readonly b: Point;
}

/** How a maker states a repeat, drawn mm: `drop` moves the next repeat around up by so much, `shift` the next row around. */
export interface Repeat {
  readonly across: number;
  readonly up: number;
  readonly drop: number;
  readonly shift: number;
}

/** The lattice of a repeat, in the drawing's own frame with y down: up is negative y. */
export const latticeOf = ({ across, up, drop, shift }: Repeat): Lattice => ({
  a: { x: across, y: 0 - drop },
  b: { x: shift, y: -up },
});

/** The step of i times a and j times b. */
export const step = ({ a, b }: Lattice, i: number, j: number): Point => add(scale(a, i), scale(b, j));

/** Area of one period, mm². */
export const cellArea = ({ a, b }: Lattice): number => Math.abs(cross(a, b));

/** The numbers i, j (not whole) with i a + j b = p. Needs a lattice of some area. */
export const coordinates = (lattice: Lattice, p: Point): { readonly i: number; readonly j: number } => {
  const area = cross(lattice.a, lattice.b);
  return { i: cross(p, lattice.b) / area, j: cross(lattice.a, p) / area };
};

/** The greatest common divisor; of 0 and n it is n. */
export const gcd = (n: number, m: number): number => (m === 0 ? Math.abs(n) : gcd(m, n % m));

/** A whole pair (i, j) and its step. */
export interface LatticeStep {
  readonly i: number;
  readonly j: number;
  readonly at: Point;
}

/** Every whole pair (i, j) whose step lies in the box, with a margin of rounding. */
export function stepsIn(lattice: Lattice, box: Box): readonly LatticeStep[] {
  let [firstI, lastI, firstJ, lastJ] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const corner of boxCorners(box)) {
    const { i, j } = coordinates(lattice, corner);
    firstI = Math.min(firstI, i);
    lastI = Math.max(lastI, i);
    firstJ = Math.min(firstJ, j);
    lastJ = Math.max(lastJ, j);
  }
  const steps: LatticeStep[] = [];
  for (let j = Math.ceil(firstJ - rounding); j <= lastJ + rounding; j++)
    for (let i = Math.ceil(firstI - rounding); i <= lastI + rounding; i++) {
      const at = step(lattice, i, j);
      const inside = at.x >= box.minX && at.x <= box.maxX && at.y >= box.minY && at.y <= box.maxY;
      // Rounding up a hair under nought gives minus nought; a count has no such thing.
      if (inside) steps.push({ i: i + 0, j: j + 0, at });
    }
  return steps;
}

/** What a whole number may be missed by, by rounding. */
const rounding = 1e-9;
