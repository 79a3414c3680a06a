// The finest lattice that a pattern known to repeat by one has: found by its steps of prime order alone.
import { type Point, scale } from '../../geometry/point.ts';
import { type Lattice, step } from '../lattice/lattice.ts';
import { reduced } from '../lattice/same-lattice.ts';

/** A tile of more copies one way shows them often enough for its repeat to be found without its own steps. */
const primes = [2, 3, 5, 7, 11, 13];

/** A step that goes a whole number of times into steps of a lattice, and the finer lattice with it. */
interface Part {
  readonly by: Point;
  readonly finer: Lattice;
}

/**
 * The finest lattice whose steps are all repeats, `own` being one. The steps that a pattern repeats by, those of a lattice counted as none,
 * are a finite group: where there is any there is one of prime order, and of these there are few.
 */
export function finestLattice(
  own: Lattice,
  recurs: (by: Point) => boolean,
  leastStep: number,
): Lattice | undefined {
  const part = partsOf(own).find(
    ({ by, finer }) => isLarge(finer, leastStep) && Math.hypot(by.x, by.y) > 0 && recurs(by),
  );
  return part && (finestLattice(part.finer, recurs, leastStep) ?? part.finer);
}

const partsOf = (own: Lattice): readonly Part[] =>
  primes.flatMap((order) => [
    ...Array.from({ length: order }, (_, k) => scale(step(own, 1, k), 1 / order)).map((by) => ({
      by,
      finer: { a: by, b: own.b },
    })),
    { by: scale(own.b, 1 / order), finer: { a: own.a, b: scale(own.b, 1 / order) } },
  ]);

const isLarge = (lattice: Lattice, leastStep: number): boolean => {
  const { a, b } = reduced(lattice);
  return Math.min(Math.hypot(a.x, a.y), Math.hypot(b.x, b.y)) >= leastStep;
};
