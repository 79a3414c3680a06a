// Lattices compared, and written in one way: the same places can be told by many pairs of steps.
import { distance, dot, type Point, scale, subtract } from '../../geometry/point.ts';
import { coordinates, type Lattice, step } from './lattice.ts';

const lengthOf = ({ x, y }: Point): number => Math.hypot(x, y);

/** The same lattice by its shortest steps. Source: Gauss's reduction of binary forms, from memory. */
export function reduced({ a, b }: Lattice): Lattice {
  let [short, long] = lengthOf(a) <= lengthOf(b) ? [a, b] : [b, a];
  for (;;) {
    const times = Math.round(dot(short, long) / dot(short, short));
    const rest = subtract(long, scale(short, times));
    if (lengthOf(rest) >= lengthOf(short) * (1 - 1e-9)) return { a: short, b: rest };
    [short, long] = [rest, short];
  }
}

/** `a` the step that goes more around, to the right; `b` the other, downwards. */
export function tidied({ a, b }: Lattice): Lattice {
  const slope = (p: Point) => Math.abs(p.y) / lengthOf(p);
  const turned = (p: Point, isTurned: boolean) => (isTurned ? { x: 0 - p.x, y: 0 - p.y } : p);
  // Of two that climb alike, as those of a half-drop do, the one goes up and the other down, both to the right.
  if (Math.abs(slope(a) - slope(b)) < alikeSlope) {
    const [p, q] = [turned(a, a.x < 0), turned(b, b.x < 0)];
    return p.y <= q.y ? { a: p, b: q } : { a: q, b: p };
  }
  const [around, up] = slope(a) <= slope(b) ? [a, b] : [b, a];
  return { a: turned(around, around.x < 0), b: turned(up, up.y < 0 || (up.y === 0 && up.x < 0)) };
}

const alikeSlope = 1e-4;

/** How far a step is from the nearest whole step of a lattice. */
export function offLattice(p: Point, of: Lattice): number {
  const { i, j } = coordinates(of, p);
  return distance(p, step(of, Math.round(i), Math.round(j)));
}

/** Whether every step of a lattice is a whole step of another. */
export const isMultiple = (lattice: Lattice, of: Lattice, tolerance: number): boolean =>
  [lattice.a, lattice.b].every((p) => offLattice(p, of) <= tolerance);

/** Whether two lattices are the same set of places. */
export const isSameLattice = (one: Lattice, other: Lattice, tolerance: number): boolean =>
  isMultiple(one, other, tolerance) && isMultiple(other, one, tolerance);

/** Lattices of which none is another's: the first of those that are the same is kept. */
export function distinct<L extends Lattice>(lattices: readonly L[], tolerance: number): L[] {
  const kept: L[] = [];
  for (const lattice of lattices)
    if (!kept.some((other) => isSameLattice(other, lattice, tolerance))) kept.push(lattice);
  return kept;
}
