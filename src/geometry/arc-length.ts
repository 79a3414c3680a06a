// How long curves are.
import type { Contour, CubicSegment, Segment } from './contour.ts';
import { distance, norm } from './point.ts';
import { derivativeAt, partOf } from './segment.ts';

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

const estimate = (s: CubicSegment): number =>
  gauss.reduce((sum, [at, weight]) => {
    const d = derivativeAt(s, (1 + at) / 2);
    return sum + (weight / 2) * norm(d.x, d.y);
  }, 0);

/** Halvings of one curve, at most: a cusp has settled long before. */
const deepest = 16;

/** Length of a segment within a tolerance, mm, found by halving until both halves agree with the whole. */
export function segmentLength(s: Segment, tolerance = 1e-6): number {
  return s.kind === 'line' ? distance(s.from, s.to) : halved(s, estimate(s), tolerance, deepest);
}

function halved(s: CubicSegment, whole: number, tolerance: number, depth: number): number {
  const halves = [partOf(s, 0, 0.5), partOf(s, 0.5, 1)].filter((half) => half.kind === 'cubic');
  const lengths = halves.map(estimate);
  const sum = lengths.reduce((a, b) => a + b, 0);
  if (depth === 0 || Math.abs(sum - whole) <= tolerance) return sum;
  return halves.reduce(
    (total, half, i) => total + halved(half, lengths[i] ?? 0, tolerance / 2, depth - 1),
    0,
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
    const part = partOf(this.#s, t0, t1);
    return part.kind === 'line' ? distance(part.from, part.to) : estimate(part);
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
