import { describe, expect, test } from 'vitest';
import { splineAt, splineThrough, straightBelow } from '../../src/blank/spline.ts';
import { expectWithin } from '../closeness.ts';

const cubicAt = (x: number) => ({
  value: 3 - 0.4 * x + 0.02 * x * x - 0.0003 * x ** 3,
  first: -0.4 + 0.04 * x - 0.0009 * x * x,
  second: 0.04 - 0.0018 * x,
});

describe('the spline through readings', () => {
  // de Boor, A Practical Guide to Splines, ch. IV: not-a-knot reproduces cubics (from memory).
  test.each([4, 5, 8, 13])(
    'of a cubic is that cubic, with %i uneven readings, past the ends too',
    (count) => {
      const x = Array.from({ length: count }, (_, i) => 7 * i + 3 * Math.sin(2.1 * i));
      const spline = splineThrough(
        x,
        x.map((at) => cubicAt(at).value),
      );
      for (let at = -10; at <= 7 * count + 10; at += 0.7) {
        const [got, wanted] = [splineAt(spline, at), cubicAt(at)];
        expectWithin(got.value, wanted.value, 2e-11);
        expectWithin(got.first, wanted.first, 3e-12);
        expectWithin(got.second, wanted.second, 3e-13);
      }
    },
  );

  test('of two readings is their line, of three their parabola', () => {
    const line = splineThrough([2, 10], [5, 9]);
    expect(splineAt(line, 4)).toEqual({ value: 6, first: 0.5, second: 0 });
    const square = (x: number) => 1 + 0.3 * x - 0.01 * x * x;
    const three = splineThrough([0, 7, 30], [0, 7, 30].map(square));
    for (const x of [-5, 0, 3, 7, 20, 30, 40]) {
      expectWithin(splineAt(three, x).value, square(x), 1e-13);
      expectWithin(splineAt(three, x).second, -0.02, 1e-15);
    }
  });

  const x = [0, 4, 9, 25, 31, 60];
  const y = [10, 13, 11, 19, 18, 24];
  const bumpy = splineThrough(x, y);

  test('passes through every reading and has no jump there in value, slope or bend', () => {
    x.forEach((at, i) => {
      expectWithin(splineAt(bumpy, at).value, y[i] ?? Number.NaN, 1e-12);
      const [below, above] = [splineAt(bumpy, at - 1e-9), splineAt(bumpy, at + 1e-9)];
      expectWithin(above.value, below.value, 2e-8);
      expectWithin(above.first, below.first, 2e-8);
      expectWithin(above.second, below.second, 2e-8);
    });
  });

  /** The third derivative is constant on a span: the bend's difference over the span's length. */
  const thirdOn = (from: number, to: number): number =>
    (splineAt(bumpy, to - 1e-9).second - splineAt(bumpy, from + 1e-9).second) / (to - from - 2e-9);

  test('has one cubic on its first two spans and one on its last two, and not on those between', () => {
    expectWithin(thirdOn(0, 4), thirdOn(4, 9), 1e-9);
    expectWithin(thirdOn(25, 31), thirdOn(31, 60), 1e-9);
    expect(Math.abs(thirdOn(4, 9) - thirdOn(9, 25))).toBeGreaterThan(0.01);
  });

  test('is linear in what was read', () => {
    const z = [1, -2, 5, 0.5, 3, 3];
    const other = splineThrough(x, z);
    const sum = splineThrough(
      x,
      y.map((value, i) => 2 * value - 3 * (z[i] ?? 0)),
    );
    for (const at of [-1, 2, 17, 44])
      expectWithin(
        splineAt(sum, at).value,
        2 * splineAt(bumpy, at).value - 3 * splineAt(other, at).value,
        1e-11,
      );
  });
});

describe('a spline taken on straight below its first reading', () => {
  const given = splineThrough([10, 25, 60, 80], [30, 34, 41, 39]);
  const taken = straightBelow(given, 0);

  test('is a line down there, of the slope it has at that reading', () => {
    const { value, first } = splineAt(given, 10);
    for (const at of [0, 2.5, 9.999]) {
      expectWithin(splineAt(taken, at).value, value + first * (at - 10), 1e-12);
      expectWithin(splineAt(taken, at).second, 0, 1e-12);
    }
  });

  test('is unchanged above it, and altogether where it begins at the foot', () => {
    for (const at of [10.001, 40, 79]) expect(splineAt(taken, at)).toEqual(splineAt(given, at));
    expect(straightBelow(given, 10)).toEqual(given);
  });
});
