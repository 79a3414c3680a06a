// Is it close enough? Every question says how close: there is no tolerance anyone could forget.
import { expect } from 'vitest';
import type { Point } from '../src/geometry/point.ts';

/** A tolerance that could let everything pass, or nothing, is a fault of the test. */
function checkTolerance(tolerance: number): void {
  if (!(tolerance >= 0 && tolerance < Infinity))
    throw new Error(`a tolerance is a finite number of 0 or more, not ${tolerance}`);
}

/** |got - wanted| is at most the tolerance, in the unit of both. Not a number is never close. */
export function expectWithin(got: number, wanted: number, tolerance: number, what = 'value'): void {
  checkTolerance(tolerance);
  const off = Math.abs(got - wanted);
  if (!(off <= tolerance))
    expect.fail(`${what} is ${got}, wanted ${wanted}: off by ${off}, more than ${tolerance}`);
}

/** |got - wanted| is at most this part of |wanted|. */
export function expectWithinPart(got: number, wanted: number, part: number, what = 'value'): void {
  checkTolerance(part);
  expectWithin(got, wanted, part * Math.abs(wanted), what);
}

/** The distance of two points is at most the tolerance. */
export function expectPointWithin(got: Point, wanted: Point, tolerance: number, what = 'point'): void {
  checkTolerance(tolerance);
  const off = Math.hypot(got.x - wanted.x, got.y - wanted.y);
  if (!(off <= tolerance))
    expect.fail(
      `${what} is at (${got.x}, ${got.y}), wanted (${wanted.x}, ${wanted.y}): off by ${off}, more than ${tolerance}`,
    );
}

/** The value is at most the limit; for what is measured as a distance from right. */
export function expectAtMost(got: number, limit: number, what = 'value'): void {
  if (!(got <= limit)) expect.fail(`${what} is ${got}, more than ${limit}`);
}
