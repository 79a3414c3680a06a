import { expect, test } from 'vitest';
import { cornersOf } from '../../src/sheet/convolution.ts';
import { noFit } from '../../src/sheet/no-fit.ts';
import { depthAt, escapeFrom } from '../../src/sheet/overlap-depth.ts';

const ring = (...corners: readonly (readonly [number, number])[]) => corners.map(([x, y]) => ({ x, y }));

const square = ring([0, 0], [10, 0], [10, 10], [0, 10]);
const bay = ring([0, 0], [40, 0], [40, 30], [25, 30], [25, 10], [15, 10], [15, 30], [0, 30]);

test('two squares may not be closer than side by side', () => {
  const region = noFit(cornersOf(square), cornersOf(square), 1);
  expect(region).toMatchObject({ minX: -10, minY: -10, maxX: 10, maxY: 10 });
  expect(depthAt(region, 10, 0)).toBe(0);
  expect(depthAt(region, 9, 0)).toBeCloseTo(1, 12);
  expect(depthAt(region, 3, -4)).toBeCloseTo(6, 12);
  expect(escapeFrom(region, 9, 2)).toEqual({ x: 1, y: 0 });
});

test('a piece as wide as a bay less a hair fits into it, one a hair wider does not', () => {
  const narrow = ring([0, 0], [9, 0], [9, 30], [0, 30]);
  const wide = ring([0, 0], [11, 0], [11, 30], [0, 30]);
  expect(depthAt(noFit(cornersOf(bay), cornersOf(narrow), 1), 15.5, 10.5)).toBe(0);
  expect(depthAt(noFit(cornersOf(bay), cornersOf(narrow), 1), 15.5, 9.5)).toBeCloseTo(0.5, 12);
  expect(depthAt(noFit(cornersOf(bay), cornersOf(wide), 1), 14.5, 10.5)).toBeGreaterThan(0.4);
});

test('a corner on the level of the point asked about never turns inside out', () => {
  const region = noFit(cornersOf(square), cornersOf(ring([0, 9], [0, 0], [14, 9])), 1);
  for (const dx of [-1e-15, 0, 1e-15])
    for (const dy of [-1e-15, 0, 1e-15]) expect(depthAt(region, dx, dy)).toBeGreaterThan(5);
});
