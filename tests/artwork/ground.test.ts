// Colours that are only the ground. Outside: what @resvg/resvg-wasm draws of the same art on another ground.
import { beforeAll, describe, expect, test } from 'vitest';
import { readTile, type Tile } from '../../src/artwork/tile.ts';
import { Refused } from '../../src/finding.ts';
import { expectAtMost } from '../closeness.ts';
import { type PictureEngine, pictureEngine } from '../pictures/compare.ts';
import { tileText } from './a-tile.ts';
import { shareThatDiffers, tileAsSvg } from './tile-picture.ts';

let engine: PictureEngine;
beforeAll(async () => {
  engine = await pictureEngine();
});

const cream = '#f4efe2';
/** Cream behind all, through a ring, and over two colours at once; then film again on it. */
const art = tileText(
  `<rect width="40" height="40" fill="${cream}"/>
   <circle cx="14" cy="15" r="11" fill="#1f7a5a"/><rect x="20" y="8" width="16" height="24" fill="#d98b1f"/>
   <circle cx="14" cy="15" r="5" fill="${cream}"/><path d="M8 22H34L30 27H12Z" fill="${cream}"/>
   <circle cx="14" cy="15" r="2.5" fill="#d98b1f"/>`,
);
const widthPx = 400;
/** As drawn, with nothing where the ground is. */
const withoutGround = (): Uint8Array => engine.rasterise(art.replaceAll(cream, '#e6aaff'), widthPx);
const drawn = (tile: Tile): Uint8Array => engine.rasterise(tileAsSvg(tile), widthPx);

describe('the ground of artwork', () => {
  test('is left out of a drawing, and out of whatever it is painted over', () => {
    const { tile, grounds, findings } = readTile(art, 'bought.svg', engine.normalise, { ground: [cream] });
    expect(tile.layers.map(({ colour }) => colour)).toEqual(['#1f7a5a', '#d98b1f']);
    expect([grounds, findings]).toEqual([[cream], []]);
    expectAtMost(shareThatDiffers(drawn(tile), withoutGround()), 0.002, 'pixels that differ, share');
  });

  test('is left out of a picture of one too', () => {
    const png = engine.rasterise(art, widthPx);
    const { tile, grounds } = readTile(png, 'bought.png', engine.normalise, { ground: [cream], across: 40 });
    expect(tile.layers.map(({ colour }) => colour).sort()).toEqual(['#1f7a5a', '#d98b1f']);
    expect(grounds).toEqual([cream]);
    expectAtMost(shareThatDiffers(drawn(tile), withoutGround()), 0.01, 'pixels that differ, share');
  });

  test('leaves nothing of art that has no other colour', () => {
    const one = tileText(`<circle cx="20" cy="20" r="9" fill="${cream}"/>`);
    const read = () => readTile(one, 'bought.svg', engine.normalise, { ground: [cream] });
    expect(read).toThrow(Refused);
    expect(read).toThrow(/nothing but its ground/);
  });
});
