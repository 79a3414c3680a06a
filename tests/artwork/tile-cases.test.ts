// Every case of tests/cases/artwork: what we read of a tile against what the rasteriser shows of the file itself.
// Outside: the rasteriser of @resvg/resvg-wasm and the pixel comparison of pixelmatch; sizes by CSS Values and SVG 2.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { readTile } from '../../src/artwork/tile.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';
import { type PictureEngine, pictureEngine } from '../pictures/compare.ts';
import { shareThatDiffers, tileAsSvg } from './tile-picture.ts';

interface Case {
  readonly note: string;
  readonly width: number;
  readonly height: number;
  readonly layers: readonly string[];
  readonly findings: readonly string[];
}

const folder = fileURLToPath(new URL('../cases/artwork/', import.meta.url));
const widthPx = 400;
/** Share of pixels that may differ: what two ways of drawing one edge differ by on these small pictures. */
const mostDiffering = 0.003;

let engine: PictureEngine;
beforeAll(async () => {
  engine = await pictureEngine();
});

const cases = readdirSync(folder).map((name) => ({
  name: name.replaceAll('-', ' '),
  at: `${folder}${name}/`,
}));

describe('a tile is read as a renderer shows it', () => {
  test.each(cases)('$name', ({ at }) => {
    const wanted: Case = JSON.parse(readFileSync(`${at}case.json`, 'utf8'));
    const text = readFileSync(`${at}tile.svg`, 'utf8');
    const { tile, findings } = readTile(text, 'tile.svg', engine.normalise);
    expect(findings.map(({ rule }) => rule)).toEqual(wanted.findings);
    expect(tile.layers.map(({ colour }) => colour)).toEqual(wanted.layers);
    expectWithin(tile.width, wanted.width, 1e-9, 'width');
    expectWithin(tile.height, wanted.height, 1e-9, 'height');
    const [original, ours] = [text, tileAsSvg(tile)].map((svg) => engine.rasterise(svg, widthPx));
    expectAtMost(shareThatDiffers(original, ours), mostDiffering, 'share of differing pixels');
  });

  test('and the comparison sees a shape that has moved by half a mm', () => {
    const text = readFileSync(`${folder}a-clip-path-in-user-space/tile.svg`, 'utf8');
    const { tile } = readTile(text, 'tile.svg', engine.normalise);
    const moved = tileAsSvg(tile).replace('viewBox="0 0', 'viewBox="0.5 0');
    const [original, ours] = [text, moved].map((svg) => engine.rasterise(svg, widthPx));
    expect(shareThatDiffers(original, ours)).toBeGreaterThan(mostDiffering);
  });

  test('and the comparison sees white on nothing', () => {
    const white =
      '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"><path fill="#fff" d="M0 0H9V9Z"/></svg>';
    const empty = white.replace(/<path.*\/>/, '');
    const [one, other] = [white, empty].map((svg) => engine.rasterise(svg, widthPx));
    expect(shareThatDiffers(one, other)).toBeGreaterThan(0.02);
  });
});
