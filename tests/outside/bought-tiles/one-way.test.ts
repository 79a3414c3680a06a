// Crops whose borders meet though they are no whole repeat: only how their art is spaced tells. Right is what the tiles repeat by.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Tile } from '../../../src/artwork/tile.ts';
import { freeStudyOf } from '../../../src/pattern/study/repeat-study.ts';
import { boughtTiles, seen } from './tiles.ts';

const { spacing } = JSON.parse(readFileSync(join(import.meta.dirname, './values.json'), 'utf8')) as {
  readonly spacing: {
    readonly jumps: Readonly<Record<string, string>>;
    readonly notTold: Readonly<Record<string, string>>;
  };
};

/** Tiles of few shapes: those whose crops were taken for whole before two copies were looked at, and some more. */
const names = [
  ...['brick-wall', 'charlie-brown', 'falling-triangles', 'four-point-stars', 'heavy-rain', 'polka-dots'],
  ...['rails', 'stamp-collection', 'stripes', 'death-star', 'hexagons'],
];

const tiles = boughtTiles((name) => names.includes(name));

/** What is found of a drawing that is to go on by its own size. */
const studied = ({ width, height, layers }: Pick<Tile, 'width' | 'height' | 'layers'>) =>
  freeStudyOf({ width, height, layers }, { a: { x: width, y: 0 }, b: { x: 0, y: -height } });

/** The pattern of a tile, so many tiles wide and high. */
function cropped(tile: Tile, across: number, up: number) {
  const [width, height] = [across * tile.width, up * tile.height];
  const at = { x: 0.31 * tile.width, y: 0.17 * tile.height };
  const shown = seen(tile, at, width, height, true);
  return { width, height, layers: tile.layers.map((layer, i) => ({ ...layer, ...shown[i] })) };
}

test('whole tiles go on, but where they are drawn with a wider gap at their borders', () => {
  const told = tiles.flatMap(({ name, tile }) => (studied(tile).joins ? [] : [name]));
  expect(told.sort()).toEqual(Object.keys(spacing.jumps).sort());
});

test.each([
  ['across', 1.4, 1],
  ['up', 1, 1.4],
] as const)('of crops one way alone, %s, all are told but those in values.json', (way, across, up) => {
  const taken = tiles.flatMap(({ name, tile }) =>
    studied(cropped(tile, across, up)).joins ? [`${name}, ${way}`] : [],
  );
  expect(taken.sort()).toEqual(
    Object.keys(spacing.notTold)
      .filter((one) => one.endsWith(way))
      .sort(),
  );
});

test('the repeat of a crop one way is offered, never taken unasked', () => {
  const stamps = tiles.find(({ name }) => name === 'stamp-collection');
  if (!stamps) throw new Error('the tile is not in the package');
  const { period, jump, jumpsUp } = studied(cropped(stamps.tile, 1, 1.4));
  expect([jumpsUp, studied(cropped(stamps.tile, 1.4, 1)).jumpsUp]).toEqual([true, false]);
  expect(jump).toBeCloseTo(0.4 * stamps.tile.height, 2);
  expect(period?.confidence).toBeLessThan(0.9);
  expect(Math.abs(period?.b.y ?? 0)).toBeCloseTo(stamps.tile.height, 2);
});
