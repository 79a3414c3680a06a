// Lines cut twice, where it is known from how they were drawn.
import Flatbush from 'flatbush';
import { expect, test, vi } from 'vitest';
import { moveContour } from '../../../src/geometry/affine.ts';
import { type Contour, line, polygon, type Segment } from '../../../src/geometry/contour.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { doubledLines } from '../../../src/prove/checks/check-doubled.ts';
import { box, circle, randomFrom } from '../../geometry/drawn.ts';

const turn = Math.SQRT1_2;
/** A circle of four curves, the middle of one of them at its top. */
const turned: Contour = moveContour(
  { a: turn, b: turn, c: -turn, d: turn, e: 0, f: 0 },
  circle({ x: 0, y: 0 }, 5),
);
/** A square with a side that goes out and comes back beside itself. */
const spur: readonly Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [5.004, 10],
  [5.004, 13],
  [5, 13],
  [5, 10],
  [0, 10],
].map(([x = 0, y = 0]) => ({ x, y }));
const moved = (x: number, y: number) => moveContour({ a: 1, b: 0, c: 0, d: 1, e: x, f: y }, turned);

test('a hole that touches the border in one place runs along none of it', () => {
  // Its control points are right to 3e-4 of the radius: 0.0015 mm, well within what counts as touching.
  const sheet = box(-40, -40, 80, 80);
  expect(doubledLines([sheet, moved(0, 35)])).toBe(0);
  expect(doubledLines([moved(0, 5), moved(0, -5)])).toBe(0);
});

/** A lens 6 mm long whose sides run out along one line into a tip, with a node 0.22 mm from it; from its tip on, or blunt before it. */
const lens = (from: number): Contour => {
  const height = (x: number): number => (x * x * (6 - x) * (6 - x)) / 1400;
  const slope = (x: number): number => (2 * x * (6 - x) * (6 - 2 * x)) / 1400;
  const side = (a: number, b: number, by: number): Segment => ({
    kind: 'cubic',
    from: { x: a, y: by * height(a) },
    c1: { x: a + (b - a) / 3, y: by * (height(a) + (slope(a) * (b - a)) / 3) },
    c2: { x: b - (b - a) / 3, y: by * (height(b) - (slope(b) * (b - a)) / 3) },
    to: { x: b, y: by * height(b) },
  });
  const ends = from > 0 ? [line({ x: from, y: -height(from) }, { x: from, y: height(from) })] : [];
  return {
    closed: true,
    segments: [side(from, 0.22, 1), side(0.22, 6, 1), side(6, 0.22, -1), side(0.22, from, -1), ...ends],
  };
};

test('the tip of a cusp is no line cut twice, wherever a node stands in it, or where it is blunt by a hair', () => {
  expect(doubledLines([lens(0)])).toBe(0);
  expect(doubledLines([lens(0.05)])).toBe(0);
});

test.each<[string, readonly Contour[]]>([
  ['one outline twice', [turned, moved(0, 0)]],
  ['a side along part of another', [box(0, 0, 10, 10), box(4.9, 10, 10, 3)]],
  ['a spur as thin as a hair', [polygon(spur)]],
  ['a side along part of a cusp, near its tip', [lens(0.05), box(0.04, -1, 0.2, 1)]],
  ['a short side in the middle of a long one', [box(0, 0, 100, 10), box(45, 10, 10, 3)]],
])('%s is cut twice', (_, contours) => {
  expect(doubledLines(contours)).toBeGreaterThan(0);
});

// Each was held against all that lie there: 5,000 took 13 s of processor time.
test('tens of thousands of lines over one another are each seen to be doubled', () => {
  const over: Contour = {
    closed: false,
    segments: Array.from({ length: 30_000 }, () => line({ x: 0, y: 0 }, { x: 1, y: 1 })),
  };
  expect(doubledLines([over])).toBe(30_000);
});

// All those in whose box a place lies were held against it, a tenth of all.
test('lines at random are held against those alone that run their way', () => {
  const random = randomFrom(3);
  const place = () => ({ x: 200 * random(), y: 100 * random() });
  const segments = Array.from({ length: 1500 }, () => line(place(), place()));
  const { neighbors } = Flatbush.prototype;
  let held = 0;
  const counted = vi.spyOn(Flatbush.prototype, 'neighbors').mockImplementation(function (
    this: Flatbush,
    x,
    y,
    most,
    reach,
    isWanted,
  ) {
    const asked = (i: number) => {
      held++;
      return isWanted?.(i) ?? true;
    };
    return neighbors.call(this, x, y, most, reach, asked);
  });
  expect(doubledLines([{ closed: false, segments }])).toBe(0);
  counted.mockRestore();
  expect(held).toBeLessThan(20 * segments.length);
});
