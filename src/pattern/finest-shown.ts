// The finest lattice that a crop shows within one by which all of it recurs.
import { add, type Point } from '../geometry/point.ts';
import type { Size } from './cut-shapes.ts';
import type { FilmScan } from './film-scan.ts';
import { finestLattice } from './finest-lattice.ts';
import { explained, fewLines, leastStep, overlapOf, shareOf } from './held-steps.ts';
import { type Lattice, step } from './lattice.ts';

/** Fewer places than this that should recur prove nothing. */
const leastExpected = 6;

/**
 * Undefined where there is none finer. Copies whose nodes were drawn otherwise have no landmarks in common, so that no step between them
 * is found by these.
 */
export function finestShown(scan: FilmScan, within: Lattice, crop: Size): Lattice | undefined {
  const recurs = (by: Point): boolean => {
    const shown = mostShown(by, within, crop);
    const isExplained = (part: number): boolean => {
      const agreement = scan.agreement(shown, part);
      return agreement.expected >= leastExpected && shareOf(agreement) >= explained;
    };
    return overlapOf(shown, crop) > 0 && isExplained(fewLines) && isExplained(1);
  };
  return finestLattice(within, recurs, leastStep);
}

/** Of a step and those that differ from it by steps of a lattice, the one that leaves most of a crop to show again. */
const mostShown = (by: Point, lattice: Lattice, crop: Size): Point =>
  [-1, 0, 1]
    .flatMap((i) => [-1, 0, 1].map((j) => add(by, step(lattice, i, j))))
    .reduce((best, one) => (overlapOf(one, crop) > overlapOf(best, crop) ? one : best));
