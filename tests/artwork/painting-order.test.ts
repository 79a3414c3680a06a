import { expect, test } from 'vitest';
import { paintingOrderFindings } from '../../src/artwork/painting-order.ts';

const at = (colour: string, x: number) => ({ colour, box: { minX: x, minY: 0, maxX: x + 10, maxY: 10 } });
const rules = (painted: Parameters<typeof paintingOrderFindings>[0]) =>
  paintingOrderFindings(painted, 'tile.svg').map(({ rule }) => rule);

test('a colour painted again over one that is stacked above it is said, once for each pair', () => {
  const painted = [at('#f00', 0), at('#00f', 5), at('#f00', 8), at('#f00', 9)];
  expect(rules(painted)).toEqual(['painting-order']);
});

test('a colour painted again beside the others is nothing to say', () => {
  expect(rules([at('#f00', 0), at('#00f', 5), at('#f00', 40)])).toEqual([]);
});

test('colours each painted in one go are nothing to say, however they overlap', () => {
  expect(rules([at('#f00', 0), at('#f00', 5), at('#00f', 5), at('#00f', 8)])).toEqual([]);
});
