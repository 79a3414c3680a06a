// Extremes of more numbers than one call takes as arguments, against those of the same numbers put in order.
import { expect, test } from 'vitest';
import { least, most } from '../../src/geometry/extremes.ts';
import { randomFrom } from './drawn.ts';

const random = randomFrom(7);
const many = Array.from({ length: 300_000 }, () => 2 * random() - 1);
const sorted = Float64Array.from(many).sort();

test('are those of all, however many', () => {
  expect(most(many)).toBe(sorted.at(-1));
  expect(least(many)).toBe(sorted[0]);
});

test('are the bound where there is none, or none past it', () => {
  expect([most([]), least([])]).toEqual([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  expect([most([], 0), most([-1, -2], 0), most([-1, 3], 0)]).toEqual([0, 0, 3]);
  expect([least([], 5), least([6, 7], 5), least([6, 3], 5)]).toEqual([5, 5, 3]);
});
