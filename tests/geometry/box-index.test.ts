// An index of very many boxes: found as if one by one, and not handed to the tree in the order in which they stand.
import Flatbush from 'flatbush';
import { expect, test, vi } from 'vitest';
import { BoxIndex } from '../../src/geometry/box-index.ts';

const count = 60_000;
/** Steps along one side of a square, and its other three. Sorted as they stand they take as long as their square. */
const boxAt = (i: number): readonly [number, number, number, number] =>
  i < count - 3 ? [i, 0, i + 1, 0] : [0, 0, count, count];
const indexed = () =>
  new BoxIndex(count, (add) => {
    for (let i = 0; i < count; i++) add(...boxAt(i));
  });

test('boxes in a row are handed to the tree out of order', () => {
  const added = vi.spyOn(Flatbush.prototype, 'add');
  indexed();
  const lefts = added.mock.calls.map(([minX]) => Number(minX));
  added.mockRestore();
  expect(lefts).toHaveLength(count);
  const neighbours = lefts.filter((left, i) => Math.abs(left - (lefts[i - 1] ?? left + 9)) <= 2);
  expect(neighbours.length).toBeLessThan(count / 100);
});

test('they are found by the numbers that they were given', () => {
  const index = indexed();
  const odd = (i: number): boolean => i % 2 === 1;
  const met = (isWanted?: (box: number) => boolean): readonly number[] =>
    [...index.meeting(500.2, 0, 502.8, 0, isWanted)].sort((a, b) => a - b);
  expect(met()).toEqual([500, 501, 502, count - 3, count - 2, count - 1]);
  expect(met(odd)).toEqual([501, count - 3, count - 1]);
  expect(index.nearest(700.5, -1, 1, 9, (i) => i < 800)).toEqual([700]);
});
