import { expect, test } from 'vitest';
import { layeredAreas, type PaintedArea } from '../../src/artwork/painting-order.ts';
import { polygon } from '../../src/geometry/contour.ts';
import { shapeArea } from '../../src/geometry/measure.ts';
import { expectWithin } from '../closeness.ts';

const square = (x: number, side: number) =>
  polygon([
    { x, y: 0 },
    { x: x + side, y: 0 },
    { x: x + side, y: side },
    { x, y: side },
  ]);
const at = (colour: string, x: number) => ({ colour, shape: { contours: [square(x, 10)] } });
const layered = (painted: readonly PaintedArea[]) =>
  layeredAreas(
    painted.map(({ colour, shape }) => ({ colour, shapes: [shape] })),
    'tile.svg',
  );
const rules = (painted: readonly PaintedArea[]) => layered(painted).findings.map(({ rule }) => rule);
const areas = (painted: readonly PaintedArea[]) =>
  layered(painted).areas.map(({ shapes }) => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0));

test('a colour painted again over one that is stacked above it is said, once for each pair', () => {
  const painted = [at('#f00', 0), at('#00f', 5), at('#f00', 8), at('#f00', 9)];
  expect(rules(painted)).toEqual(['painting-order']);
});

test('the place that is told lies where the one is painted over the other', () => {
  // From 8 to 15 mm of it is under what is painted again.
  const [told] = layered([at('#f00', 0), at('#00f', 5), at('#f00', 8)]).findings;
  expectWithin(told?.where.x ?? 0, 11.5, 1e-6);
  expectWithin(told?.where.y ?? 0, 5, 1e-6);
});

test('what it covers is cut away from the layer that would lie over it, and from that alone', () => {
  const [first, under, again, last] = areas([at('#f00', 0), at('#00f', 5), at('#f00', 8), at('#0f0', 0)]);
  expectWithin(first ?? 0, 100, 1e-9, 'area of the colour below, painted first');
  expectWithin(under ?? 0, 30, 1e-6, 'area of the colour above, under what was painted later');
  expectWithin(again ?? 0, 100, 1e-9, 'area painted again');
  expectWithin(last ?? 0, 100, 1e-9, 'area painted last');
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
