// Lines of half a grid's range, held against the grid itself: each place where neighbours lie on two sides of it is passed once.
import { expect, test } from 'vitest';
import { levelLines, wrappedLevelLines } from '../../src/geometry/level-lines.ts';
import { randomFrom } from './drawn.ts';

const half = 127.5;
const gridOf = (width: number, height: number, seed: number) => {
  const random = randomFrom(seed);
  return { width, height, values: new Uint8Array(width * height).map(() => Math.floor(random() * 256)) };
};
const keyOf = (x: number, y: number) => `${x.toFixed(6)} ${y.toFixed(6)}`;

/** Places between neighbours, each in the middle of its square, where they lie on two sides of half. */
function crossed(width: number, height: number, at: (i: number, j: number) => number, ends: boolean) {
  const found: string[] = [];
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++)
      for (const [di, dj] of [
        [1, 0],
        [0, 1],
      ] as const) {
        if (!ends && (i + di >= width || j + dj >= height)) continue;
        const [from, to] = [at(i, j), at((i + di) % width, (j + dj) % height)];
        if (from > half === to > half) continue;
        const t = (half - from) / (to - from);
        found.push(keyOf((i + 0.5 + t * di) % width, (j + 0.5 + t * dj) % height));
      }
  return found.sort();
}

test.each([1, 2, 3, 4])('lines around copies pass each crossing once, seed %i', (seed) => {
  const { width, height, values } = gridOf(7 + seed, 12 - seed, seed);
  const lines = wrappedLevelLines({ width, height, values });
  const passed = lines.flatMap(({ points }) =>
    points.map(({ x, y }) =>
      keyOf((((x % width) + width) % width) + 0, (((y % height) + height) % height) + 0),
    ),
  );
  expect(passed.sort()).toEqual(crossed(width, height, (i, j) => values[j * width + i] ?? 0, true));
  // From one crossing to the next a line stays in one square.
  for (const { points } of lines)
    for (const [k, q] of points.slice(1).entries()) {
      const p = points[k] ?? q;
      expect(Math.max(Math.abs(p.x - q.x), Math.abs(p.y - q.y))).toBeLessThanOrEqual(1);
    }
});

test.each([5, 6, 7])('lines of a grid by itself pass each crossing within it once, seed %i', (seed) => {
  const { width, height, values } = gridOf(6 + seed, 15 - seed, seed);
  const lines = levelLines({ width, height, values });
  const isWithin = ({ x, y }: { readonly x: number; readonly y: number }) =>
    x > 0.5 - 1e-9 && y > 0.5 - 1e-9 && x < width - 0.5 + 1e-9 && y < height - 0.5 + 1e-9;
  const passed = lines.flat().filter(isWithin);
  const keys = passed.map(({ x, y }) => keyOf(x, y)).sort();
  expect(keys).toEqual(crossed(width, height, (i, j) => values[j * width + i] ?? 0, false));
  // What lies above is on one side throughout: all lines together enclose as much as above them does.
  const area = lines.reduce(
    (sum, line) =>
      sum +
      line.reduce((own, p, k) => {
        const q = line[(k + 1) % line.length] ?? p;
        return own + (p.x * q.y - p.y * q.x) / 2;
      }, 0),
    0,
  );
  const above = values.reduce((sum, value) => sum + (value > half ? 1 : 0), 0);
  expect(Math.abs(area)).toBeGreaterThan(0.6 * above);
  expect(Math.abs(area)).toBeLessThan(1.4 * above);
});
