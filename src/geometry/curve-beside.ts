// The curve beside a curve: at a constant distance from it.
import type { CubicSegment, Segment } from './contour.ts';
import { fitCurve } from './fit.ts';
import { add, cross, type Point, scale, unit } from './point.ts';
import { derivativeAt, directionAt, partOf, pointAt, secondDerivativeAt } from './segment.ts';

/** A direction turned by a quarter: to its left with y up. */
export const leftOf = ({ x, y }: Point): Point => ({ x: -y, y: x });

/** The normal of length one at t, to the left with y up. */
export const normalAt = (s: Segment, t: number): Point => leftOf(unit(directionAt(s, t)));

/** How much the curve bends at t, 1/mm: positive where it turns to the left with y up. Infinite at a cusp. */
export function bendAt(s: Segment, t: number): number {
  const d = derivativeAt(s, t);
  return cross(d, secondDerivativeAt(s, t)) / Math.hypot(d.x, d.y) ** 3;
}

/** The stretch from t0 to t1 of the curve at `by` mm to the left (y up), as cubics within the tolerance of it. */
export function fitBeside(
  s: CubicSegment,
  by: number,
  t0: number,
  t1: number,
  tolerance: number,
): readonly Segment[] {
  const part = partOf(s, t0, t1);
  const curve = {
    point: (t: number) => add(pointAt(part, t), scale(normalAt(part, t), by)),
    derivative: (t: number) => {
      // The derivative of a curve beside another is the other's own times 1 - bend x distance.
      const grows = 1 - by * bendAt(part, t);
      return Number.isFinite(grows) ? scale(derivativeAt(part, t), grows) : { x: 0, y: 0 };
    },
    mayBeStraight: false,
  };
  return fitCurve(curve, tolerance).segments;
}
