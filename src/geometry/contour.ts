// Lines and cubic Béziers, and the contours they make up.
import type { Point } from './point.ts';

export interface LineSegment {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

export interface CubicSegment {
  readonly kind: 'cubic';
  readonly from: Point;
  readonly c1: Point;
  readonly c2: Point;
  readonly to: Point;
}

export type Segment = LineSegment | CubicSegment;

/**
 * A run of segments, each beginning exactly where the one before ends.
 * A closed contour's last segment ends exactly where its first begins.
 */
export interface Contour {
  readonly closed: boolean;
  readonly segments: readonly Segment[];
}

/** An area: one outer contour first, then its holes. All closed, none crossing another or itself. */
export interface Shape {
  readonly contours: readonly Contour[];
}

export const line = (from: Point, to: Point): LineSegment => ({ kind: 'line', from, to });

export const cubic = (from: Point, c1: Point, c2: Point, to: Point): CubicSegment => ({
  kind: 'cubic',
  from,
  c1,
  c2,
  to,
});

/** Straight lines through the points, closed back to the first. */
export const polygon = (points: readonly Point[]): Contour => ({
  closed: true,
  segments: points.map((from, i) => line(from, points[(i + 1) % points.length] ?? from)),
});

/** Straight lines through the points, left open. */
export const polyline = (points: readonly Point[]): Contour => ({
  closed: false,
  segments: points.slice(1).map((to, i) => line(points[i] ?? to, to)),
});

/** The same curve walked the other way. */
export const reverseSegment = (s: Segment): Segment =>
  s.kind === 'line' ? line(s.to, s.from) : cubic(s.to, s.c2, s.c1, s.from);

export const reverseContour = (contour: Contour): Contour => ({
  closed: contour.closed,
  segments: contour.segments.map(reverseSegment).reverse(),
});
