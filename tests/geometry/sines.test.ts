import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sinesOf } from '../../src/geometry/sines.ts';

const { sin, cos } = Math;
const own = sinesOf({ sin, cos });

/** Units in the last place between two doubles of about the same size. */
function lastPlaces(a: number, b: number): number {
  const unit = Math.max(2 ** (Math.floor(Math.log2(Math.max(Math.abs(a), Math.abs(b)))) - 52), 2 ** -1074);
  return Math.abs(a - b) / unit;
}

// Source: the engine's own functions, which are another implementation of the same; each is allowed one unit.
test('both are within two units in the last place of the engine’s own', () => {
  const angle = fc.oneof(
    fc.double({ min: -10, max: 10, noNaN: true }),
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    fc.integer({ min: -4000, max: 4000 }).map((n) => (n * Math.PI) / 4),
  );
  fc.assert(
    fc.property(angle, (x) => {
      expect(lastPlaces(own.sin(x), sin(x))).toBeLessThanOrEqual(2);
      expect(lastPlaces(own.cos(x), cos(x))).toBeLessThanOrEqual(2);
    }),
    { numRuns: 20_000, seed: 7 },
  );
});

// Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 4.6, sin 1 and cos 1; from memory.
test('the handbook’s values for one radian', () => {
  expect(own.sin(1)).toBeCloseTo(0.8414709848078965, 15);
  expect(own.cos(1)).toBeCloseTo(0.5403023058681398, 15);
});

test('signs of zero, and what is no number, are as the language has them', () => {
  expect(Object.is(own.sin(-0), -0)).toBe(true);
  expect(own.cos(0)).toBe(1);
  expect(own.sin(Number.NaN)).toBeNaN();
  expect(own.cos(Number.POSITIVE_INFINITY)).toBeNaN();
});
