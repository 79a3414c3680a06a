// The same tiles as pictures made of pixels, and crops of them: which are taken for pictures that go on across their borders.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { goesOnAcross } from '../../../src/artwork/wrapped-picture.ts';
import { randomFrom } from '../../geometry/drawn.ts';
import { boughtWindow, type TileWindow } from '../../pattern/bought-window.ts';
import { drawn } from '../../pictures/compare.ts';

const { leftOut, pictures } = JSON.parse(
  readFileSync(join(import.meta.dirname, './values.json'), 'utf8'),
) as {
  readonly leftOut: Readonly<Record<string, string>>;
  readonly pictures: { readonly tilesNotTold: readonly string[]; readonly cropsTaken: readonly string[] };
};

const packed: unknown = createRequire(import.meta.url)('tailwind-heropatterns/patterns.js');
const names = Object.keys(packed as object).filter((name) => !(name in leftOut));

/** About 150 pixels to the tile, whole ones to each px of it, so that it ends on whole ones. */
async function isTaken(name: string, window: TileWindow): Promise<boolean> {
  const { width, height } = boughtWindow(name, window);
  // From a whole px of the tile: elsewhere the drawing engine leaves a hair of ground between the tile's own copies.
  const at = { x: Math.floor(window.at.x * width) / width, y: Math.floor(window.at.y * height) / height };
  const { art, across } = boughtWindow(name, { ...window, at });
  const perPx = Math.max(1, Math.round(150 / Math.sqrt(width * height)));
  const { data, ...picture } = await drawn(art, Math.round(across * perPx));
  const count = picture.width * picture.height;
  const rgb = Uint8Array.from({ length: 3 * count }, (_, i) => data[4 * Math.floor(i / 3) + (i % 3)] ?? 0);
  return goesOnAcross({ width: picture.width, height: picture.height, rgb });
}

/** Part of a pattern, from a place drawn by its name: a crop both ways, or in turn one way only. */
function cropOf(name: string, i: number): TileWindow {
  const random = randomFrom([...name].reduce((sum, letter) => sum + letter.charCodeAt(0), 0));
  const at = { x: random(), y: random() };
  const [across, up] = [1.1 + 0.35 * random(), 1.1 + 0.35 * random()];
  return { at, across: i % 3 === 1 ? 1 : across, up: i % 3 === 2 ? 1 : up };
}

async function taken(windowOf: (name: string, i: number) => TileWindow): Promise<readonly string[]> {
  const found: string[] = [];
  for (const [i, name] of names.entries()) if (await isTaken(name, windowOf(name, i))) found.push(name);
  return found;
}

test('of 82 tiles as pictures all are told to go on but those in values.json', async () => {
  const told = await taken(() => ({ at: { x: 0, y: 0 }, across: 1, up: 1 }));
  expect(names.filter((name) => !told.includes(name))).toEqual(pictures.tilesNotTold);
});

test('of 82 crops those are taken for tiles whose edges all go on', async () => {
  expect([...(await taken(cropOf))].sort()).toEqual(pictures.cropsTaken);
});
