// The same tiles as pictures made of pixels, and crops of them: which are taken for pictures that go on across their borders.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { decode, encode } from 'jpeg-js';
import { PNG } from 'pngjs';
import { expect, test } from 'vitest';
import { goesOnAcross } from '../../../src/artwork/picture/wrapped-picture.ts';
import type { PixelsOnWhite } from '../../../src/artwork/svg/svg-normalise.ts';
import { readTile } from '../../../src/artwork/tile.ts';
import { joinsOf } from '../../../src/pattern/joins/joins.ts';
import { boughtWindow, type TileWindow } from '../../pattern/bought-window.ts';
import { cropOf, normalise, onWhite, pictureSoWide, tileNames, whole, withOpacity } from './windows.ts';

/** `tilesNotTold`: by kind of picture, the tiles that are not told to go on. */
const { leftOut, pictures } = JSON.parse(
  readFileSync(join(import.meta.dirname, './values.json'), 'utf8'),
) as {
  readonly leftOut: Readonly<Record<string, string>>;
  readonly pictures: {
    readonly tilesNotTold: Readonly<Record<string, readonly string[]>>;
    readonly cropsTaken: readonly string[];
  };
};

const names = tileNames;

/** Drawn in so many px a px of the tile; or so wide, its lines wherever that puts them; or that and packed as a JPEG. */
type Kind = { readonly perPx: number } | { readonly wide: number; readonly quality?: number };

function pictureOf(name: string, window: TileWindow, kind: Kind): PixelsOnWhite {
  if ('perPx' in kind) {
    const { art, across } = boughtWindow(name, window);
    return onWhite(art, Math.round(across * kind.perPx));
  }
  const picture = pictureSoWide(name, window, kind.wide);
  if (kind.quality === undefined) return picture;
  const { data, ...size } = encode(withOpacity(picture), kind.quality);
  return { ...size, rgb: decode(data, { useTArray: true, formatAsRGBA: false }).data };
}

/** Whole ones to each px of a tile, and about 150 to the tile. */
const wholePixels = (name: string): Kind => {
  const { width, height } = boughtWindow(name, whole);
  return { perPx: Math.max(1, Math.round(150 / Math.sqrt(width * height))) };
};

function taken(
  names: readonly string[],
  windowOf: (name: string, i: number) => TileWindow,
  kindOf: (name: string) => Kind,
): readonly string[] {
  const found: string[] = [];
  for (const [i, name] of names.entries())
    if (goesOnAcross(pictureOf(name, windowOf(name, i), kindOf(name)))) found.push(name);
  return found;
}

/** Packing pictures takes the time: of JPEGs every other tile, and those that are not told. */
const everyOther = (kind: string) =>
  names.filter((name, i) => i % 2 === 0 || pictures.tilesNotTold[kind]?.includes(name));

const kinds: readonly (readonly [string, readonly string[], (name: string) => Kind])[] = [
  ['whole px', names, wholePixels],
  ['300 px wide', names, () => ({ wide: 300 })],
  ['512 px wide', names, () => ({ wide: 512 })],
  ['300 px wide, JPEG', everyOther('300 px wide, JPEG'), () => ({ wide: 300, quality: 80 })],
];

test.each(kinds)(
  'of the tiles as pictures, %s, all are told to go on but those in values.json',
  (kind, tiles, of) => {
    const told = taken(tiles, () => whole, of);
    expect(tiles.filter((name) => !told.includes(name))).toEqual(pictures.tilesNotTold[kind]);
  },
);

// What is traced errs by a fraction of a pixel, and a side drawn on a border then stands on no grid: the pixels tell.
test.each(['boxes', 'houndstooth', 'melt', 'dominos'])(
  'what is traced of such a picture joins: %s',
  (name) => {
    const { width, height, data } = withOpacity(pictureOf(name, whole, { wide: 512 }));
    const bytes = new Uint8Array(PNG.sync.write(Object.assign(new PNG({ width, height }), { data })));
    const { tile } = readTile(bytes, `${name}.png`, normalise, { across: 60 });
    const { joins, sides } = joinsOf(tile, { a: { x: tile.width, y: 0 }, b: { x: 0, y: -tile.height } });
    expect([joins, sides.length > 0]).toEqual([true, true]);
    // By other steps than its own size it does not.
    expect(
      joinsOf(tile, { a: { x: tile.width, y: tile.height / 3 }, b: { x: 0, y: -tile.height } }).joins,
    ).toBe(false);
  },
);

const cropped = names.filter((name) => !(name in leftOut));

test('of 82 crops those are taken for tiles whose edges all go on', () => {
  expect([...taken(cropped, cropOf, wholePixels)].sort()).toEqual(pictures.cropsTaken);
});
