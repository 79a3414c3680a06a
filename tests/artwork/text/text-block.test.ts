// Texts against opentype.js (MIT), which reads a font's tables by itself; sizes against the font's own measures.
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { readDirections } from '../../../src/artwork/text/bidi.ts';
import { openFont, placed } from '../../../src/artwork/text/lettering.ts';
import { type TextOptions, textBlock } from '../../../src/artwork/text/text-block.ts';
import { shapeArea, tightBox } from '../../../src/geometry/measure.ts';
import { filledShapes } from '../../../src/geometry/regions.ts';
import { chordTolerance } from '../../../src/geometry/tolerance.ts';
import { expectWithin, expectWithinPart } from '../../closeness.ts';
import { arabicFont, hebrewFont, plainFont, scriptFont } from '../../job/a-font.ts';

interface OtherGlyph {
  readonly index: number;
  readonly advanceWidth: number;
  getBoundingBox(): { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number };
}
interface OtherFont {
  readonly unitsPerEm: number;
  readonly tables: { readonly os2: { readonly sCapHeight: number } };
  charToGlyph(letter: string): OtherGlyph;
  getKerningValue(left: OtherGlyph, right: OtherGlyph): number;
}
const { parse } = createRequire(import.meta.url)('opentype.js') as {
  parse: (font: ArrayBuffer) => OtherFont;
};
const otherOf = (bytes: Uint8Array): OtherFont => parse(new Uint8Array(bytes).buffer);

const directions = readDirections();
const [plain, script, hebrew, arabic] = [plainFont, scriptFont, hebrewFont, arabicFont].map(openFont);
if (!plain || !script || !hebrew || !arabic) throw new Error('no fonts');
const other = otherOf(plainFont);

const standard: TextOptions = { text: '', capHeight: 14, spacing: 0, align: 'middle', direction: 'auto' };
const set = (text: string, rest: Partial<TextOptions> = {}, font = plain) =>
  textBlock(font, { ...standard, text, ...rest }, directions);
const area = (block: ReturnType<typeof set>) =>
  block.shapes().reduce((sum, shape) => sum + shapeArea(shape), 0);
const size = ({ box }: ReturnType<typeof set>) => ({ across: box.maxX - box.minX, up: box.maxY - box.minY });

describe('a text', () => {
  test('has capitals of the height asked for, by the outline of the H', () => {
    const { box, capHeight } = set('H');
    expectWithin(box.maxY - box.minY, 14, 1e-6);
    expectWithin(box.maxY, 7, 1e-6, 'baseline');
    expect(capHeight).toBe(14);
    // The font's own OS/2 table says the same, within the rounding of its units.
    expectWithin(plain.capHeight ?? 0, other.tables.os2.sCapHeight / other.unitsPerEm, 2e-3);
  });

  test('is as wide as the other library finds, kerning and all', () => {
    const em = 14 / (plain.capHeight ?? 1);
    for (const text of ['Skye', 'AVATAR', 'Tomasz', 'Fog Light', 'Yv']) {
      const glyphs = [...text].map((letter) => other.charToGlyph(letter));
      let pen = 0;
      let [least, most] = [Infinity, -Infinity];
      glyphs.forEach((glyph, i) => {
        const before = glyphs[i - 1];
        if (before) pen += other.getKerningValue(before, glyph);
        const { x1, x2 } = glyph.getBoundingBox();
        if (x2 > x1) [least, most] = [Math.min(least, pen + x1), Math.max(most, pen + x2)];
        pen += glyph.advanceWidth;
      });
      expectWithin(size(set(text)).across, ((most - least) * em) / other.unitsPerEm, 0.01, text);
    }
  });

  test('stands with the middle of its ink over its place', () => {
    for (const text of ['Skye', 'i', 'LIGHT']) {
      const { box } = set(text);
      expectWithin(box.minX, -box.maxX, 1e-9);
    }
  });

  test('is made smaller to fit a width, never larger; without a cap height it fills it', () => {
    const natural = size(set('Lighthouse')).across;
    const fitted = set('Lighthouse', { fit: 40 });
    expectWithin(size(fitted).across, 40, 1e-6);
    expectWithin(fitted.capHeight, (14 * 40) / natural, 1e-6);
    expectWithin(size(set('Lighthouse', { fit: natural * 2 })).across, natural, 1e-6);
    const { capHeight: _, ...unsized } = standard;
    const filling = textBlock(plain, { ...unsized, text: 'Fog', fit: 80 }, directions);
    expectWithin(size(filling).across, 80, 1e-6);
  });

  test('has its letters moved apart, by so much between every two', () => {
    expectWithin(size(set('TERN', { spacing: 2 })).across - size(set('TERN')).across, 6, 1e-9);
    expectWithin(size(set('TERN', { spacing: -1 })).across - size(set('TERN')).across, -3, 1e-9);
  });

  test('in several lines has them so far apart, and aligned as asked', () => {
    const lines = set('HHHH\nH', { lineStep: 20 });
    expectWithin(size(lines).up, 34, 1e-6);
    expectWithin(lines.box.maxY, 17, 1e-6);
    const lower = (align: TextOptions['align']) => {
      const block = set('HHHH\nH', { lineStep: 20, align });
      const box = tightBox(
        block
          .shapes()
          .filter(({ contours }) => tightBox(contours).minY > 0)
          .flatMap(({ contours }) => contours),
      );
      return { left: box.minX - block.box.minX, right: block.box.maxX - box.maxX };
    };
    expectWithin(lower('left').left, 0, 1e-9);
    expectWithin(lower('right').right, 0, 1e-9);
    expectWithin(lower('middle').left, lower('middle').right, 1e-9);
  });

  test('of nothing but spaces has no area', () => {
    expect(set('  ').shapes()).toEqual([]);
    expect(set('  ').isEmpty).toBe(true);
  });

  test('names each character that the font has not, once', () => {
    expect(set('Zoë 猫 שלום 猫').missing).toEqual(['猫', ...'םולש']);
    expect(set('Zoë').missing).toEqual([]);
  });
});

describe('a script', () => {
  test('is cut as one piece where its letters overlap, and covers what they cover together', () => {
    const block = set('Pebble', {}, script);
    const letters = [...'Pebble'].reduce((sum, letter) => sum + set(letter, {}, script).shapes().length, 0);
    expect(letters).toBe(6);
    expect(block.shapes().length).toBeLessThan(3);
    // Together they cover less than all its glyphs each alone, for overlaps count once.
    const em = 14 / (script.capHeight ?? 1);
    const alone = script
      .shape('Pebble', { isRightToLeft: false, ligatures: true })
      .flatMap(({ glyph }) =>
        filledShapes(placed(script.outline(glyph), em, 0, 0), 'nonzero', chordTolerance),
      )
      .reduce((sum, shape) => sum + shapeArea(shape), 0);
    expect(area(block)).toBeLessThan(alone - 1);
    expect(area(block)).toBeGreaterThan(0.8 * alone);
  });
});

describe('a text that runs to the left', () => {
  const glyphAt = (text: string, i: number) =>
    hebrew.shape(text[i] ?? '', { isRightToLeft: true, ligatures: true });

  test('has its first letter at the right', () => {
    // Of alef and a narrow vav the vav, typed second, stands at the left.
    const [first, second] = [set('א', {}, hebrew), set('ו', {}, hebrew)];
    const both = set('או', {}, hebrew);
    const [left, right] = [...both.shapes()]
      .sort((a, b) => tightBox(a.contours).minX - tightBox(b.contours).minX)
      .map(shapeArea);
    expectWithinPart(left ?? 0, area(second), 1e-6);
    expectWithinPart(right ?? 0, area(first), 1e-6);
    expect(glyphAt('או', 0)).toHaveLength(1);
  });

  test('mixed with figures or Latin letters keeps those from left to right (Unicode Annex 9, rule L2)', () => {
    const order = (line: string, direction: 'auto' | 'ltr' | 'rtl' = 'auto') =>
      directions(line, direction).map(({ from, to }) => line.slice(from, to));
    expect(order('שלום 42')).toEqual(['42', 'שלום ']);
    expect(order('Mira שלום')).toEqual(['Mira ', 'שלום']);
    expect(order('Mira שלום', 'rtl')).toEqual([' שלום', 'Mira']);
    expect(order('אב 12 גד')).toEqual([' גד', '12', 'אב ']);
  });

  test('of a script whose letters join is one piece, with or without space between letters', () => {
    // Beh, yeh, teh joined: their dots stand apart, their body is one.
    const joined = set('بيت', {}, arabic);
    const single = [...'بيت'].map((letter) => set(letter, {}, arabic).shapes().length);
    expect(single.reduce((a, b) => a + b, 0)).toBeGreaterThan(joined.shapes().length);
    expectWithin(size(set('بيت', { spacing: 3 }, arabic)).across, size(joined).across, 1e-9);
  });
});

test('a ligature is one where letters stand close, and none where they are moved apart', () => {
  const glyphs = (ligatures: boolean) => arabic.shape('لا', { isRightToLeft: true, ligatures }).length;
  expect(glyphs(true)).toBeGreaterThan(0);
  const pair = script.shape('fi', { isRightToLeft: false, ligatures: true }).length;
  const apart = script.shape('fi', { isRightToLeft: false, ligatures: false }).length;
  expect(apart).toBe(2);
  expect(pair).toBeLessThanOrEqual(2);
});
