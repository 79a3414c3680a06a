// Lettering against opentype.js (MIT), which reads the font's tables by itself: outlines, advances, kerning.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { loadFont } from '../../../src/artwork/text/lettering.ts';
import { parsePathData } from '../../../src/drawing/path-data.ts';
import type { Contour } from '../../../src/geometry/contour.ts';
import { signedArea, tightBox } from '../../../src/geometry/measure.ts';
import { expectWithin } from '../../closeness.ts';

/** A letter of SVG path data, with the numbers that follow it. */
interface Command {
  readonly type: 'M' | 'L' | 'Q' | 'C' | 'Z';
  readonly [number: string]: number | string;
}

interface Glyph {
  readonly index: number;
  readonly advanceWidth: number;
  getPath(x: number, y: number, em: number): { readonly commands: readonly Command[] };
}

interface OtherFont {
  readonly unitsPerEm: number;
  charToGlyph(letter: string): Glyph;
  /** Of the GPOS table, in font units. */
  getKerningValue(left: Glyph, right: Glyph): number;
}

const load = createRequire(import.meta.url);
const bytes = readFileSync(
  load.resolve('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf'),
);
const { parse } = load('opentype.js') as { parse: (font: ArrayBuffer) => OtherFont };
const other = parse(new Uint8Array(bytes).buffer);
const words = loadFont(bytes);

/** Letters, figures and marks of a guide, and letters a name may need. */
const letters = [
  ...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;%()/-+"\'',
  ...'äßéñçøł°²',
];

const dataOf = ({ type, x1, y1, x2, y2, x, y }: Command): string =>
  type + [x1, y1, x2, y2, x, y].filter((number) => number !== undefined).join(' ');

/** A text by the other library: glyph after glyph, each moved on by its advance and the kerning of the pair, in mm. */
function otherWords(text: string, em: number): readonly Contour[] {
  const glyphs = [...text].map((letter) => other.charToGlyph(letter));
  let pen = 0;
  return glyphs.flatMap((glyph, i) => {
    const before = glyphs[i - 1];
    if (before) pen += (other.getKerningValue(before, glyph) * em) / other.unitsPerEm;
    const { commands } = glyph.getPath(pen, 0, em);
    pen += (glyph.advanceWidth * em) / other.unitsPerEm;
    return parsePathData(commands.map(dataOf).join(''));
  });
}

function expectAlike(ours: readonly Contour[], theirs: readonly Contour[], what: string): void {
  expect(ours.length, what).toBe(theirs.length);
  const [a, b] = [tightBox(ours), tightBox(theirs)];
  for (const side of ['minX', 'minY', 'maxX', 'maxY'] as const)
    expectWithin(a[side], b[side], 1e-4, `${what} ${side}`);
  ours.forEach((contour, i) => {
    expectWithin(signedArea(contour), signedArea(theirs[i] ?? contour), 1e-3, `${what}, contour ${i}`);
  });
}

describe('words of the bundled font', () => {
  test('have the outlines that opentype.js reads, letter by letter', () => {
    for (const letter of letters) {
      expect(other.charToGlyph(letter).index, letter).toBeGreaterThan(0);
      expectAlike(words(letter, 20), otherWords(letter, 20), letter);
    }
  });

  test('stand as far apart as its advances and kerning say', () => {
    for (const text of ['MEET HERE', 'To', 'AVA', '100 mm', 'flat from 3.5 to 141.2', 'kelp, tern & rope'])
      expectAlike(words(text, 5), otherWords(text, 5), text);
    // The pair is one that the font kerns: without it the two would stand wider.
    expect(other.getKerningValue(other.charToGlyph('T'), other.charToGlyph('o'))).toBeLessThan(0);
  });

  test('reach as far to the right as what is drawn of them, known without drawing it', () => {
    for (const text of ['MEET HERE', 'Tj', 'a漢b', ' kelp ', '  ', '漢', ''])
      for (const em of [2.5, 20]) {
        const drawn = words(text, em);
        const right =
          drawn.length > 0
            ? Math.max(tightBox(drawn).maxX, tightBox(otherWords(text.replace('漢', ''), em)).maxX)
            : 0;
        expectWithin(words.reach?.(text, em) ?? -1, right, 1e-4, text);
      }
  });

  test('show what the font has no letter for as left out, once a run of it', () => {
    expect(other.charToGlyph('漢').index).toBe(0);
    for (const [text, shown] of [
      ['a漢b', 'a[…]b'],
      ['"\u05e9\u05dc\u05d5\u05dd \u05e8\u05d5\u05ea", 12 mm', '"[…]", 12 mm'],
      ['\u0628\u0650\u0633\u0652 and ☕', '[…] and […]'],
    ] as const)
      expectAlike(words(text, 5), otherWords(shown, 5), text);
  });
});
