// A picture of a seamless tile joins as its drawing does; a crop of it does not.
import { PNG } from 'pngjs';
import { expect, test } from 'vitest';
import { readTile, type Tile } from '../../src/artwork/tile.ts';
import { joinsOf } from '../../src/pattern/joins.ts';
import { drawn, pictureEngine } from '../pictures/compare.ts';

const { normalise } = await pictureEngine();

/** Dots of which one stands over a corner of the tile and one over its side, and a leaf over its lower border. */
const motifs = [
  '<circle cx="0" cy="0" r="5"/>',
  '<circle cx="40" cy="17" r="4"/>',
  '<path d="M14 26Q24 30 14 36Q9 30 14 26Z"/>',
];

async function tileOf(width: number, height: number): Promise<Tile> {
  const copies = [-1, 0, 1].flatMap((i) =>
    [-1, 0, 1].map((j) => `<g transform="translate(${40 * i} ${30 * j})">${motifs.join('')}</g>`),
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><rect width="100%" height="100%" fill="#fff"/><g fill="#17566b">${copies.join('')}</g></svg>`;
  const bytes = PNG.sync.write(await drawn(svg, width * 5));
  return readTile(new Uint8Array(bytes), 'dots.png', normalise, { across: width }).tile;
}

test('a seamless tile made of pixels joins, its motifs whole across its borders', async () => {
  const tile = await tileOf(40, 30);
  expect([tile.width, tile.height, tile.pixels]).toEqual([40, 30, undefined]);
  const joins = joinsOf(tile, { a: { x: 40, y: 0 }, b: { x: 0, y: -30 } });
  expect(joins.joins).toBe(true);
  expect(joins.crossings).toBeGreaterThan(8);
  // Copies of one tracing meet, whatever a pixel of 0.2 mm leaves open; they are looked at a hair beside the border.
  expect(joins.mismatch).toBeLessThan(1e-4);
});

test('a crop of it is seen to be none, and keeps its pixels', async () => {
  const tile = await tileOf(34, 26);
  expect(tile.pixels).toMatchObject({ width: 170, height: 130, pixel: { x: 0.2, y: 0.2 } });
  expect(joinsOf(tile, { a: { x: 34, y: 0 }, b: { x: 0, y: -26 } }).joins).toBe(false);
});
