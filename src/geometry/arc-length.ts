// How long curves are.
import type { Contour, CubicSegment, Segment } from './contour.ts';
import { distance, norm } from './point.ts';
import { derivativeAt, xSlopeAt, ySlopeAt } from './segment.ts';

/**
 * Abscissae and weights of Gauss-Legendre quadrature with seven points on (-1, 1).
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 25.4; from memory.
 */
const gauss = [
  [0, 0.4179591836734694],
  [0.4058451513773972, 0.3818300505051189],
  [-0.4058451513773972, 0.3818300505051189],
  [0.7415311855993945, 0.2797053914892767],
  [-0.7415311855993945, 0.2797053914892767],
  [0.9491079123427585, 0.1294849661688697],
  [-0.9491079123427585, 0.1294849661688697],
] as const;

/** Length of a cubic from t0 to t1 by one quadrature. */
function estimate(s: CubicSegment, t0: number, t1: number): number {
  let sum = 0;
  for (let i = 0; i < gauss.length; i++) {
    const t = t0 + ((t1 - t0) * (1 + (gauss[i]?.[0] ?? 0))) / 2;
    sum += (gauss[i]?.[1] ?? 0) * norm(xSlopeAt(s, t), ySlopeAt(s, t));
  }
  return (sum * (t1 - t0)) / 2;
}

/** Halvings of one curve, at most: a cusp has settled long before. */
const deepest = 16;

/** Length of a segment within a tolerance, mm, found by halving until both halves agree with the whole. */
export function segmentLength(s: Segment, tolerance = 1e-6): number {
  return s.kind === 'line' ? distance(s.from, s.to) : halved(s, 0, 1, estimate(s, 0, 1), tolerance, deepest);
}

function halved(
  s: CubicSegment,
  t0: number,
  t1: number,
  whole: number,
  tolerance: number,
  depth: number,
): number {
  const middle = (t0 + t1) / 2;
  const before = estimate(s, t0, middle);
  const after = estimate(s, middle, t1);
  if (depth === 0 || Math.abs(before + after - whole) <= tolerance) return before + after;
  return (
    halved(s, t0, middle, before, tolerance / 2, depth - 1) +
    halved(s, middle, t1, after, tolerance / 2, depth - 1)
  );
}

/** Length of a contour, mm, from its first node to its last. */
export const contourLength = ({ segments }: Contour, tolerance = 1e-6): number =>
  segments.reduce((sum, s) => sum + segmentLength(s, tolerance), 0);

/** Stretches of one curve that are measured apart: enough for a quadrature of each to be exact but at a cusp. */
const stretches = 32;

/** Places on a segment by their distance from its start. */
export class Ruler {
  readonly length: number;
  readonly #s: Segment;
  /** The length at the end of each stretch. */
  readonly #marks: readonly number[];

  constructor(s: Segment) {
    this.#s = s;
    let sum = 0;
    this.#marks =
      s.kind === 'line'
        ? [segmentLength(s)]
        : Array.from({ length: stretches }, (_, i) => {
            sum += this.#between(i / stretches, (i + 1) / stretches);
            return sum;
          });
    this.length = this.#marks.at(-1) ?? 0;
  }

  #between(t0: number, t1: number): number {
    return this.#s.kind === 'line' ? this.length * (t1 - t0) : estimate(this.#s, t0, t1);
  }

  /** The parameter at a distance from the start, from 0 to the length. */
  parameterAt(along: number): number {
    if (this.#s.kind === 'line') return this.length === 0 ? 0 : along / this.length;
    const found = this.#marks.findIndex((mark) => mark >= along);
    const stretch = found < 0 ? stretches - 1 : found;
    const begin = this.#marks[stretch - 1] ?? 0;
    let [low, high] = [stretch / stretches, (stretch + 1) / stretches];
    const from = low;
    let t =
      low +
      ((high - low) * (along - begin)) / Math.max((this.#marks[stretch] ?? 0) - begin, Number.MIN_VALUE);
    for (let i = 0; i < 40 && high - low > 1e-12; i++) {
      const miss = begin + this.#between(from, t) - along;
      if (miss > 0) high = t;
      else low = t;
      const d = derivativeAt(this.#s, t);
      const newton = t - miss / norm(d.x, d.y);
      if (Math.abs(newton - t) < 1e-12) return t;
      t = newton > low && newton < high ? newton : (low + high) / 2;
    }
    return t;
  }
}
