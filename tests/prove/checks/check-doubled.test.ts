// Lines cut twice, where it is known from how they were drawn.
import { expect, test } from 'vitest';
import { moveContour } from '../../../src/geometry/affine.ts';
import type { Contour } from '../../../src/geometry/contour.ts';
import { doubledLines } from '../../../src/prove/checks/check-doubled.ts';
import { box, circle } from '../../geometry/drawn.ts';

const turn = Math.SQRT1_2;
/** A circle of four curves, the middle of one of them at its top. */
const turned: Contour = moveContour(
  { a: turn, b: turn, c: -turn, d: turn, e: 0, f: 0 },
  circle({ x: 0, y: 0 }, 5),
);
const moved = (x: number, y: number) => moveContour({ a: 1, b: 0, c: 0, d: 1, e: x, f: y }, turned);

test('a hole that touches the border in one place runs along none of it', () => {
  // Its control points are right to 3e-4 of the radius: 0.0015 mm, well within what counts as touching.
  const sheet = box(-40, -40, 80, 80);
  expect(doubledLines([sheet, moved(0, 35)])).toBe(0);
  expect(doubledLines([moved(0, 5), moved(0, -5)])).toBe(0);
});

test.each<[string, readonly Contour[]]>([
  ['one outline twice', [turned, moved(0, 0)]],
  ['a side along part of another', [box(0, 0, 10, 10), box(4.9, 10, 10, 3)]],
  ['a short side in the middle of a long one', [box(0, 0, 100, 10), box(45, 10, 10, 3)]],
])('%s is cut twice', (_, contours) => {
  expect(doubledLines(contours)).toBeGreaterThan(0);
});
