// A lattice settled on all copies that a drawing shows, by least squares.

import type { Point } from '../../geometry/point.ts';
import type { Lattice } from '../lattice/lattice.ts';
import type { LandmarkMap } from './landmark-map.ts';

/** The lattice that all copies in the crop agree on best: least squares over every pair, near and far. */
export function settledLattice(map: LandmarkMap, lattice: Lattice): Lattice {
  let settled = lattice;
  // Far copies are only found once the near ones have made the steps exact.
  for (const reach of [1, 3, 10, 30]) {
    const pairs = map.pairs(settled, reach);
    settled = fitted(pairs) ?? settled;
  }
  return settled;
}

interface Pair {
  readonly i: number;
  readonly j: number;
  readonly by: Point;
}

/** Least squares of by = i a + j b. */
function fitted(pairs: readonly Pair[]): Lattice | undefined {
  let [ii, ij, jj] = [0, 0, 0];
  const [ix, jx, iy, jy] = pairs.reduce(
    ([ax, bx, ay, by], { i, j, by: step }) => {
      ii += i * i;
      ij += i * j;
      jj += j * j;
      return [ax + i * step.x, bx + j * step.x, ay + i * step.y, by + j * step.y];
    },
    [0, 0, 0, 0],
  );
  const determinant = ii * jj - ij * ij;
  if (determinant <= 1e-9 * ii * jj || ix === undefined || jx === undefined) return undefined;
  const solve = (p: number, q: number): readonly [number, number] => [
    (p * jj - q * ij) / determinant,
    (q * ii - p * ij) / determinant,
  ];
  const [ax, bx] = solve(ix, jx);
  const [ay, by] = solve(iy ?? 0, jy ?? 0);
  return { a: { x: ax, y: ay }, b: { x: bx, y: by } };
}
