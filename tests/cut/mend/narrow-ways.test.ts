// Ways against twins told one by one, and how often an index is made of them.
import Flatbush from 'flatbush';
import { expect, test, vi } from 'vitest';
import { narrowWays } from '../../../src/cut/mend/narrow-ways.ts';
import { distance, type Point } from '../../../src/geometry/point.ts';

/** Middles of discs along a straight line, 0.4 mm apart. */
const along = (from: Point, to: Point): Point[] => {
  const count = Math.ceil(distance(from, to) / 0.4);
  return Array.from({ length: count + 1 }, (_, i) => ({
    x: from.x + ((to.x - from.x) * i) / count,
    y: from.y + ((to.y - from.y) * i) / count,
  }));
};

test('discs of both sides of a narrow place are one way, the longer one; those far from one another are parted', () => {
  const [a, b] = [along({ x: 0, y: 0 }, { x: 8, y: 0 }), along({ x: 2, y: 0.05 }, { x: 8, y: 0.05 })];
  const other = along({ x: 3, y: 0.15 }, { x: 6, y: 0.15 });
  expect(narrowWays([...a, ...b, ...other], 1)).toEqual([a, other]);
});

test('a single place on a way is no way of its own, nor the same place twice', () => {
  const way = along({ x: 0, y: 0 }, { x: 2, y: 0 });
  const [on, off] = [
    { x: 1.1, y: 0.09 },
    { x: 5, y: 5 },
  ];
  expect(narrowWays([...way, off, on, { x: 9, y: 9 }, off], 1)).toEqual([way, [off], [{ x: 9, y: 9 }]]);
});

test('of hundreds of ways that cross one another one index is made', () => {
  const lines = Array.from({ length: 150 }, (_, i) => along({ x: 0, y: i }, { x: 30, y: (i * 37) % 150 }));
  const made = vi.spyOn(Flatbush.prototype, 'finish');
  const ways = narrowWays(lines.flat(), 0.9);
  const indices = made.mock.calls.length;
  made.mockRestore();
  expect(ways).toHaveLength(lines.length);
  expect(indices).toBe(1);
});
