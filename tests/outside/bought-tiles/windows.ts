// Crops of the tiles, and tiles and crops as pictures made of pixels.
import { createRequire } from 'node:module';
import type { PixelsOnWhite } from '../../../src/artwork/svg/svg-normalise.ts';
import { randomFrom } from '../../geometry/drawn.ts';
import { boughtWindow, type TileWindow } from '../../pattern/bought-window.ts';
import { pictureEngine } from '../../pictures/compare.ts';

export const { normalise, onWhite } = await pictureEngine();

const packed: unknown = createRequire(import.meta.url)('tailwind-heropatterns/patterns.js');

/** The names of all tiles of the package. */
export const tileNames = Object.keys(packed as object);

export const whole: TileWindow = { at: { x: 0, y: 0 }, across: 1, up: 1 };

/** Part of a pattern, from a place drawn by its name: a crop both ways, or in turn one way only. */
export function cropOf(name: string, i: number): TileWindow {
  const random = randomFrom([...name].reduce((sum, letter) => sum + letter.charCodeAt(0), 0));
  const at = { x: random(), y: random() };
  const [across, up] = [1.1 + 0.35 * random(), 1.1 + 0.35 * random()];
  const window = { at, across: i % 3 === 1 ? 1 : across, up: i % 3 === 2 ? 1 : up };
  // From a whole px of the tile: elsewhere the drawing engine leaves a hair of ground between the tile's own copies.
  const { width, height } = boughtWindow(name, window);
  return { ...window, at: { x: Math.floor(at.x * width) / width, y: Math.floor(at.y * height) / height } };
}

/** An SVG stretched to whole pixels, as a tile that is saved so wide is. */
const stretched = (svg: string, width: number, height: number): string =>
  svg.replace(
    /width="[\d.]+" height="[\d.]+" viewBox/,
    `width="${width}" height="${height}" preserveAspectRatio="none" viewBox`,
  );

/** A tile, or a crop, as a picture so many px wide: its lines wherever that puts them. */
export function pictureSoWide(name: string, window: TileWindow, wide: number): PixelsOnWhite {
  const { art, across, up } = boughtWindow(name, window);
  return onWhite(stretched(art, wide, Math.round((wide * up) / across)), wide);
}

/** Four bytes a pixel, all of it opaque: as JPEGs and PNGs are packed from. */
export function withOpacity({ width, height, rgb }: PixelsOnWhite) {
  const data = Buffer.alloc(4 * width * height, 255);
  for (let from = 0, to = 0; from < rgb.length; from += 3, to += 4)
    for (let channel = 0; channel < 3; channel++) data[to + channel] = rgb[from + channel] ?? 0;
  return { width, height, data };
}
