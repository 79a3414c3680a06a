// Gradients have one colour as film: the mean of what a renderer shows. Outside: the pixels of @resvg/resvg-wasm.
import { PNG } from 'pngjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { expectWithin } from '../closeness.ts';
import { type PictureEngine, pictureEngine } from '../pictures/compare.ts';
import { readOf, tileText } from './a-tile.ts';
import { tileAsSvg } from './tile-picture.ts';

let engine: PictureEngine;
beforeAll(async () => {
  engine = await pictureEngine();
});

/** The mean of a picture's pixels on white, red, green and blue. */
function meanOf(svg: string): number[] {
  const { data, width, height } = PNG.sync.read(Buffer.from(engine.rasterise(svg, 300)));
  const sums = [0, 0, 0];
  for (let i = 0; i < data.length; i += 4)
    for (const k of [0, 1, 2]) {
      const share = (data[i + 3] ?? 0) / 255;
      sums[k] = (sums[k] ?? 0) + 255 + share * ((data[i + k] ?? 0) - 255);
    }
  return sums.map((sum) => sum / (width * height));
}

const stops =
  '<stop offset=".1" stop-color="#17566b"/><stop offset=".5" stop-color="#e8c15a"/><stop offset="1" stop-color="#a33a2c"/>';
const shade = (kind: string, attributes: string, inside = stops) =>
  `<${kind}Gradient id="g" ${attributes}>${inside}</${kind}Gradient>`;
/** Its box is that of its handles: the renderer takes that of the handles for any path. */
const leaf = '<path d="M5 20C5 5 20 3 38 3C38 20 30 36 12 36C5 36 5 28 5 20Z" fill="url(#g)"/>';

describe('a gradient is cut in the mean of its shades', () => {
  test.each([
    ['along the box of what it fills', shade('linear', '') + leaf],
    ['slanted', shade('linear', 'x2="1" y2="1" gradientTransform="rotate(15)"') + leaf],
    [
      'in the units of the drawing',
      shade('linear', 'gradientUnits="userSpaceOnUse" x1="0" y1="10" x2="10" y2="30"') + leaf,
    ],
    [
      'repeated',
      shade('linear', 'gradientUnits="userSpaceOnUse" x1="0" x2="7" spreadMethod="repeat"') + leaf,
    ],
    [
      'reflected',
      shade('linear', 'gradientUnits="userSpaceOnUse" x1="3" x2="10" spreadMethod="reflect"') + leaf,
    ],
    ['around a middle', shade('radial', '') + leaf],
    ['around a focus of its own', shade('radial', 'cx=".6" cy=".6" r=".7" fx=".3" fy=".4"') + leaf],
    [
      'fading out',
      shade(
        'linear',
        '',
        '<stop stop-color="#17566b"/><stop offset="1" stop-color="#a33a2c" stop-opacity="0"/>',
      ) + leaf,
    ],
    [
      'on a hole',
      `${shade('linear', '')}<path fill-rule="evenodd" d="M2 2H38V38H2ZM4 4H20V36H4Z" fill="url(#g)"/>`,
    ],
    [
      'on a stroke',
      `${shade('linear', '')}<path d="M5 5L35 12L10 35" fill="none" stroke="url(#g)" stroke-width="2"/>`,
    ],
    [
      'in a moved and stretched group',
      `${shade('radial', 'gradientUnits="userSpaceOnUse" cx="10" cy="10" r="15"')}<g transform="matrix(1.5 .2 0 .8 3 5)"><circle cx="12" cy="14" r="10" fill="url(#g)" opacity=".6"/></g>`,
    ],
  ])('%s', async (_, body) => {
    const text = tileText(body);
    const { tile, findings } = await readOf(text);
    expect(findings.map(({ rule, level }) => [rule, level])).toContainEqual(['mean-colour', 'look']);
    const wanted = meanOf(text);
    const got = meanOf(tileAsSvg(tile ?? { width: 1, height: 1, layers: [] }));
    // A gradient covers a part of the picture, by a colour in whole numbers that is sampled some thousand times;
    // the hard edges of a repeat fall between pixels.
    for (const [k, value] of got.entries())
      expectWithin(value, wanted[k] ?? Number.NaN, 1, 'mean of a colour');
  });

  test('one that shows nothing is nothing, and one of a single colour is plain', async () => {
    const clear = shade('linear', '', '<stop stop-opacity="0"/><stop offset="1" stop-opacity="0"/>');
    expect((await readOf(tileText(clear + leaf))).findings.map(({ rule }) => rule)).toEqual(['no-area']);
    const plain = shade('linear', '', '<stop stop-color="#17566b"/>');
    const { tile, findings } = await readOf(tileText(plain + leaf));
    expect(findings).toEqual([]);
    expect(tile?.layers.map(({ colour }) => colour)).toEqual(['#17566b']);
  });
});
