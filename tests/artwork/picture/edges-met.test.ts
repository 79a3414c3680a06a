// Which pictures go on across their borders: tiles of a package from outside, and crops of them, drawn by another renderer.
import { expect, test } from 'vitest';
import { edgesMet } from '../../../src/artwork/picture/edges-met.ts';
import { BorderRows } from '../../../src/artwork/picture/picture-rows.ts';
import { goesOnAcross } from '../../../src/artwork/picture/wrapped-picture.ts';
import { boughtWindow, type TileWindow } from '../../pattern/bought-window.ts';
import { drawn } from '../../pictures/compare.ts';

async function seen(name: string, window: TileWindow) {
  const { art, width, height, across } = boughtWindow(name, window);
  // Whole pixels to each px of the tile, so that a tile ends on whole ones.
  const perPx = Math.round(150 / Math.sqrt(width * height));
  const picture = await drawn(art, Math.round(across * perPx));
  const rgb = Uint8Array.from({ length: 3 * picture.width * picture.height }, (_, i) => {
    return picture.data[4 * Math.floor(i / 3) + (i % 3)] ?? 0;
  });
  return { width: picture.width, height: picture.height, rgb };
}

// polka-dots: its rounds touch the borders. glamorous, skulls: lines of two pixels cross them.
test.each(['jigsaw', 'glamorous', 'skulls', 'polka-dots'])('a tile goes on: %s', async (name) => {
  expect(goesOnAcross(await seen(name, { at: { x: 0, y: 0 }, across: 1, up: 1 }))).toBe(true);
});

// Crops whose lines are so thin that no long stretch of a border shows that they end there.
test.each([
  ['jigsaw', 1.39, 1],
  ['glamorous', 1.44, 1.56],
  ['skulls', 1, 1.37],
  ['lines-in-motion', 1.16, 1],
  ['i-like-food', 1.54, 1],
  ['temple', 1.68, 1.58],
])('a crop does not: %s, %d by %d', async (name, across, up) => {
  expect(goesOnAcross(await seen(name, { at: { x: 0.37, y: 0.61 }, across, up }))).toBe(false);
});

test('a round that touches the border is told, and a line that ends there is not', () => {
  // Film that is so wide at its border, and so much wider each row further in.
  const film = (wide: number, growing: number) => {
    const value = (i: number, k: number) => {
      const depth = k < 0 || k > 15 ? 0 : 15 - k;
      return k <= 15 && k >= 8 && Math.abs(i - 20) <= (wide + growing * depth) / 2 ? 0 : 255;
    };
    return new BorderRows({ value, along: 40, size: 16 });
  };
  expect(edgesMet(film(5, 4))).toMatchObject({ meet: true, touching: [{}] });
  expect(edgesMet(film(5, 0))).toMatchObject({ meet: false, touching: [] });
});
