// Texts of a drawing in fonts that were given; their outlines are held against those that another font reader gives.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { readArt, readTile } from '../../../src/artwork/tile.ts';
import { Refused } from '../../../src/finding.ts';
import { shapeArea, tightBox } from '../../../src/geometry/measure.ts';
import { pictureEngine } from '../../pictures/compare.ts';

const load = createRequire(import.meta.url);
const find = load.resolve;
const { parse } = load('opentype.js') as {
  parse: (font: ArrayBufferLike) => {
    getPath: (
      text: string,
      x: number,
      y: number,
      size: number,
    ) => { getBoundingBox: () => { x1: number; y1: number; x2: number; y2: number } };
    getAdvanceWidth: (text: string, size: number) => number;
  };
};
const bytes = new Uint8Array(
  readFileSync(find('@expo-google-fonts/pacifico/400Regular/Pacifico_400Regular.ttf')),
);
// A plain one, whose letters are always drawn alike: the script has others for where a word begins.
const plain = new Uint8Array(
  readFileSync(
    find('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf'),
  ),
);
const { normalise } = await pictureEngine();

/** A label of 60 by 20 mm, one user unit a mm. */
const label = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="20mm" viewBox="0 0 60 20">${inside}</svg>`;

const read = (inside: string, fonts: readonly Uint8Array[] = [bytes]) =>
  readTile(label(inside), 'label.svg', normalise, { fonts });

function refusal(inside: string, fonts?: readonly Uint8Array[]): readonly string[] {
  try {
    read(inside, fonts);
  } catch (fault) {
    if (fault instanceof Refused) return fault.findings.map(({ rule, says }) => `${rule}: ${says}`);
    throw fault;
  }
  return [];
}

test('a text in a font that was given is cut as it is set, at its anchor and size', () => {
  const { tile, findings } = read(
    '<text x="30" y="14" text-anchor="middle" font-size="8" font-family="Atkinson Hyperlegible">k</text>',
    [bytes, plain],
  );
  const [layer] = tile.layers;
  const box = tightBox((layer?.shapes ?? []).flatMap(({ contours }) => contours));
  const font = parse(plain.buffer.slice(plain.byteOffset, plain.byteOffset + plain.byteLength));
  const path = font.getPath('k', 0, 14, 8);
  const wanted = path.getBoundingBox();
  const start = 30 - font.getAdvanceWidth('k', 8) / 2;
  // To a fiftieth of a mm: two readers round an advance each in its own way.
  const off = [
    box.minX - start - wanted.x1,
    box.maxX - start - wanted.x2,
    box.minY - wanted.y1,
    box.maxY - wanted.y2,
  ];
  expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.02);
  expect(findings.map(({ rule, level }) => [rule, level])).toEqual([['text-set', 'look']]);
});

test('a style sheet names its font too, and its spans have colours of their own', () => {
  const { tile } = read(
    '<style>.name { font: 8px "Pacifico", cursive }</style><text class="name" x="5" y="14">kelp <tspan fill="#c8823a">tern</tspan></text>',
  );
  expect(tile.layers.map(({ colour }) => colour)).toEqual(['#000000', '#c8823a']);
  for (const { shapes } of tile.layers)
    expect(shapes.reduce((sum, shape) => sum + shapeArea(shape), 0)).toBeGreaterThan(5);
});

test('a font may be named by its PostScript name, or its full name', () => {
  const areas = ['Pacifico', 'Pacifico-Regular', "'Pacifico Regular', cursive"].map((name) => {
    const { tile } = read(`<text y="14" font-size="8" font-family="${name}">kelp</text>`);
    return tile.layers.flatMap(({ shapes }) => shapes).reduce((sum, shape) => sum + shapeArea(shape), 0);
  });
  expect(areas[0]).toBeGreaterThan(5);
  expect(areas).toEqual(areas.map(() => areas[0]));
  const styled = read('<text style="font:8px Pacifico-Regular" y="14">Pacifico-Regular</text>');
  expect(styled.findings.map(({ rule }) => rule)).toEqual(['text-set']);
});

test.each([
  [
    'its font was not given',
    '<text font-family="Invented Hand" y="9">kelp</text>',
    '"Invented Hand", a font',
  ],
  [
    'another font stands first',
    '<text style="font-family: Invented Hand, Pacifico" y="9">k</text>',
    'a font',
  ],
  ['it names no font', '<text y="9">kelp</text>', 'names no font'],
  ['its font has no such letter', '<text font-family="Pacifico" y="9">kelp \u{5b57}</text>', '"\u{5b57}"'],
])('a text is refused by name where %s', (_, inside, says) => {
  const told = refusal(inside);
  expect(told).toEqual([expect.stringContaining(says)]);
  expect(told[0]).toMatch(/^text: /);
});

test('without any font a text is refused as before, and what has no outline is looked at', () => {
  const inside = '<text font-family="Pacifico" y="9">kelp</text>';
  expect(refusal(inside, [])).toEqual([expect.stringMatching(/^text: is text, which has no outline/)]);
  const { findings } = readArt(label(inside), 'label.svg', normalise);
  expect(findings.map(({ rule }) => rule)).toContain('text');
});
