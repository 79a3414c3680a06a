// Fonts that are sound but for one thing made to do harm: each letters a text as far as it can, or is refused in words, in little time.
import { expect, test } from 'vitest';
import { Refused, toLine } from '../../src/finding.ts';
import { plainFont, setText } from '../job/a-font.ts';
import { withTable } from './a-font-table.ts';
import { faultOf } from './fuzz.ts';
import {
  branchingFont,
  fontOf,
  glyphCount,
  lineGlyph,
  madeOf,
  multiplied,
  routineFont,
  tablesIn,
  turningBack,
  withGlyphs,
  woffOf,
  words,
} from './made-fonts.ts';

const font = Buffer.from(plainFont);
/** The first of the glyphs that are added. */
const added = glyphCount(tablesIn(font));
/** The numbers of two glyphs in this font, as `cmap` has them. */
const [T, e] = ['T', 'e'].map((letter) => glyphOf(letter)) as [number, number];

/** Source: OpenType 1.9, "cmap", format 4. */
function glyphOf(letter: string): number {
  const table = tablesIn(font).get('cmap') ?? Buffer.alloc(0);
  const code = letter.charCodeAt(0);
  for (let i = 0; i < table.readUInt16BE(2); i++) {
    const at = table.readUInt32BE(8 + 8 * i);
    const count = table.readUInt16BE(at + 6) / 2;
    for (let s = 0; table.readUInt16BE(at) === 4 && s < count; s++) {
      const column = (n: number) => at + 14 + 2 * (n * count + s) + (n > 0 ? 2 : 0);
      const start = table.readUInt16BE(column(1));
      if (code < start || code > table.readUInt16BE(column(0))) continue;
      const [step, range] = [table.readInt16BE(column(2)), table.readUInt16BE(column(3))];
      const own = range === 0 ? code : table.readUInt16BE(column(3) + range + 2 * (code - start));
      return (own + step) & 0xffff;
    }
  }
  throw new Error(`the font has no ${letter}`);
}

const drawnAs = (glyph: Buffer, more: readonly Buffer[] = []): Buffer =>
  withGlyphs(font, new Map([[T, glyph]]), more);
const withTables = (change: (tables: ReturnType<typeof tablesIn>) => void): Buffer => {
  const tables = tablesIn(font);
  change(tables);
  return fontOf(tables);
};
const doubling = (deep: number): Buffer =>
  drawnAs(madeOf([{ glyph: added, x: 0 }]), [
    ...Array.from({ length: deep }, (_, i) => madeOf([0, 1].map((x) => ({ glyph: added + i + 1, x })))),
    lineGlyph([
      [0, 0],
      [500, 0],
      [500, 700],
    ]),
  ]);
const points = (count: number, at: (i: number) => readonly [number, number]): Buffer =>
  drawnAs(lineGlyph(Array.from({ length: count }, (_, i) => at(i))));
const around = (turn: number): readonly [number, number] => [
  Math.round(7000 * Math.cos(turn)),
  Math.round(7000 * Math.sin(turn)),
];

const made: readonly (readonly [what: string, font: () => Buffer, says: RegExp, text?: string])[] = [
  ['of an em of nothing', () => withTable(font, 'head', (t) => void t.writeUInt16BE(0, 18)), /^10 shapes$/],
  [
    'of an em of 65,535',
    () => withTable(font, 'head', (t) => void t.writeUInt16BE(65_535, 18)),
    /^10 shapes$/,
  ],
  ['whose T is two of what is two, 14 deep', () => doubling(14), /^misses T$/],
  ['whose T is two of what is two, 200 deep', () => doubling(200), /^misses T$/],
  [
    'whose T is ten thousand letters',
    () => drawnAs(madeOf(Array.from({ length: 10_000 }, (_, x) => ({ glyph: e, x })))),
    /^misses T$/,
  ],
  [
    'whose T is made of what is made of it',
    () => drawnAs(madeOf([{ glyph: added, x: 0 }]), [madeOf([{ glyph: T, x: 0 }])]),
    /^misses T$/,
  ],
  // It took 105 s.
  [
    'whose T is a comb of 60,000 points',
    () => points(60_000, (i) => [i >> 1, 700 * (i % 2)]),
    /^a\.ttf: is damaged: its letters are a scribble/,
  ],
  [
    'whose T is a star of 20,000 points',
    () => points(20_000, (i) => around(2.5 * i)),
    /^a\.ttf: is damaged: its letters are a scribble/,
  ],
  [
    'whose T is round by 60,000 points, and comes six times',
    () => points(60_000, (i) => around((i * 2 * Math.PI) / 60_000)),
    /^a\.ttf: is damaged: its letters have more than 300000 points/,
    'TTTTTT',
  ],
  [
    'that varies by 65,535 axes that it does not have',
    () => withTables((tables) => tables.set('fvar', words(1, 0, 16, 2, 65_535, 20, 65_535, 65_535))),
    /^10 shapes$/,
  ],
  [
    'in which a T becomes 600 of itself, and each of them again',
    () => withTables((tables) => tables.set('GSUB', multiplied(T, 600, 3))),
    /^60\d shapes$/,
  ],
  [
    'in which a rule turns back to itself sixty times over',
    () => withTables((tables) => tables.set('GSUB', turningBack(T, 60))),
    /^10 shapes$/,
  ],
  ['packed, with 12 MB of nothing', () => woffOf(tablesIn(font), { says: 12e6, holds: 12e6 }), /^10 shapes$/],
  [
    'packed, of 60 MB',
    () => woffOf(tablesIn(font), { says: 60e6, holds: 1000 }),
    /would be 60.1 MB unpacked/,
  ],
  [
    'packed, of more than it says',
    () => woffOf(tablesIn(font), { says: 1000, holds: 12e6 }),
    /cut short, or damaged/,
  ],
  ['of outlines by routines', () => routineFont(font, T, false), /^5 shapes$/],
  // As many calls as are followed come to 10,000 boxes and more.
  [
    'of which routines call the next twenty times each, nine deep',
    () => branchingFont(font, T, 9, 20),
    /^a\.ttf: is damaged: its letters are a scribble/,
  ],
  ['of which routines call the next twice, sixty deep', () => branchingFont(font, T, 60, 2), /^misses T$/],
  ['of which a routine calls itself', () => routineFont(font, T, true), /^misses T$/],
];

test.each(made.map(([what, ...rest]) => ({ what, rest })))(
  'a font $what',
  async ({ rest: [font, says, text = 'ÄÖ Tern'] }) => {
    const bytes = font();
    let told = '';
    const fault = await faultOf(() => {
      try {
        const block = setText(
          { text, capHeight: 9, spacing: 0, align: 'middle', direction: 'auto' },
          { file: 'a.ttf', bytes },
        );
        told =
          block.missing.length > 0 ? `misses ${block.missing.join('')}` : `${block.shapes().length} shapes`;
      } catch (refused) {
        if (refused instanceof Refused) told = refused.findings.map(toLine).join();
        throw refused;
      }
    });
    expect(fault).toBeUndefined();
    expect(told).toMatch(says);
  },
);
