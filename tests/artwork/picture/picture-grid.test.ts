// Straight edges on one even grid: stripes by hand, and how many edges are held against one another.
import { expect, test, vi } from 'vitest';
import { standsOnGrid } from '../../../src/artwork/picture/picture-grid.ts';

/** Stripes along the rows, each so wide, px, the first edge at `from`. */
const stripes = (size: number, wide: number, from = 0) => ({
  value: (_: number, k: number) => (Math.floor((k - from + 2 * size) / wide) % 2 === 0 ? 255 : 0),
  along: 40,
  size,
});

test('stripes that part the height evenly stand on a grid with the border, others do not', () => {
  expect(standsOnGrid(stripes(240, 12))).toBe(true);
  expect(standsOnGrid(stripes(240, 12, 5))).toBe(false);
});

// Of a fine hatching every edge of a column was held against all of the column before: 1,000 of them took two thirds of a minute.
test('an edge is held against those near it alone', () => {
  const measured = vi.spyOn(Math, 'abs');
  standsOnGrid(stripes(1200, 6));
  const count = measured.mock.calls.length;
  measured.mockRestore();
  expect(count).toBeLessThan(600_000);
});
