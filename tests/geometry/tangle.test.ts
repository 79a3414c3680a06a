import { expect, test } from 'vitest';
import { type Contour, polygon } from '../../src/geometry/contour.ts';
import { isTangled } from '../../src/geometry/tangle.ts';

/** Teeth side by side, each of two steps: a line across them meets every one. */
const comb = (steps: number, turned = false): Contour =>
  polygon(
    Array.from({ length: steps }, (_, i) => {
      const [x, y] = [i / 100, i % 2 === 0 ? 0 : 20];
      return turned ? { x: y, y: x } : { x, y };
    }),
  );

// Merged and clipped, 60,000 such steps took a hundred seconds, and the look at their lines more than five minutes.
test('six thousand lines side by side are none too many, more are, whichever way they lie', () => {
  for (const turned of [false, true]) {
    expect(isTangled([comb(6000, turned)], 1e5)).toBe(false);
    expect(isTangled([comb(6002, turned)], 1e5)).toBe(true);
  }
});

test('as many lines one after another, or short ones in rows, are not side by side', () => {
  const row = (y: number): Contour[] =>
    Array.from({ length: 100 }, (_, i) =>
      polygon([0, 1, 2].map((k) => ({ x: 4 * i + (k > 0 ? 2 : 0), y: y + (k > 1 ? 2 : 0) }))),
    );
  expect(isTangled(Array.from({ length: 100 }, (_, i) => row(4 * i)).flat(), 1e5)).toBe(false);
});
