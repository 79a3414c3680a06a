// Open lines joined into outlines: each is held against those whose ends lie near its own, however many there are.
import { expect, test } from 'vitest';
import { joinedOutlines } from '../../../src/cut/checks/join-lines.ts';
import { line, type Segment } from '../../../src/geometry/contour.ts';
import type { Point } from '../../../src/geometry/point.ts';

const drawn = (segments: readonly (readonly Segment[])[], colour = '#000000') =>
  segments.map((one) => ({ id: undefined, colour, contours: [{ closed: false, segments: one }] }));

/** How often the segments of so many dashes are asked for, each 1 mm from the next. */
function reads(count: number): number {
  let asked = 0;
  const lines = Array.from({ length: count }, (_, i) => {
    const from = { x: 2 * (i % 40), y: 2 * Math.floor(i / 40) };
    const segments = [line(from, { x: from.x + 1, y: from.y })];
    const contour = {
      closed: false,
      get segments() {
        asked++;
        return segments;
      },
    };
    return { id: undefined, colour: '#000000', contours: [contour] };
  });
  expect(joinedOutlines(lines, 0.4)).toEqual([]);
  return asked;
}

test('of twice as many dashes twice as much is looked at', () => {
  expect(reads(800)).toBe(2 * reads(400));
});

test('the nearest end is gone on from, of equals that of the line drawn first, and colours are kept apart', () => {
  const [a, b, c]: readonly Point[] = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 5, y: 8 },
  ];
  if (!a || !b || !c) throw new Error('no corners');
  const third = line({ x: 0.1, y: 0 }, c);
  const lines = [
    ...drawn([[line(a, b)]]),
    ...drawn([[line({ x: 10.1, y: 0 }, { x: 30, y: 0 })]], '#ffffff'),
    ...drawn([[line(c, { x: 10.2, y: 0 })], [third], [line({ x: 10, y: 0.3 }, { x: 40, y: 9 })]]),
  ];
  const [outline, ...others] = joinedOutlines(lines, 0.4);
  expect(others).toEqual([]);
  expect(outline?.pieces.map(({ segments }) => segments[0])).toEqual([
    line(a, b),
    line(c, { x: 10.2, y: 0 }),
    third,
  ]);
  expect(outline?.gap).toBeCloseTo(0.2, 9);
});

test('a tail that was begun with and closes nothing leaves the loop that it stands at', () => {
  const at = (x: number, y: number): Point => ({ x, y });
  // The loop comes back to where it began 0.2 mm off, and the tail begins 0.1 mm off.
  const tail = drawn([[line(at(0, -20), at(0, 0))]]);
  const loop = drawn([
    [line(at(0.1, 0), at(10, 8))],
    [line(at(10, 8), at(-10, 8))],
    [line(at(-10, 8), at(0, 0.1))],
  ]);
  expect(joinedOutlines([...tail, ...loop], 0.4).map(({ pieces }) => pieces.length)).toEqual([3]);
});
