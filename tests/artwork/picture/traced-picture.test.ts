// Pictures made of pixels, traced. Outside: what @resvg/resvg-wasm draws of shapes whose exact edge is known, files written
// by pngjs and jpeg-js, and the layouts of PNG (third edition) and JFIF.
import { encode } from 'jpeg-js';
import { PNG } from 'pngjs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { TraceOptions } from '../../../src/artwork/picture/traced-picture.ts';
import { readArt, readTile, type Tile } from '../../../src/artwork/tile.ts';
import { Refused } from '../../../src/finding.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { pointAt } from '../../../src/geometry/segment.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import { randomFrom } from '../../geometry/drawn.ts';
import { type PictureEngine, pictureEngine } from '../../pictures/compare.ts';
import { tileText } from '../a-tile.ts';
import { shareThatDiffers, tileAsSvg } from '../tile-picture.ts';

let engine: PictureEngine;
beforeAll(async () => {
  engine = await pictureEngine();
});

const paper = '<rect width="40" height="40" fill="#fff"/>';
/** A picture of a drawing of 40 mm, 300 pixels wide: 0.133 mm each. */
const pngOf = (body: string, ground = paper, widthPx = 300): Uint8Array =>
  engine.rasterise(tileText(ground + body), widthPx);
const traced = (bytes: Uint8Array, options: TraceOptions = { across: 40 }) =>
  readTile(bytes, 'kelp.png', engine.normalise, options);
const pixel = 40 / 300;
const coloursOf = ({ layers }: Tile): string[] => layers.map(({ colour }) => colour);
const circle = '<circle cx="20.3" cy="19.7" r="12.1" fill="#17566b"/>';

/** The farthest that a traced edge lies from a circle about (20.3, 19.7), mm. */
function farthest({ layers }: Tile, radius: number): number {
  const segments = layers.flatMap(({ shapes }) =>
    shapes.flatMap(({ contours }) => contours[0]?.segments ?? []),
  );
  const places = segments.flatMap((s) => [0, 0.25, 0.5, 0.75].map((t) => pointAt(s, t)));
  return Math.max(...places.map(({ x, y }) => Math.abs(Math.hypot(x - 20.3, y - 19.7) - radius)));
}

function jpegOf(png: Uint8Array, quality = 85): Uint8Array {
  const { width, height, data } = PNG.sync.read(Buffer.from(png));
  return encode({ width, height, data }, quality).data;
}

/** The same PNG with a chunk before its pixels. The checksum is not read. */
function withChunk(png: Uint8Array, type: string, data: readonly number[]): Uint8Array {
  const length = [data.length >> 24, data.length >> 16, data.length >> 8, data.length].map((n) => n & 255);
  const chunk = [...length, ...[...type].map((letter) => letter.charCodeAt(0)), ...data, 0, 0, 0, 0];
  return Uint8Array.from([...png.subarray(0, 33), ...chunk, ...png.subarray(33)]);
}

const rulesOf = (bytes: Uint8Array, options?: TraceOptions): string[] => {
  try {
    traced(bytes, options);
    return [];
  } catch (fault) {
    if (fault instanceof Refused) return fault.findings.map(({ rule }) => rule);
    throw fault;
  }
};

describe('a picture is traced', () => {
  test('within half a pixel of the edge that was drawn, in few curves', () => {
    const { tile, findings } = traced(pngOf(circle));
    expect(coloursOf(tile)).toEqual(['#17566b']);
    expectAtMost(farthest(tile, 12.1), pixel / 2, 'mm from the circle');
    expectAtMost(tile.layers[0]?.shapes[0]?.contours[0]?.segments.length ?? 99, 32, 'segments');
    expect(findings.map(({ rule, level }) => [rule, level])).toEqual([['traced', 'look']]);
    expect(findings[0]?.says).toMatch(/PNG of 300 x 300 pixels, .* one colour \(#17566b\); #ffffff was left/);
  });

  test('as a JPEG within half a pixel too', () => {
    const { tile } = traced(jpegOf(pngOf(circle)));
    expect(tile.layers).toHaveLength(1);
    expectAtMost(farthest(tile, 12.1), pixel / 2, 'mm from the circle');
  });

  test('in black and white without grey between, within a pixel', () => {
    const png = PNG.sync.read(Buffer.from(pngOf('<circle cx="20.3" cy="19.7" r="12.1"/>')));
    for (let i = 0; i < png.data.length; i++) png.data[i] = i % 4 === 3 || (png.data[i] ?? 0) > 127 ? 255 : 0;
    expectAtMost(farthest(traced(PNG.sync.write(png)).tile, 12.1), pixel, 'mm from the circle');
  });

  test.each([
    [
      'shapes and holes',
      '<path fill="#17566b" fill-rule="evenodd" d="M4 4H36V36H4ZM10 10V30H30V10Z"/><circle cx="20" cy="20" r="6" fill="#a33a2c"/>',
      2,
    ],
    [
      'colours that touch',
      '<path fill="#17566b" d="M4 4H20V36H4Z"/><path fill="#e8c15a" d="M20 4H36V36H20Z"/>',
      2,
    ],
    [
      'five colours',
      ['#17566b', '#2a6f4e', '#a33a2c', '#e8c15a', '#000000']
        .map((c, i) => `<circle cx="${6 + 7 * i}" cy="${8 + 6 * i}" r="5" fill="${c}"/>`)
        .join(''),
      5,
    ],
    ['what runs off the edge', '<path fill="#17566b" d="M-5 10C10 0 30 30 45 20V50H-5Z"/>', 1],
  ])('%s look as they did', (_, body, colours) => {
    const bytes = pngOf(body, paper, 400);
    const { tile } = traced(bytes);
    expect(tile.layers).toHaveLength(colours);
    const ours = engine.rasterise(
      tileAsSvg(tile).replace(/(<svg[^>]*>)/, '$1<rect width="40" height="40" fill="#fff"/>'),
      400,
    );
    expectAtMost(shareThatDiffers(bytes, ours), 0.004, 'share of differing pixels');
  });

  test('an edge between two colours makes no third of what lies between them', () => {
    const { tile } = traced(
      pngOf(
        '<rect x="4" y="4" width="15" height="30" fill="#000"/><rect x="22" y="4" width="9" height="30" fill="#808080"/>',
      ),
    );
    const [, grey] = tile.layers;
    expect(coloursOf(tile)).toEqual(['#000000', '#808080']);
    expect(grey?.shapes).toHaveLength(1);
    expectWithin(shapeArea(grey?.shapes[0] ?? { contours: [] }), 270, 1, 'area');
  });

  test('see-through is ground, and the lighter of two colours is', () => {
    const clear = traced(pngOf(circle, '')).tile;
    expect(coloursOf(clear)).toEqual(['#17566b']);
    const yellowed = traced(pngOf(circle, '<rect width="40" height="40" fill="#d8cfa8"/>'));
    expect(coloursOf(yellowed.tile)).toEqual(['#17566b']);
  });

  test('in lines of a pixel and a half too, which are nowhere a whole area', () => {
    // They used to be taken for the ground, or for film where they stand on it: a net of lines came out as a whole square.
    const net = [...Array(19)].map((_, i) => `M${2 * i + 2.1} 1V39M1 ${2 * i + 2.1}H39`).join('');
    const lines = `<path d="${net}" stroke="#123" stroke-width=".2" fill="none"/>`;
    const black = traced(pngOf(lines), { across: 40 }).tile;
    expect(black.layers).toHaveLength(1);
    // Two sets of 19 lines of 38 mm, less the squares in which they cross.
    const area = black.layers[0]?.shapes.reduce((sum, shape) => sum + shapeArea(shape), 0) ?? 0;
    expectWithin(area, 2 * 19 * 38 * 0.2 - 19 * 19 * 0.04, 40, 'area of the net');
    const on =
      '<rect x="0" y="0" width="40" height="20" fill="#e8c15a"/><path d="M0 40L20 22L40 40Z" fill="#2a6f4e"/>';
    const two = traced(pngOf(on + lines), { across: 40 }).tile;
    expect(two.layers).toHaveLength(3);
  });

  test('noise makes no second shade of a colour', () => {
    const random = randomFrom(3);
    const fish =
      '<circle cx="14" cy="14" r="9" fill="#f1b31c"/><circle cx="27" cy="27" r="8" fill="#e27022"/>';
    const png = PNG.sync.read(Buffer.from(pngOf(fish)));
    for (let i = 0; i < png.data.length; i++)
      if (i % 4 !== 3)
        png.data[i] = Math.max(0, Math.min(255, (png.data[i] ?? 0) + 28 * (random() + random() - 1)));
    expect(traced(jpegOf(PNG.sync.write(png), 85)).tile.layers).toHaveLength(2);
  });

  test('in as many colours as are asked for', () => {
    const body = ['#17566b', '#1f6f4e', '#a33a2c', '#e8c15a']
      .map((c, i) => `<rect x="${10 * i}" width="10" height="40" fill="${c}"/>`)
      .join('');
    expect(traced(pngOf(body), { across: 40 }).tile.layers).toHaveLength(4);
    expect(traced(pngOf(body), { across: 40, colours: 2 }).tile.layers).toHaveLength(1);
  });

  test('grey, with few levels, with a palette, with 16 bits: all the same', () => {
    const rgba = PNG.sync.read(Buffer.from(pngOf(circle)));
    for (const colorType of [0, 2, 4, 6] as const)
      for (const bitDepth of [8, 16] as const) {
        // pngjs writes 16 bits from 16 bits.
        const data =
          bitDepth === 8 ? rgba.data : Buffer.from(Uint16Array.from(rgba.data, (v) => v * 257).buffer);
        const bytes = PNG.sync.write(Object.assign(new PNG({ width: 300, height: 300 }), { data }), {
          colorType,
          bitDepth,
          inputColorType: 6,
        });
        expectAtMost(farthest(traced(bytes).tile, 12.1), pixel / 2, `type ${colorType} of ${bitDepth} bits`);
      }
  });
});

test('what is finer than is followed is told so, and what to do', () => {
  // Dashes of two pixels and a half.
  const dashes = [...Array(361)]
    .map((_, i) => `M${1 + 2 * (i % 19)} ${1 + 2 * Math.floor(i / 19)}h.2`)
    .join('');
  const fine = () => traced(pngOf(`<path d="${dashes}" stroke="#000" stroke-width=".13"/>`));
  expect(fine).toThrow(/mostly what is no larger than 6 pixels.*save it two or three times as large/);
});

test('a sheet whose holes are too small to follow is refused, not cut whole', () => {
  // Holes of two by two pixels, every four: a quarter of the sheet.
  const png = new PNG({ width: 120, height: 120 });
  for (let i = 0; i < 120 * 120; i++) {
    const isHole = i % 4 < 2 && Math.floor(i / 120) % 4 < 2;
    png.data.set(isHole ? [255, 255, 255, 255] : [0, 0, 0, 255], 4 * i);
  }
  expect(() => traced(PNG.sync.write(png))).toThrow(/save it two or three times as large/);
});

describe('how large it is', () => {
  test('by the pixels to the metre of a PNG, by the density of a JPEG', () => {
    const dots = [0, 0, 0x2e, 0x23, 0, 0, 0x2e, 0x23, 1];
    const { width, height, scale } = readArt(
      withChunk(pngOf(circle), 'pHYs', dots),
      'kelp.png',
      engine.normalise,
    );
    expectWithin(width, 300 / 11.811, 1e-9, 'width at 11811 to the metre');
    expectWithin(height, width, 1e-9, 'height');
    expect(scale).toBe(1);
    const jpeg = Uint8Array.from(jpegOf(pngOf(circle)));
    jpeg.set([1, 0, 150, 0, 150], 13);
    expectWithin(traced(jpeg, {}).tile.width, 50.8, 1e-9, 'width at 150 to the inch');
  });

  test('as asked, whatever the file says', () => {
    const bytes = withChunk(pngOf(circle), 'pHYs', [0, 0, 0x2e, 0x23, 0, 0, 0x2e, 0x23, 1]);
    expectWithin(traced(bytes, { across: 55 }).tile.width, 55, 1e-9, 'width');
  });

  test('is asked for where nothing says', () => {
    expect(rulesOf(pngOf(circle), {})).toEqual(['no-size']);
    expect(() => traced(pngOf(circle), {})).toThrow(/--art-across 60mm/);
  });
});

describe('a picture is refused', () => {
  const ihdr = (width: number, height: number): Uint8Array => {
    const bytes = Uint8Array.from(pngOf(circle));
    new DataView(bytes.buffer).setUint32(16, width);
    new DataView(bytes.buffer).setUint32(20, height);
    return bytes;
  };
  test.each<[string, () => Uint8Array, string]>([
    ['of more pixels than are read', () => ihdr(60_000, 60_000), 'too-many-pixels'],
    ['of no size', () => ihdr(0, 300), 'unreadable'],
    ['that unpacks to far more than it says', () => ihdr(2, 2), 'unreadable'],
    ['that breaks off', () => pngOf(circle).subarray(0, 400), 'unreadable'],
    ['that breaks off in its head', () => pngOf(circle).subarray(0, 20), 'unreadable'],
    ['that is a JPEG broken off', () => jpegOf(pngOf(circle)).subarray(0, 700), 'unreadable'],
    ['of nothing but ground', () => pngOf(''), 'no-area'],
  ])('%s', (_, bytes, rule) => {
    expect(rulesOf(bytes())).toEqual([rule]);
  });

  test('that its camera stored turned', () => {
    const jpeg = jpegOf(pngOf(circle));
    // Exif, one directory of one entry: orientation 6.
    const exif = [
      0x45, 0x78, 0x69, 0x66, 0, 0, 0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0,
      0,
    ];
    const turned = Uint8Array.from([
      ...jpeg.subarray(0, 2),
      0xff,
      0xe1,
      0,
      exif.length + 2,
      ...exif,
      ...jpeg.subarray(2),
    ]);
    expect(rulesOf(turned)).toEqual(['turned-picture']);
  });
});
