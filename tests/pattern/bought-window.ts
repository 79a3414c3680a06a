// Tiles of a package from outside (`tests/outside/bought-tiles`) as pictures: their size is their repeat.
import { createRequire } from 'node:module';

const packed: unknown = createRequire(import.meta.url)('tailwind-heropatterns/patterns.js');

/** Part of the pattern that a tile makes, on white: from a place of it, so many tiles wide and high. */
export interface TileWindow {
  readonly at: { readonly x: number; readonly y: number };
  readonly across: number;
  readonly up: number;
}

/** An SVG of such a part, and the size of the tile and of the part in its px. */
export function boughtWindow(name: string, { at, across, up }: TileWindow) {
  const address = (packed as Readonly<Record<string, string>>)[name] ?? '';
  const [, coded = ''] = /url\("data:image\/svg\+xml,(.*)"\)/s.exec(address) ?? [];
  const svg = decodeURIComponent(coded)
    .replaceAll('FILLCOLOR', '#123456')
    .replaceAll("fill-opacity='FILLOPACITY'", '');
  const size = (key: string) => Number(new RegExp(`<svg[^>]*\\b${key}=['"]([\\d.]+)`).exec(svg)?.[1]);
  const [width, height] = [size('width'), size('height')];
  const box = /viewBox=['"]([^'"]+)/.exec(svg)?.[1] ?? `0 0 ${width} ${height}`;
  const inner = svg.slice(svg.indexOf('>', svg.indexOf('<svg')) + 1, svg.lastIndexOf('</svg'));
  const copies = [0, 1, 2].flatMap((i) =>
    [0, 1, 2].map((j) => {
      const [x, y] = [(i - at.x) * width, (j - at.y) * height];
      const isSeen = i + 1 > at.x && i < at.x + across && j + 1 > at.y && j < at.y + up;
      // The engine crashes on clipped groups far off the picture.
      return !isSeen
        ? ''
        : `<svg x="${x}" y="${y}" width="${width}" height="${height}" viewBox="${box}">${inner}</svg>`;
    }),
  );
  const [w, h] = [across * width, up * height];
  const art = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}"><rect width="100%" height="100%" fill="#fff"/>${copies.join('')}</svg>`;
  return { art, width, height, across: w, up: h };
}
