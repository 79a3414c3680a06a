// Pictures, fonts and lists that are well formed but for one thing, each a way to break a reader: read as they are meant, or refused in words.
import { deflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { readTile } from '../../src/artwork/tile.ts';
import { Refused, toLine } from '../../src/finding.ts';
import { inspect } from '../../src/job/inspect/inspect.ts';
import { standardCutter, standardFilm } from '../../src/job/typed/material.ts';
import { readList } from '../../src/job/typed/read-list.ts';
import { plainFont, scriptFont, setText } from '../job/a-font.ts';
import { pictureEngine } from '../pictures/compare.ts';
import { cutWithin, tablesOf, withLoopedGlyphs, withTable } from './a-font-table.ts';
import { pngChunk, pngStart } from './a-png.ts';
import { cmykJpeg, progressiveJpeg, restartJpeg } from './some-jpegs.ts';

/** What a reader says of its input, or that it was read. */
function said(read: () => string): string {
  try {
    return read();
  } catch (fault) {
    if (!(fault instanceof Refused)) throw fault;
    return fault.findings.map(toLine).join('\n');
  }
}

const { normalise } = await pictureEngine();
const picture = (content: Uint8Array): string =>
  said(() => {
    inspect({ content, file: 'a', across: 40, film: standardFilm, cutter: standardCutter, normalise });
    return 'read';
  });

const side = 40;
/** The head of a PNG. Source: PNG, third edition, 11.2.1: size, bits a colour, kind of colour, and whether it is interlaced. */
function head(depth: number, kind: number, interlaced = 0): Buffer {
  const data = Buffer.alloc(13);
  data.writeUInt32BE(side, 0);
  data.writeUInt32BE(side, 4);
  data.set([depth, kind, 0, 0, interlaced], 8);
  return pngChunk('IHDR', data);
}

/** A disc of one byte a pixel on another, each row after its filter's number. */
function disc(inside: number, outside: number, filter = 0): Buffer {
  const rows = Buffer.alloc(side * (side + 1), outside);
  for (let y = 0; y < side; y++) {
    rows[y * (side + 1)] = filter;
    for (let x = 0; x < side; x++) if (Math.hypot(x - 20, y - 20) < 12) rows[y * (side + 1) + 1 + x] = inside;
  }
  return pngChunk('IDAT', deflateSync(rows));
}

const palette = (bytes: number): Buffer =>
  pngChunk('PLTE', Buffer.from(Array.from({ length: bytes }, (_, i) => (i < 3 ? 255 : 20))));
const clear = (bytes: number): Buffer => pngChunk('tRNS', Buffer.alloc(bytes, 255));
const png = (...chunks: readonly Buffer[]): Buffer =>
  Buffer.concat([pngStart, ...chunks, pngChunk('IEND', Buffer.alloc(0))]);

/** A file with the bit at a place, from its end where that is below 0, the other way. */
function withBit(bytes: Buffer, at: number): Buffer {
  const copy = Buffer.from(bytes);
  const place = at < 0 ? copy.length + at : at;
  copy[place] = (copy[place] ?? 0) ^ 1;
  return copy;
}

const grey = png(head(8, 0), disc(0, 255));

describe('a PNG', () => {
  test.each<readonly [string, Buffer]>([
    ['of grey', grey],
    ['of a palette', png(head(8, 3), palette(6), disc(1, 0))],
    ['of a palette, part of it see-through', png(head(8, 3), palette(6), clear(1), disc(1, 0))],
  ])('%s is read', (_, content) => {
    expect(picture(content)).toBe('read');
  });

  test.each<readonly [string, Buffer, RegExp]>([
    [
      'of a palette that is not there',
      png(head(8, 3), disc(1, 0)),
      /numbers of a palette that it does not hold/,
    ],
    ['of places past its palette', png(head(8, 3), palette(6), disc(200, 0)), /damaged/],
    ['of a palette of four bytes', png(head(8, 3), palette(4), disc(1, 0)), /damaged/],
    ['of a palette of 16 bits', png(head(16, 3), palette(6), disc(1, 0)), /damaged/],
    [
      'with more see-through colours than colours',
      png(head(8, 3), palette(6), clear(200), disc(1, 0)),
      /damaged/,
    ],
    ['with a see-through grey of one byte', png(head(8, 0), clear(1), disc(0, 255)), /damaged/],
    ['of three bits a colour', png(head(3, 0), disc(0, 255)), /damaged/],
    ['of a kind of colour that there is none of', png(head(8, 5), disc(0, 255)), /damaged/],
    ['interlaced in a way that there is none of', png(head(8, 0, 7), disc(0, 255)), /damaged/],
    ['with rows filtered by a number that means nothing', png(head(8, 0), disc(0, 255, 9)), /damaged/],
    ['with rows for a quarter of its pixels', png(head(16, 2), disc(0, 255)), /damaged/],
    ['of no pixels', png(head(8, 0)), /damaged/],
    ['whose head has another sum', withBit(grey, 30), /damaged/],
    ['whose pixels have another sum', withBit(grey, -20), /damaged/],
    ['that breaks off', grey.subarray(0, grey.length - 30), /damaged/],
  ])('%s is refused', (_, content, says) => {
    expect(picture(content)).toMatch(says);
  });
});

/** Where a JPEG's frame begins. Source: ITU-T T.81, B.2.2: precision, height, width, and how many components. */
function frameOf(jpeg: Buffer): number {
  let at = 2;
  while (jpeg[at + 1] !== 0xc0 && jpeg[at + 1] !== 0xc2) at += 2 + jpeg.readUInt16BE(at + 2);
  return at;
}

/** A JPEG with a byte of its frame changed, counted from the frame's marker. */
function withFrame(jpeg: Buffer, at: number, byte: number): Buffer {
  const copy = Buffer.from(jpeg);
  copy[frameOf(jpeg) + at] = byte;
  return copy;
}

/** A JPEG with a marker put in front of all others. */
function withMarker(jpeg: Buffer, marker: number, data: Buffer, length = data.length + 2): Buffer {
  const start = Buffer.from([0xff, marker, 0, 0]);
  start.writeUInt16BE(length, 2);
  return Buffer.concat([jpeg.subarray(0, 2), start, data, jpeg.subarray(2)]);
}

/** An Exif directory. Source: Exif 2.3, 4.6: how many entries; of each its tag, type, count and value. */
const exif = (...bytes: readonly number[]): Buffer =>
  Buffer.concat([Buffer.from('Exif\0\0MM\0*\0\0\0\x08', 'latin1'), Buffer.from(bytes)]);

describe('a drawing', () => {
  // Two colours by names that are alike where their accents are lost. Encoded by Node.
  const drawn = (encoding?: string): string =>
    `${encoding === undefined ? '' : `<?xml version="1.0" encoding="${encoding}"?>\n`}<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40"><style>.gr\u00fcn{fill:#123456}.gr\u00f6n{fill:#abcdef}</style><path class="gr\u00fcn" d="M4 4H16V36H4Z"/><path class="gr\u00f6n" d="M24 4H36V36H24Z"/></svg>`;
  const utf16 = (text: string): Buffer => Buffer.from(text, 'utf16le');
  const layers = (content: Uint8Array): string =>
    said(() =>
      readTile(content, 'a.svg', normalise)
        .tile.layers.map(({ name }) => name)
        .join(),
    );

  test.each<readonly [string, Buffer]>([
    ['UTF-8', Buffer.from(drawn('utf-8'))],
    ['UTF-8 after a byte order mark', Buffer.from(`\uFEFF${drawn('utf-8')}`)],
    ['UTF-8 that says it is UTF-16', Buffer.from(drawn('UTF-16'))],
    ['UTF-16, the low byte first', utf16(`\uFEFF${drawn('UTF-16')}`)],
    ['UTF-16, the high byte first', utf16(`\uFEFF${drawn()}`).swap16()],
    ['UTF-16 without a mark, the low byte first', utf16(drawn('UTF-16'))],
    ['UTF-16 without a mark, the high byte first', utf16(drawn()).swap16()],
    ['Latin-1, as it says', Buffer.from(drawn('ISO-8859-1'), 'latin1')],
  ])('in %s is read letter by letter', (_, content) => {
    expect(layers(content)).toBe('#123456,#abcdef');
  });

  test.each<readonly [string, Buffer, RegExp]>([
    ['Latin-1 that does not say so', Buffer.from(drawn(), 'latin1'), /^a\.svg:1: is not text in UTF-8/],
    ['what nobody knows', Buffer.from(drawn('x-sea'), 'latin1'), /text is in x-sea, and can't be read so/],
    ['UTF-16 of an odd byte', utf16(`\uFEFF${drawn()}`).subarray(0, -1), /is not text in UTF-8/],
    [
      'bytes that begin as no drawing does',
      Buffer.from('%PDF-1.7\n%\u00e2\u00e3', 'latin1'),
      /begins with "%PDF-1.7/,
    ],
  ])('in %s is refused', (_, content, says) => {
    expect(layers(content)).toMatch(says);
  });
});

describe('a drawing of numbers at the ends of what there are', () => {
  const square = 'M4 4H36V36H4Z';
  const sized = 'width="40mm" height="40mm" viewBox="0 0 40 40"';
  const drawing = (body: string, size = sized): Buffer =>
    Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" ${size}>${body}</svg>`);
  const path = (d: string): Buffer => drawing(`<path d="${d}"/>`);
  test.each<readonly [string, Buffer, RegExp]>([
    [
      'a view box of less than nothing',
      drawing('', sized.replace('0 0 40', '0 0 -40')),
      /last two above zero/,
    ],
    ['a view box next to nothing', drawing('', sized.replace('0 0 40', '0 0 1e-400')), /last two above zero/],
    ['a width of less than nothing', drawing('', sized.replace('"40mm', '"-40mm')), /not a size above zero/],
    ['a width past all', drawing('', sized.replace('"40mm', '"1e400mm')), /is too large/],
    ['a place past all', path('M4 4H1e400V36H4Z'), /number out of range \(Infinity\)/],
    ['an exponent of eight digits', path('M4 4H9e99999999V36H4Z'), /number out of range/],
    ['a number of 400 digits', path(`M4 4H${'1'.repeat(400)}V36H4Z`), /number out of range/],
    ['a round past all', drawing('<circle r="9e99999999"/>'), /is not a length/],
    [
      'a transform past all',
      drawing(`<g transform="scale(1e400)"><path d="${square}"/></g>`),
      /can't be read/,
    ],
    [
      'a view box far away',
      drawing(`<path d="${square}"/>`, sized.replace('0 0', '1e308 1e308')),
      /100 m away/,
    ],
    ['a number of next to nothing', path('M4 1e-400H36V36H4Z'), /^read$/],
    ['a shape drawn to nothing', drawing(`<g transform="scale(1e-400)"><path d="${square}"/></g>`), /^read$/],
  ])('%s is read or refused', (_, content, says) => {
    expect(picture(content)).toMatch(says);
  });
});

describe('a JPEG', () => {
  test.each<readonly [string, Buffer]>([
    ['that is progressive', progressiveJpeg],
    ['of four inks', cmykJpeg],
    ['with restarts', restartJpeg],
    ['after a thousand bytes of filling', withMarker(progressiveJpeg, 0xe5, Buffer.alloc(1000, 0xff))],
  ])('%s is read', (_, content) => {
    expect(picture(content)).toBe('read');
  });

  const upright = [0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0];
  test.each<readonly [string, Buffer, RegExp]>([
    ['of 12 bits a colour', withFrame(restartJpeg, 4, 12), /holds 12 bits a colour/],
    ['packed without loss', withFrame(restartJpeg, 1, 0xc3), /damaged/],
    ['packed by arithmetic', withFrame(restartJpeg, 1, 0xc9), /damaged/],
    ['of no components', withFrame(restartJpeg, 9, 0), /damaged/],
    ['of 255 components', withFrame(restartJpeg, 9, 255), /damaged/],
    ['sampled nought times', withFrame(progressiveJpeg, 11, 0), /damaged/],
    ['sampled fifteen times', withFrame(progressiveJpeg, 11, 0xff), /damaged/],
    [
      'that a camera turned',
      withMarker(restartJpeg, 0xe1, exif(...upright, 6, 0, 0, 0, 0, 0, 0)),
      /stored turned/,
    ],
    ['of 65,535 entries of Exif', withMarker(restartJpeg, 0xe1, exif(0xff, 0xff)), /breaks off/],
    ['with a marker of no length', withMarker(restartJpeg, 0xe5, Buffer.alloc(0), 0), /breaks off/],
  ])('%s is refused', (_, content, says) => {
    expect(picture(content)).toMatch(says);
  });

  test.each([
    ['progressive', progressiveJpeg],
    ['of four inks', cmykJpeg],
    ['with restarts', restartJpeg],
  ])('%s, cut short anywhere, is refused', (_, whole) => {
    const read = Array.from({ length: 60 }, (_, i) => 3 + Math.floor((i * (whole.length - 40)) / 60)).filter(
      (length) => picture(whole.subarray(0, length)) === 'read',
    );
    expect(read).toEqual([]);
  });
});

const fonts = { plain: Buffer.from(plainFont), script: Buffer.from(scriptFont) };
const lettered = (bytes: Uint8Array): string =>
  said(() => {
    const options = {
      text: 'ÄÖ Tern',
      capHeight: 9,
      spacing: 0,
      align: 'middle',
      direction: 'auto',
    } as const;
    const block = setText(options, { file: 'a.ttf', bytes });
    if (block.missing.length > 0) return `misses ${block.missing.join('')}`;
    return block.isEmpty ? 'draws nothing' : `${block.shapes().length > 0 ? 'letters' : 'nothing'}`;
  });

/** The places of a font's tables of letters. Source: OpenType 1.9, "cmap". */
const eachLetters = (table: Buffer, change: (at: number) => void): void => {
  for (let i = 0; i < table.readUInt16BE(2); i++) change(table.readUInt32BE(4 + 8 * i + 4));
};

describe('a font', () => {
  test.each(Object.entries(fonts))('%s, cut short in any table, is refused', (_, font) => {
    const read = [...tablesOf(font).keys()].filter(
      (tag) => !/cut short/.test(lettered(cutWithin(font, tag))),
    );
    expect(read).toEqual([]);
  });

  test('whose composite letters are made of one another letters a text as far as it draws', () => {
    expect(lettered(fonts.plain)).toBe('letters');
    expect(lettered(withLoopedGlyphs(fonts.plain))).toBe('letters');
  });

  const changed = (tag: string, change: (table: Buffer) => void): string =>
    lettered(withTable(fonts.plain, tag, change));

  test('of huge counts letters a text, or is refused', () => {
    expect(changed('maxp', (table) => void table.writeUInt16BE(65_535, 4))).toBe('letters');
    expect(changed('hhea', (table) => void table.writeUInt16BE(65_535, 34))).toBe('letters');
    expect(changed('cmap', (table) => void table.writeUInt16BE(65_535, 2))).toMatch(/no letters/);
    const segments = changed('cmap', (table) =>
      eachLetters(table, (at) => {
        if (table.readUInt16BE(at) === 4) table.writeUInt16BE(65_534, at + 6);
      }),
    );
    expect(segments).toMatch(/no letters/);
    const groups = changed('cmap', (table) =>
      eachLetters(table, (at) => {
        table.writeUInt16BE(12, at);
        table.writeUInt32BE(0xffffffff, at + 4);
        table.writeUInt32BE(0xffffffff, at + 12);
      }),
    );
    expect(groups).toMatch(/no letters/);
  });

  test('that says its letters are elsewhere misses them all', () => {
    expect(changed('loca', (table) => void table.fill(0xff))).toMatch(/^misses ÄÖTern$/);
    expect(changed('glyf', (table) => void table.fill(0xff))).toMatch(/^misses ÄÖTern$/);
  });

  test.each([
    ['ttcf', /collection of several fonts/],
    ['wOFF', /cut short, or damaged/],
    ['wOF2', /WOFF2/],
  ])('wrapped as %s and nothing else is refused', (kind, says) => {
    const wrapped = Buffer.alloc(124, 0xff);
    wrapped.write(kind, 0, 'latin1');
    expect(lettered(wrapped)).toMatch(says);
  });
});

describe('a list', () => {
  const listed = (text: string): string =>
    said(() => {
      const { columns, rows, refused } = readList(text, 'list.csv');
      return `${columns.length} columns, ${rows.length} rows, ${refused.length} refused`;
    });

  test.each<readonly [string, string, RegExp]>([
    [
      'with a quote that is never closed',
      `name,girth\n"Anna,1\n${'Bo,2\n'.repeat(4e5)}`,
      /:2: a cell begins/,
    ],
    [
      'of a million columns',
      Array.from({ length: 1e6 }, (_, i) => `c${i}`).join(),
      /1000000 columns; up to 200/,
    ],
    ['of a million cells in a row', `name\n${'1,'.repeat(1e6)}`, /1 columns, 0 rows, 1 refused/],
    ['of a million rows', `name\n${'1\n'.repeat(1e6)}`, /more than 10000 rows/],
    ['of ten million empty rows', `name\n${'\n'.repeat(1e7)}`, /more than 10000 rows/],
    ['of ten million quotes', `name\n${'"'.repeat(1e7)}`, /a cell of 4999999 letters/],
    ['of returns alone', 'name,girth\rAnna,1\rBo,2\r', /2 columns, 2 rows, 0 refused/],
    ['of every end of line', 'name,girth\r\nAnna,1\nBo,2\rCy,3\n\r', /2 columns, 3 rows, 0 refused/],
    [
      'of what a spreadsheet would work out',
      'name\n"=HYPERLINK(""http://127.0.0.1"")"\n',
      /1 columns, 1 rows/,
    ],
    ['of nothing but a mark of its order of bytes', '\uFEFF', /no columns/],
  ])('%s is read or refused', (_, text, says) => {
    expect(listed(text)).toMatch(says);
  });
});
