import { expect, test } from 'vitest';
import { type Contour, polygon } from '../../src/geometry/contour.ts';
import { crowdedSquares } from '../../src/geometry/crowded.ts';
import { box } from './drawn.ts';

/** Squares of four edges each, `toMm` of them to a millimetre each way, over `side` mm. */
const stipple = (toMm: number, side: number): Contour[] =>
  Array.from({ length: (toMm * side) ** 2 }, (_, i) => {
    const [column, row] = [i % (toMm * side), Math.floor(i / (toMm * side))];
    return box((column + 0.3) / toMm - 2, (row + 0.3) / toMm - 2, 0.4 / toMm, 0.4 / toMm);
  });
/** Lines 20 mm long, so far apart. */
const lines = (count: number, apart: number): Contour[] =>
  Array.from({ length: count }, (_, i) =>
    polygon([
      { x: i * apart, y: 0.25 },
      { x: i * apart, y: 20.25 },
    ]),
  );

// 5,000 specks to a square centimetre took fourteen seconds to look over, 20,000 on four almost a minute; 4,000 lines side by side thirteen.
test('specks and lines finer than a blade are too thick where there are many, counted by the square they lie in', () => {
  // 4 x 6 x 6 edges to a square: 144 each, and 150 such squares are past three million pairs.
  expect(crowdedSquares(stipple(6, 12))).toBe(0);
  expect(crowdedSquares(stipple(6, 13))).toBe(169);
  // There and back, a hundred lines to a millimetre.
  expect(crowdedSquares(lines(600, 0.01))).toBe(6 * 20);
  expect(crowdedSquares(lines(300, 0.01))).toBe(0);
});

test('no more than a blade follows is not too thick, however much there is', () => {
  // 64 edges to a square.
  expect(crowdedSquares(stipple(4, 40))).toBe(0);
  expect(crowdedSquares(lines(3000, 0.05))).toBe(0);
  expect(crowdedSquares([])).toBe(0);
});
