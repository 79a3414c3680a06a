// Items by size against a stable sort of all of them, and how few are looked at where the first will do.
import { expect, test } from 'vitest';
import { leastFirst } from '../../src/geometry/least-first.ts';
import { randomFrom } from './drawn.ts';

test('where the first will do each is looked at once', () => {
  const looked: number[] = [];
  const sizeOf = (size: number) => looked.push(size);
  const [first] = leastFirst([5, 3, 9, 4], sizeOf);
  expect([first, looked]).toEqual([5, [5, 3, 9, 4]]);
});

test.each([0, 1, 2, 3, 50, 501])('%i items come as a sort has them, equals in the order given', (count) => {
  const random = randomFrom(count);
  const items = Array.from({ length: count }, (_, number) => ({ number, size: Math.floor(20 * random()) }));
  const taken = [...leastFirst(items, ({ size }) => size)];
  expect(taken).toEqual(items.toSorted((a, b) => a.size - b.size));
});
