// Finer repeats that the tiles hold, which they have no room to show twice: held against areas, not against what the finder goes by.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Tile } from '../../../src/artwork/tile.ts';
import { cellArea } from '../../../src/pattern/lattice/lattice.ts';
import { freeStudyOf } from '../../../src/pattern/study/repeat-study.ts';
import { sureRepeat } from '../../../src/pattern/study/sure-repeat.ts';
import { boughtTiles, differsBy } from './tiles.ts';

const { finer } = JSON.parse(readFileSync(join(import.meta.dirname, './values.json'), 'utf8')) as {
  /** Periods to the tile. */
  readonly finer: Readonly<Record<string, number>>;
};

/** Sure repeats finer than the tile, with how many of them it holds. */
function finerOf(tile: Tile) {
  const own = { a: { x: tile.width, y: 0 }, b: { x: 0, y: -tile.height } };
  const { joins, period } = freeStudyOf(tile, own);
  if (!joins || !period || period.along || period.confidence < sureRepeat) return undefined;
  const count = Math.round(cellArea(own) / cellArea(period));
  return count > 1 ? { period, count } : undefined;
}

const tiles = boughtTiles((name) => name in finer || name === 'leaf');

// In leaf one of two was copied by hand: up to 0.05 mm off.
test.each(tiles)('of $name', { timeout: 120_000 }, ({ name, tile }) => {
  const found = finerOf(tile);
  expect(found?.count).toBe(finer[name]);
  if (!found) return;
  expect(Math.max(differsBy(tile, found.period.a), differsBy(tile, found.period.b))).toBeLessThan(0.005);
});
