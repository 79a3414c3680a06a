// Source: mensuration text p. 76, see source.md.
import { expect, test } from 'vitest';
import { expectWithin } from '../../closeness.ts';
import { laidByHeight, laidBySlant } from '../frustum.ts';
import values from './values.json' with { type: 'json' };

const feet = ([whole, inches]: readonly number[]): number =>
  (whole ?? Number.NaN) + (inches ?? Number.NaN) / 12;
const byTheirPi = (area: number): number => (area * values.piOver7) / 7 / Math.PI;

test('the frustum given by its slant has 224 square feet', () => {
  const { small, large, slant, area } = values.bySlant;
  expectWithin(byTheirPi(laidBySlant(feet(small), feet(large), feet(slant)).lateralArea), area, 0.5);
});

test('the frustum given by its depth has 1611 square feet, and would not if depth were taken for slant', () => {
  const { small, large, depth, area } = values.byDepth;
  // 1611.50 by 22/7, of which the answer gives the whole feet.
  expectWithin(byTheirPi(laidByHeight(feet(small), feet(large), feet(depth)).lateralArea), area, 1);
  const wrong = byTheirPi(laidBySlant(feet(small), feet(large), feet(depth)).lateralArea);
  expect(Math.abs(wrong - area)).toBeGreaterThan(10);
});
