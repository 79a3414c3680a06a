// The middle of the cheapest places around a wall. Truth is by hand: few enough places to see.
import { expect, test } from 'vitest';
import { middleOfCheapest } from '../../../src/pattern/seam/seam-place.ts';

const middle = (costs: readonly number[], limit: number) => middleOfCheapest(Float64Array.from(costs), limit);

test.each([
  { says: 'a run that goes on over the end', costs: [0, 0, 1, 0], limit: 0, at: 0 },
  { says: 'the first of runs as wide', costs: [1, 0, 1, 0], limit: 0, at: 1 },
  { says: 'the wider of two runs', costs: [0, 2, 0, 0, 0, 2], limit: 1, at: 3 },
  { says: 'what costs just the limit', costs: [3, 1, 1, 1, 2], limit: 1, at: 2 },
  { says: 'all of them', costs: [1, 1, 1, 1], limit: 1, at: 2 },
])('is that of $says', ({ costs, limit, at }) => {
  expect(middle(costs, limit)).toBe(at);
});
