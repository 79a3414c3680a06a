// The same tiles as pictures made of pixels, and crops of them: which are taken for pictures that go on across their borders.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { decode, encode } from 'jpeg-js';
import { PNG } from 'pngjs';
import { expect, test } from 'vitest';
import type { PixelsOnWhite } from '../../../src/artwork/svg-normalise.ts';
import { readTile } from '../../../src/artwork/tile.ts';
import { goesOnAcross } from '../../../src/artwork/wrapped-picture.ts';
import { joinsOf } from '../../../src/pattern/joins.ts';
import { randomFrom } from '../../geometry/drawn.ts';
import { boughtWindow, type TileWindow } from '../../pattern/bought-window.ts';
import { pictureEngine } from '../../pictures/compare.ts';

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

const { normalise, onWhite } = await pictureEngine();

const packed: unknown = createRequire(import.meta.url)('tailwind-heropatterns/patterns.js');
const names = Object.keys(packed as object);

/** Drawn in so many px a px of the tile; or so wide, its lines wherever that puts them; or that and packed as a JPEG. */
type Kind = { readonly perPx: number } | { readonly wide: number; readonly quality?: number };

/** An SVG stretched to whole pixels, as a tile that is saved so wide is. */
const stretched = (svg: string, width: number, height: number): string =>
  svg.replace(
    /width="[\d.]+" height="[\d.]+" viewBox/,
    `width="${width}" height="${height}" preserveAspectRatio="none" viewBox`,
  );

function pictureOf(name: string, window: TileWindow, kind: Kind): PixelsOnWhite {
  const { art, across, width, height } = boughtWindow(name, window);
  if ('perPx' in kind) return onWhite(art, Math.round(across * kind.perPx));
  const high = Math.round((kind.wide * window.up * height) / (window.across * width));
  const picture = onWhite(stretched(art, kind.wide, high), kind.wide);
  if (kind.quality === undefined) return picture;
  const { data, ...size } = encode(withOpacity(picture), kind.quality);
  return { ...size, rgb: decode(data, { useTArray: true, formatAsRGBA: false }).data };
}

/** Four bytes a pixel, all of it opaque: as JPEGs and PNGs are packed from. */
function withOpacity({ width, height, rgb }: PixelsOnWhite) {
  const data = Buffer.alloc(4 * width * height, 255);
  for (let from = 0, to = 0; from < rgb.length; from += 3, to += 4)
    for (let channel = 0; channel < 3; channel++) data[to + channel] = rgb[from + channel] ?? 0;
  return { width, height, data };
}

/** Whole ones to each px of a tile, and about 150 to the tile. */
const wholePixels = (name: string): Kind => {
  const { width, height } = boughtWindow(name, { at: { x: 0, y: 0 }, across: 1, up: 1 });
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
    const told = taken(tiles, () => ({ at: { x: 0, y: 0 }, across: 1, up: 1 }), of);
    expect(tiles.filter((name) => !told.includes(name))).toEqual(pictures.tilesNotTold[kind]);
  },
);

// What is traced errs by a fraction of a pixel, and a side drawn on a border then stands on no grid: the pixels tell.
test.each(['boxes', 'houndstooth', 'melt', 'dominos'])(
  'what is traced of such a picture joins: %s',
  (name) => {
    const whole = { at: { x: 0, y: 0 }, across: 1, up: 1 };
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

/** Part of a pattern, from a place drawn by its name: a crop both ways, or in turn one way only. */
function cropOf(name: string, i: number): TileWindow {
  const random = randomFrom([...name].reduce((sum, letter) => sum + letter.charCodeAt(0), 0));
  const at = { x: random(), y: random() };
  const [across, up] = [1.1 + 0.35 * random(), 1.1 + 0.35 * random()];
  const window = { at, across: i % 3 === 1 ? 1 : across, up: i % 3 === 2 ? 1 : up };
  // From a whole px of the tile: elsewhere the drawing engine leaves a hair of ground between the tile's own copies.
  const { width, height } = boughtWindow(name, window);
  return { ...window, at: { x: Math.floor(at.x * width) / width, y: Math.floor(at.y * height) / height } };
}

const cropped = names.filter((name) => !(name in leftOut));

test('of 82 crops those are taken for tiles whose edges all go on', () => {
  expect([...taken(cropped, cropOf, wholePixels)].sort()).toEqual(pictures.cropsTaken);
});
