// Finer repeats that the tiles hold, which they have no room to show twice: held against areas, not against what the finder goes by.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Tile } from '../../../src/artwork/tile.ts';
import { cellArea } from '../../../src/pattern/lattice.ts';
import { freeStudyOf, sureRepeat } from '../../../src/pattern/repeat-study.ts';
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

const tiles = boughtTiles((name) => process.env.ALL !== undefined || name in finer);

test.each(tiles)('of $name', { timeout: 120_000 }, ({ name, tile }) => {
  const found = finerOf(tile);
  if (process.env.ALL) process.stderr.write(`FINER "${name}": ${found?.count} ${found ? Math.max(differsBy(tile, found.period.a), differsBy(tile, found.period.b)).toFixed(5) : ''}\n`);
  if (process.env.ALL && !found) for (const [n, m] of [[2, 0], [0, 2], [2, 2], [3, 0], [0, 3]] as const) { const d = differsBy(tile, { x: n ? tile.width / n : 0, y: m ? tile.height / m : 0 }); if (d < 0.02) process.stderr.write(`MISSED ${name} ${n} ${m} ${d}\n`); }
  expect(found?.count).toBe(finer[name]);
  if (!found) return;
  expect(Math.max(differsBy(tile, found.period.a), differsBy(tile, found.period.b))).toBeLessThan(0.005);
});
