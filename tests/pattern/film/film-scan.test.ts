// How much of a drawing is held against itself: few lines are enough where each crosses very much.
import { expect, test } from 'vitest';
import { polygon } from '../../../src/geometry/contour.ts';
import { FilmScan } from '../../../src/pattern/film/film-scan.ts';

/** Upright bars 0.2 mm wide, 0.5 mm from one to the next. */
const hatching = (bars: number) => [
  {
    shapes: Array.from({ length: bars }, (_, i) => {
      const [from, to] = [0.5 * i + 0.1, 0.5 * i + 0.3];
      const corners = [
        { x: from, y: 0 },
        { x: to, y: 0 },
        { x: to, y: 200 },
        { x: from, y: 200 },
      ];
      return { contours: [polygon(corners)] };
    }),
  },
];

test('a hatching of 400 bars is held against itself along few lines, and recurs', () => {
  const scan = new FilmScan(hatching(400), { width: 200, height: 200 }, 0.02);
  const { expected, found } = scan.agreement({ x: 0.5, y: 0 });
  expect(found).toBe(expected);
  // Two ends a bar, along eight lines, held there and back.
  expect(expected).toBeGreaterThan(8 * 2 * 390);
  expect(expected).toBeLessThanOrEqual(8 * 2 * 2 * 400);
});
