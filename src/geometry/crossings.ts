// Where curves cross a straight line.
import type { Segment } from './contour.ts';
import { cross, type Point, subtract } from './point.ts';
import { coordinateAt, derivativeAt, pointAt, slopeAt } from './segment.ts';

/** Real roots of a x³ + b x² + c x + d. Source: Cardano and Viète's trigonometric form. */
function cubicRoots(a: number, b: number, c: number, d: number): number[] {
  const size = Math.max(Math.abs(a), Math.abs(b), Math.abs(c), Math.abs(d));
  if (Math.abs(a) < 1e-12 * size) return quadraticRoots(b, c, d, size);
  const [p, q, r] = [b / a, c / a, d / a];
  const third = p / 3;
  const m = third * third - q / 3;
  const n = third * third * third - (third * q) / 2 + r / 2;
  if (n * n < m * m * m) {
    const angle = Math.acos(Math.max(-1, Math.min(1, n / Math.sqrt(m * m * m))));
    return [0, 2, -2].map((k) => -2 * Math.sqrt(m) * Math.cos((angle + k * Math.PI) / 3) - third);
  }
  const s = -Math.sign(n || 1) * Math.cbrt(Math.abs(n) + Math.sqrt(Math.max(0, n * n - m * m * m)));
  return [s + (s === 0 ? 0 : m / s) - third];
}

function quadraticRoots(a: number, b: number, c: number, size: number): number[] {
  if (Math.abs(a) < 1e-12 * size) return Math.abs(b) < 1e-12 * size ? [] : [-c / b];
  const under = b * b - 4 * a * c;
  if (under < 0) return [];
  const q = -0.5 * (b + Math.sign(b || 1) * Math.sqrt(under));
  return q === 0 ? [0] : [q / a, c / q];
}

/**
 * Parameters at which a segment crosses the endless line through a point. Where a curve only touches it, rounding decides between two and
 * none; lying in it does not count.
 */
export function lineCrossings(s: Segment, through: Point, direction: Point): number[] {
  const beside = (p: Point) => cross(direction, subtract(p, through));
  const [w0, w3] = [beside(s.from), beside(s.to)];
  if (s.kind === 'line') return w0 === w3 ? [] : inside([w0 / (w0 - w3)]);
  const [w1, w2] = [beside(s.c1), beside(s.c2)];
  if (Math.min(w0, w1, w2, w3) > 0 || Math.max(w0, w1, w2, w3) < 0) return [];
  const roots = cubicRoots(w3 - w0 + 3 * (w1 - w2), 3 * (w0 - 2 * w1 + w2), 3 * (w1 - w0), w0);
  const besideAt = (t: number) => beside(pointAt(s, t));
  const slope = (t: number) => cross(direction, derivativeAt(s, t));
  return inside(roots.map((t) => settled(t, besideAt, slope)));
}

const inside = (roots: readonly number[]): number[] =>
  roots.filter((t) => t >= -1e-9 && t <= 1 + 1e-9).map((t) => Math.max(0, Math.min(1, t)));

/**
 * The same of a cubic and a level (or upright) line, by the four y (or x) of the cubic and that of the line: for what is asked of a
 * hundred thousand curves, and should make no points.
 */
export function levelCrossings(from: number, c1: number, c2: number, to: number, at: number): number[] {
  const [w0, w1, w2, w3] = [from - at, c1 - at, c2 - at, to - at];
  if (Math.min(w0, w1, w2, w3) > 0 || Math.max(w0, w1, w2, w3) < 0) return [];
  const roots = cubicRoots(w3 - w0 + 3 * (w1 - w2), 3 * (w0 - 2 * w1 + w2), 3 * (w1 - w0), w0);
  const beside = (t: number) => coordinateAt(t, from, c1, c2, to) - at;
  const slope = (t: number) => slopeAt(t, from, c1, c2, to);
  return inside(roots.map((t) => settled(t, beside, slope)));
}

/** One or two steps of Newton take away what the closed form lost. */
function settled(t: number, beside: (t: number) => number, slope: (t: number) => number): number {
  let at = t;
  for (let i = 0; i < 3; i++) {
    const steep = slope(at);
    if (Math.abs(steep) < 1e-12) return at;
    at -= beside(at) / steep;
  }
  return Number.isFinite(at) ? at : t;
}
