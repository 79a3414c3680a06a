// How long curves are.
import type { Contour, CubicSegment, Segment } from './contour.ts';
import { distance } from './point.ts';
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
    return sum + (weight / 2) * Math.hypot(d.x, d.y);
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
