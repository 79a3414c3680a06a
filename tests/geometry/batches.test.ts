// Batches by definition: each number once, nothing of one meeting anything of another.
import { expect, test } from 'vitest';
import { batchesApart } from '../../src/geometry/batches.ts';
import { type Box, boxesMeet } from '../../src/geometry/box.ts';
import { randomFrom } from './drawn.ts';

test('boxes are looked at in batches that meet nowhere, each of them once', () => {
  const random = randomFrom(31);
  const boxes = Array.from({ length: 400 }, (): Box => {
    const [minX, minY] = [300 * random(), 300 * random()];
    return { minX, minY, maxX: minX + 9 * random(), maxY: minY + 9 * random() };
  });
  const batches = batchesApart(boxes, () => 500);
  expect(batches.length).toBeGreaterThan(3);
  expect(batches.flat().sort((a, b) => a - b)).toEqual(boxes.map((_, i) => i));
  batches.forEach((batch, n) => {
    expect([...batch]).toEqual([...batch].sort((a, b) => a - b));
    const others = batches.slice(n + 1).flat();
    const meets = (i: number) =>
      others.some((j) => {
        const [one, other] = [boxes[i], boxes[j]];
        return one && other && boxesMeet(one, other);
      });
    expect(batch.filter(meets)).toEqual([]);
  });
});

test('what weighs little is one batch, and nothing is none', () => {
  const box = { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  expect(batchesApart([box, box], () => 1)).toEqual([[0, 1]]);
  expect(batchesApart([], () => 1)).toEqual([]);
});
