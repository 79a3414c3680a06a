import { expect, test } from 'vitest';
import { paintingOrderFindings } from '../../src/artwork/painting-order.ts';
import { polygon } from '../../src/geometry/contour.ts';

const square = (x: number, side: number) =>
  polygon([
    { x, y: 0 },
    { x: x + side, y: 0 },
    { x: x + side, y: side },
    { x, y: side },
  ]);
const at = (colour: string, x: number) => ({ colour, shape: { contours: [square(x, 10)] } });
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

test('boxes that meet where the areas do not are nothing to say', () => {
  const corner = (x: number, y: number) =>
    polygon([
      { x, y },
      { x: 10 - x, y },
      { x, y: 10 - y },
    ]);
  const painted = [
    at('#f00', 40),
    { colour: '#00f', shape: { contours: [corner(0, 0)] } },
    { colour: '#f00', shape: { contours: [corner(9, 9)] } },
  ];
  expect(rules(painted)).toEqual([]);
});
