import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import type { Tile } from '../../../src/artwork/tile.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { joinsOf } from '../../../src/pattern/joins/joins.ts';
import { cellArea, coordinates, type Lattice, step } from '../../../src/pattern/lattice/lattice.ts';
import { type FoundRepeat, repeatTolerance, trueRepeat } from '../../../src/pattern/repeat/true-repeat.ts';
import { randomFrom } from '../../geometry/drawn.ts';
import { boughtTiles, differsBy, seen } from './tiles.ts';

const { leftOut, noAnswer, notJoined } = JSON.parse(
  readFileSync(join(import.meta.dirname, './values.json'), 'utf8'),
) as {
  readonly leftOut: Readonly<Record<string, string>>;
  readonly noAnswer: Readonly<Record<string, string>>;
  readonly notJoined: Readonly<Record<string, string>>;
};

const tiles = boughtTiles((name) => !(name in leftOut));

/** How far a place is from the nearest whole step, mm, for each step that leads there. */
function offStep(p: Point, lattice: Lattice): number {
  const { i, j } = coordinates(lattice, p);
  const [n, m] = [Math.round(i), Math.round(j)];
  const at = step(lattice, n, m);
  return Math.hypot(p.x - at.x, p.y - at.y) / Math.max(1, Math.abs(n), Math.abs(m));
}

const isRight = (tile: Tile, found: FoundRepeat): boolean => {
  const own = { a: { x: tile.width, y: 0 }, b: { x: 0, y: tile.height } };
  const isFiner = Math.round(cellArea(own) / cellArea(found)) > 1;
  return (
    Math.max(offStep(own.a, found), offStep(own.b, found)) <= repeatTolerance &&
    (!isFiner || Math.max(differsBy(tile, found.a), differsBy(tile, found.b)) < 0.005)
  );
};

test('tiles join as whoever drew them laid them: told of all but those in values.json', () => {
  const told = tiles.flatMap(({ name, tile }) => {
    const own = { a: { x: tile.width, y: 0 }, b: { x: 0, y: -tile.height } };
    return joinsOf(tile, own).joins ? [] : [name];
  });
  expect(told.sort()).toEqual(Object.keys(notJoined).sort());
});

const tally = { right: 0, none: [] as string[], takenForWhole: [] as string[] };
afterAll(() => {
  // Each tile twice. A tile that gains or loses its answer is to be looked at.
  expect(tally).toEqual({ right: 161, none: ['stripes', 'diagonal-lines', 'stripes'], takenForWhole: [] });
});

describe.each([
  { how: 'merged', isMerged: true, seed: 1 },
  { how: 'cut where the tile cut them', isMerged: false, seed: 2 },
])('the repeat of a crop whose shapes are $how', ({ isMerged, seed }) => {
  test.each(tiles)('is found for $name', { timeout: 120_000 }, ({ name, tile }) => {
    const random = randomFrom(seed * 1000 + [...name].reduce((sum, letter) => sum + letter.charCodeAt(0), 0));
    const [width, height] = [tile.width, tile.height].map((size) => size * 1.3 * (1 + 0.3 * random()));
    const at = { x: random() * tile.width, y: random() * tile.height };
    const crop = { width: width ?? 0, height: height ?? 0 };
    const layers = seen(tile, at, crop.width, crop.height, isMerged);
    const [found] = trueRepeat(layers, crop);
    // Film that the crop cut is no side that was drawn there.
    const named = layers.map((layer, i) => ({ name: `${i}`, colour: `${i}`, ...layer }));
    const own = { a: { x: crop.width, y: 0 }, b: { x: 0, y: -crop.height } };
    const { joins, sides } = joinsOf({ ...crop, layers: named }, own);
    if (joins && sides.length > 0) tally.takenForWhole.push(name);
    // No answer is an answer where too little shows; a wrong one never is.
    if (!found) {
      expect(Object.keys(noAnswer)).toContain(name);
      tally.none.push(name);
      return;
    }
    expect({ found, isRight: isRight(tile, found) }).toMatchObject({ isRight: true });
    tally.right++;
  });
});
