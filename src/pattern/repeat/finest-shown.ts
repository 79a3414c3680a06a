// The finest lattice that a crop shows within one by which all of it recurs.
import type { Shape } from '../../geometry/contour.ts';
import { add, type Point } from '../../geometry/point.ts';
import { FilmScan } from '../film/film-scan.ts';
import { type Lattice, step } from '../lattice/lattice.ts';
import type { Size } from '../tile/cut-shapes.ts';
import { finestLattice } from './finest-lattice.ts';
import { explained, fewLines, leastStep, overlapOf, shareOf } from './held-steps.ts';

/** Fewer places than this that should recur prove nothing. */
export const leastExpected = 6;

/** Copies drawn with other nodes are of one lattice where they stand within this, mm: laid by it, what touches goes on touching. */
const exactly = 0.002;

interface Layers {
  readonly layers: readonly { readonly shapes: readonly Shape[] }[];
}

/**
 * Undefined where there is none finer. Copies whose nodes were drawn otherwise have no landmarks in common, so that no step between them
 * is found by these.
 */
export function finestShown(
  { layers, ...crop }: Layers & Size,
  scan: FilmScan,
  within: Lattice,
): Lattice | undefined {
  let exact: FilmScan | undefined;
  const recurs = (by: Point): boolean => {
    const shown = mostShown(by, within, crop);
    const isExplained = (of: FilmScan, part: number): boolean => {
      const agreement = of.agreement(shown, part);
      return agreement.expected >= leastExpected && shareOf(agreement) >= explained;
    };
    if (overlapOf(shown, crop) === 0 || !isExplained(scan, fewLines) || !isExplained(scan, 1)) return false;
    exact ??= new FilmScan(layers, crop, exactly);
    return isExplained(exact, 1);
  };
  return finestLattice(within, recurs, leastStep);
}

/** Of a step and those that differ from it by steps of a lattice, the one that leaves most of a crop to show again. */
const mostShown = (by: Point, lattice: Lattice, crop: Size): Point =>
  [-1, 0, 1]
    .flatMap((i) => [-1, 0, 1].map((j) => add(by, step(lattice, i, j))))
    .reduce((best, one) => (overlapOf(one, crop) > overlapOf(best, crop) ? one : best));
