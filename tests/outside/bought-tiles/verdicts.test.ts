// What `repeat` says of the tiles, which join, and of crops of them, which do not: as drawings and as pictures 300 px wide.
// All of them take over a minute: a plain run looks at some, VERDICTS=all at all.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { expect, test } from 'vitest';
import { readTile, type Tile } from '../../../src/artwork/tile.ts';
import { freeStudyOf } from '../../../src/pattern/study/repeat-study.ts';
import type { TileWindow } from '../../pattern/bought-window.ts';
import { boughtTiles, seen } from './tiles.ts';
import { cropOf, normalise, pictureSoWide, tileNames, whole, withOpacity } from './windows.ts';

type Verdict = 'joins' | 'joins as far as can be told' | 'cannot be told' | 'does not join';
type Kind = 'tiles' | 'crops' | 'tiles as pictures' | 'crops as pictures';

const { leftOut, verdicts } = JSON.parse(
  readFileSync(join(import.meta.dirname, './values.json'), 'utf8'),
) as {
  readonly leftOut: Readonly<Record<string, string>>;
  /** Of each kind the names of those of which anything else is said than "joins" of tiles, "does not join" of crops. */
  readonly verdicts: Readonly<Record<Kind, Readonly<Partial<Record<Verdict, readonly string[]>>>>>;
};

const names = tileNames.filter((name) => !(name in leftOut));
const isAll = process.env.VERDICTS === 'all';

function verdictOf(tile: Tile): Verdict {
  const { joins, isDoubtful } = freeStudyOf(tile, {
    a: { x: tile.width, y: 0 },
    b: { x: 0, y: -tile.height },
  });
  if (joins) return isDoubtful ? 'joins as far as can be told' : 'joins';
  return isDoubtful ? 'cannot be told' : 'does not join';
}

function drawing(name: string, { at, across, up }: TileWindow): Tile {
  const [bought] = boughtTiles((one) => one === name);
  if (!bought) throw new Error(`${name} is not in the package`);
  const { tile } = bought;
  if (across === 1 && up === 1) return tile;
  const [width, height] = [across * tile.width, up * tile.height];
  const shown = seen(tile, { x: at.x * tile.width, y: at.y * tile.height }, width, height, true);
  return { width, height, layers: tile.layers.map((layer, i) => ({ ...layer, ...shown[i] })) };
}

function picture(name: string, window: TileWindow): Tile {
  const { width, height, data } = withOpacity(pictureSoWide(name, window, 300));
  const bytes = new Uint8Array(PNG.sync.write(Object.assign(new PNG({ width, height }), { data })));
  return readTile(bytes, `${name}.png`, normalise, { across: 60, mayStep: true }).tile;
}

const kinds: readonly (readonly [Kind, number, (name: string, i: number) => Tile])[] = [
  ['tiles', 8, (name) => drawing(name, whole)],
  ['crops', 8, (name, i) => drawing(name, cropOf(name, i))],
  ['tiles as pictures', 16, (name) => picture(name, whole)],
  ['crops as pictures', 16, (name, i) => picture(name, cropOf(name, i))],
];

test.each(kinds)('of %s that is said which values.json has', { timeout: 300_000 }, (kind, every, read) => {
  const usual: Verdict = kind.startsWith('tiles') ? 'joins' : 'does not join';
  const known = Object.entries(verdicts[kind]) as readonly (readonly [Verdict, readonly string[]])[];
  const asked = names.map((name, i) => ({ name, i })).filter(({ i }) => isAll || i % every === 4);
  const said = asked.map(({ name, i }) => `${name}: ${verdictOf(read(name, i))}`);
  const expected = asked.map(
    ({ name }) => `${name}: ${known.find(([, those]) => those.includes(name))?.[0] ?? usual}`,
  );
  expect(said).toEqual(expected);
});

test('no tile that joins is told not to, but the two that truly do not', () => {
  expect(verdicts.tiles['does not join']).toEqual(['hexagons', 'endless-clouds']);
  expect(verdicts['tiles as pictures']['does not join'] ?? []).toEqual([]);
});
