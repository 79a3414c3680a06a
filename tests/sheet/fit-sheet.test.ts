import { expect, test } from 'vitest';
import { polygon } from '../../src/geometry/contour.ts';
import { turnToFit } from '../../src/sheet/fit-sheet.ts';

const strip = polygon([
  { x: 0, y: 0 },
  { x: 300, y: 0 },
  { x: 300, y: 10 },
  { x: 0, y: 10 },
]);

test('a piece that fits as drawn is not turned, a tall sheet takes it upright', () => {
  expect(turnToFit(strip, { length: 310, height: 210 })).toBe(0);
  expect(turnToFit(strip, { length: 210, height: 310 })).toBeCloseTo(Math.PI / 2, 12);
});

// A strip a by b turned by t is a cos t + b sin t long and a sin t + b cos t high: at 45 degrees 219.2 mm both ways.
test('a strip longer than either side lies aslant where the closed form says it does', () => {
  const turn = turnToFit(strip, { length: 220, height: 220 });
  expect(turn).toBeDefined();
  const t = Math.abs(turn ?? 0);
  expect(300 * Math.cos(t) + 10 * Math.sin(t)).toBeLessThanOrEqual(220);
  expect(300 * Math.sin(t) + 10 * Math.cos(t)).toBeLessThanOrEqual(220);
  expect(turnToFit(strip, { length: 219, height: 219 })).toBeUndefined();
});
