// What lines and cubic Béziers can be asked: where, which way, a part of it, its chords.
import { type CubicSegment, cubic, line, reverseSegment, type Segment } from './contour.ts';
import { add, between, distance, norm, type Point, scale, subtract } from './point.ts';

/** The point at parameter t, 0 at the start and 1 at the end. */
export function pointAt(s: Segment, t: number): Point {
  if (s.kind === 'line') return between(s.from, s.to, t);
  const u = 1 - t;
  const w0 = u * u * u;
  const w1 = 3 * u * u * t;
  const w2 = 3 * u * t * t;
  const w3 = t * t * t;
  return {
    x: w0 * s.from.x + w1 * s.c1.x + w2 * s.c2.x + w3 * s.to.x,
    y: w0 * s.from.y + w1 * s.c1.y + w2 * s.c2.y + w3 * s.to.y,
  };
}

/** One coordinate of a cubic at t, from that of its four points; and how fast it changes there. */
export function coordinateAt(t: number, from: number, c1: number, c2: number, to: number): number {
  const u = 1 - t;
  return u * u * u * from + 3 * u * u * t * c1 + 3 * u * t * t * c2 + t * t * t * to;
}

export function slopeAt(t: number, from: number, c1: number, c2: number, to: number): number {
  const u = 1 - t;
  return 3 * u * u * (c1 - from) + 6 * u * t * (c2 - c1) + 3 * t * t * (to - c2);
}

/** What `pointAt` and `derivativeAt` give, a coordinate each: for what is asked a million times, and should make no points. */
export const xAt = (s: Segment, t: number): number =>
  s.kind === 'line' ? s.from.x + (s.to.x - s.from.x) * t : coordinateAt(t, s.from.x, s.c1.x, s.c2.x, s.to.x);
export const yAt = (s: Segment, t: number): number =>
  s.kind === 'line' ? s.from.y + (s.to.y - s.from.y) * t : coordinateAt(t, s.from.y, s.c1.y, s.c2.y, s.to.y);
export const xSlopeAt = (s: Segment, t: number): number =>
  s.kind === 'line' ? s.to.x - s.from.x : slopeAt(t, s.from.x, s.c1.x, s.c2.x, s.to.x);
export const ySlopeAt = (s: Segment, t: number): number =>
  s.kind === 'line' ? s.to.y - s.from.y : slopeAt(t, s.from.y, s.c1.y, s.c2.y, s.to.y);

/** The derivative by t. */
export function derivativeAt(s: Segment, t: number): Point {
  if (s.kind === 'line') return subtract(s.to, s.from);
  const u = 1 - t;
  const w0 = 3 * u * u;
  const w1 = 6 * u * t;
  const w2 = 3 * t * t;
  return {
    x: w0 * (s.c1.x - s.from.x) + w1 * (s.c2.x - s.c1.x) + w2 * (s.to.x - s.c2.x),
    y: w0 * (s.c1.y - s.from.y) + w1 * (s.c2.y - s.c1.y) + w2 * (s.to.y - s.c2.y),
  };
}

/** The second derivative by t. */
export function secondDerivativeAt(s: Segment, t: number): Point {
  if (s.kind === 'line') return { x: 0, y: 0 };
  const [w0, w1] = [6 * (1 - t), 6 * t];
  return {
    x: w0 * (s.c2.x - 2 * s.c1.x + s.from.x) + w1 * (s.to.x - 2 * s.c2.x + s.c1.x),
    y: w0 * (s.c2.y - 2 * s.c1.y + s.from.y) + w1 * (s.to.y - 2 * s.c2.y + s.c1.y),
  };
}

/**
 * The direction of travel at t, not scaled to one. Where the derivative vanishes (a handle of no length) it is
 * the direction of the next point that differs, as for the tangent of a stroke in SVG's implementation notes.
 */
export function directionAt(s: Segment, t: number): Point {
  const d = derivativeAt(s, t);
  if (s.kind === 'line' || norm(d.x, d.y) > 1e-9 * (distance(s.from, s.to) + distance(s.from, s.c1)))
    return d;
  const near = t < 0.5 ? 1e-4 : -1e-4;
  const step = subtract(pointAt(s, t + near), pointAt(s, t));
  return near > 0 ? step : scale(step, -1);
}

const startOf = (s: CubicSegment, t: number): CubicSegment => {
  const ab = between(s.from, s.c1, t);
  const bc = between(s.c1, s.c2, t);
  const cd = between(s.c2, s.to, t);
  const abc = between(ab, bc, t);
  return cubic(s.from, ab, abc, between(abc, between(bc, cd, t), t));
};

/** The part of a segment from t0 to t1; walked backwards when t0 > t1. Its ends are exact. */
export function partOf(s: Segment, t0: number, t1: number): Segment {
  if (t0 > t1) return reverseSegment(partOf(s, t1, t0));
  if (t0 === 0 && t1 === 1) return s;
  if (s.kind === 'line') return line(pointAt(s, t0), pointAt(s, t1));
  const head = t1 === 1 ? s : startOf(s, t1);
  if (t0 === 0) return head;
  return reverseSegment(startOf(reverseSegment(head) as CubicSegment, 1 - t0 / t1));
}

const samePlace = (p: Point, q: Point): boolean => p.x === q.x && p.y === q.y;

/** The same segment with its ends moved a little; a handle moves with its end, so that the direction is kept. */
export function withEnds(s: Segment, from: Point, to: Point): Segment {
  if (samePlace(from, s.from) && samePlace(to, s.to)) return s;
  if (s.kind === 'line') return line(from, to);
  return cubic(from, add(s.c1, subtract(from, s.from)), add(s.c2, subtract(to, s.to)), to);
}

/**
 * How many equal steps of t keep every chord within the tolerance of the curve.
 * Source: the chord's error is at most (1/8) max|B''| / n², and max|B''| = 6 max second difference of the
 * control points (convex hull property; G. Farin, Curves and Surfaces for CAGD, from memory).
 */
export function chordCount(s: Segment, tolerance: number): number {
  if (s.kind === 'line') return 1;
  const second = (a: Point, b: Point, c: Point) => norm(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y);
  const bend = Math.max(second(s.from, s.c1, s.c2), second(s.c1, s.c2, s.to));
  return Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / tolerance)));
}
