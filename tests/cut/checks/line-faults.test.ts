// Lines that touch themselves, where it is known that they cross nothing.
import { expect, test } from 'vitest';
import { selfCrossings } from '../../../src/cut/checks/line-faults.ts';
import { polyline } from '../../../src/geometry/contour.ts';
import type { Point } from '../../../src/geometry/point.ts';

/** Cells by which places are told apart are so wide, mm: half of one is where rounding goes either way. */
const cell = 1e-6;

/** A line that slants past the place `at`, and comes back to touch it there with a corner, from above. */
function touchingAt(at: Point, lean: number): Point[] {
  const on = (by: number): Point => ({ x: at.x + by, y: at.y + lean * by });
  return [on(-3), on(4), { x: at.x + 3, y: at.y + 5 }, at, { x: at.x - 2, y: at.y + 6 }];
}

const crossingsOf = (points: readonly Point[]) =>
  selfCrossings([{ id: undefined, colour: '#000000', contours: [polyline(points)] }], 0.01);

test('a corner that touches a line is no crossing, wherever the two places seen of it are rounded to', () => {
  const crossed = Array.from({ length: 400 }, (_, i) => {
    const off = (step: number) => (Math.round(1e7 * Math.abs(Math.sin(step))) + 0.5) * cell;
    const [level, upright] = [off(i + 1), off(i + 1000)];
    const points = touchingAt({ x: upright, y: level }, ((i % 20) - 9.7) / 30);
    const swapped = points.map(({ x, y }) => ({ x: y, y: x }));
    return [points, points.toReversed(), swapped, swapped.toReversed()].flatMap(crossingsOf);
  });
  expect(crossed.flat()).toEqual([]);
});

test('one that goes through the line is', () => {
  const at = { x: 1, y: 2 };
  const [a, b, c] = touchingAt(at, 0.2);
  const through = [a, b, c, { x: 0, y: 0 }].flatMap((p) => p ?? []);
  expect(crossingsOf(through)).toMatchObject([{ line: 0, size: 1 }]);
});
