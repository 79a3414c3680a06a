// Lettering against opentype.js (MIT), which reads the font's tables by itself: outlines, advances, kerning.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { loadFont } from '../../src/artwork/lettering.ts';
import { parsePathData } from '../../src/drawing/path-data.ts';
import type { Contour } from '../../src/geometry/contour.ts';
import { signedArea, tightBox } from '../../src/geometry/measure.ts';
import { expectWithin } from '../closeness.ts';

interface Glyph {
  readonly index: number;
  readonly advanceWidth: number;
  getPath(x: number, y: number, em: number): { toPathData(decimals: number): string };
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

/** A text by the other library: glyph after glyph, each moved on by its advance and the kerning of the pair, in mm. */
function otherWords(
  text: string,
  em: number,
): { readonly contours: readonly Contour[]; readonly end: number } {
  const glyphs = [...text].map((letter) => other.charToGlyph(letter));
  let pen = 0;
  const contours = glyphs.flatMap((glyph, i) => {
    const before = glyphs[i - 1];
    if (before) pen += (other.getKerningValue(before, glyph) * em) / other.unitsPerEm;
    const data = glyph.getPath(pen, 0, em).toPathData(6).replaceAll('Z', '');
    pen += (glyph.advanceWidth * em) / other.unitsPerEm;
    // It leaves its contours open where they end at their beginning.
    return data === '' ? [] : parsePathData(`${data.replace(/(?<=.)M/g, 'ZM')}Z`);
  });
  return { contours, end: pen };
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
      expectAlike(words(letter, 20), otherWords(letter, 20).contours, letter);
    }
  });

  test('stand as far apart as its advances and kerning say', () => {
    for (const text of ['MEET HERE', 'To', 'AVA', '100 mm', 'flat from 3.5 to 141.2', 'kelp, tern & rope'])
      expectAlike(words(text, 5), otherWords(text, 5).contours, text);
    // The pair is one that the font kerns: without it the two would stand wider.
    expect(other.getKerningValue(other.charToGlyph('T'), other.charToGlyph('o'))).toBeLessThan(0);
  });

  test('leave out what the font has no letter for, and go on as if it were not there', () => {
    expect(other.charToGlyph('漢').index).toBe(0);
    expect(words('漢', 5)).toEqual([]);
    expectAlike(words('a漢b', 5), otherWords('ab', 5).contours, 'a letter that is left out');
  });
});
