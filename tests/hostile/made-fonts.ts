// Fonts built table by table, sound but for what is made to do harm. Source: OpenType 1.9, and for packed ones WOFF 1.0 (W3C 2012).
import { deflateSync } from 'node:zlib';
import { tablesOf } from './a-font-table.ts';

export type Tables = Map<string, Buffer>;

/** The tables of a plain font, each a copy. */
export const tablesIn = (font: Buffer): Tables =>
  new Map(
    [...tablesOf(font)].map(([tag, { from, length }]) => [
      tag,
      Buffer.from(font.subarray(from, from + length)),
    ]),
  );

const tableOf = (tables: Tables, tag: string): Buffer => {
  const table = tables.get(tag);
  if (!table) throw new Error(`the font has no table ${tag}`);
  return table;
};

/** Numbers of two bytes each. */
export const words = (...numbers: readonly number[]): Buffer => {
  const bytes = Buffer.alloc(2 * numbers.length);
  numbers.forEach((number, i) => void bytes.writeUInt16BE(number & 0xffff, 2 * i));
  return bytes;
};

const padded = (bytes: Buffer): Buffer => Buffer.concat([bytes, Buffer.alloc((4 - (bytes.length % 4)) % 4)]);

/** A font of these tables. */
export function fontOf(tables: Tables, kind = 0x10000): Buffer {
  const all = [...tables].sort(([a], [b]) => (a < b ? -1 : 1));
  const head = Buffer.alloc(12 + 16 * all.length);
  head.writeUInt32BE(kind, 0);
  head.writeUInt16BE(all.length, 4);
  let at = head.length;
  all.forEach(([tag, data], i) => {
    head.write(tag, 12 + 16 * i, 'latin1');
    head.writeUInt32BE(at, 20 + 16 * i);
    head.writeUInt32BE(data.length, 24 + 16 * i);
    at += padded(data).length;
  });
  return Buffer.concat([head, ...all.map(([, data]) => padded(data))]);
}

/** The same font packed as WOFF, with a table more that says it is so large, and unpacks to `holds` bytes. */
export function woffOf(tables: Tables, { says, holds }: { says: number; holds: number }): Buffer {
  const packed = (data: Buffer): Buffer => {
    const less = deflateSync(data);
    return less.length < data.length ? less : data;
  };
  const all = [...tables].map(([tag, data]) => ({ tag, length: data.length, packed: packed(data) }));
  all.push({ tag: 'zzzz', length: says, packed: deflateSync(Buffer.alloc(holds)) });
  const head = Buffer.alloc(44 + 20 * all.length);
  head.write('wOFF', 0);
  head.writeUInt32BE(0x10000, 4);
  head.writeUInt16BE(all.length, 12);
  let at = head.length;
  all.forEach(({ tag, length, packed: data }, i) => {
    head.write(tag, 44 + 20 * i, 'latin1');
    [at, data.length, length].forEach((number, k) => void head.writeUInt32BE(number, 48 + 20 * i + 4 * k));
    at += data.length;
  });
  return Buffer.concat([head, ...all.map(({ packed: data }) => data)]);
}

export const glyphCount = (tables: Tables): number => tableOf(tables, 'maxp').readUInt16BE(4);

/** The font with some glyphs drawn otherwise, and more of them after its own. */
export function withGlyphs(
  font: Buffer,
  changed: ReadonlyMap<number, Buffer>,
  more: readonly Buffer[] = [],
): Buffer {
  const tables = tablesIn(font);
  const [head, loca, glyf, maxp, hmtx] = ['head', 'loca', 'glyf', 'maxp', 'hmtx'].map((tag) =>
    tableOf(tables, tag),
  ) as [Buffer, Buffer, Buffer, Buffer, Buffer];
  const isLong = head.readInt16BE(50) === 1;
  const at = (glyph: number): number =>
    isLong ? loca.readUInt32BE(4 * glyph) : 2 * loca.readUInt16BE(2 * glyph);
  const own = Array.from(
    { length: glyphCount(tables) },
    (_, glyph) => changed.get(glyph) ?? glyf.subarray(at(glyph), at(glyph + 1)),
  );
  const all = [...own, ...more].map(padded);
  const places = Buffer.alloc(4 * (all.length + 1));
  let end = 0;
  all.forEach(({ length }, i) => {
    end += length;
    places.writeUInt32BE(end, 4 * (i + 1));
  });
  head.writeInt16BE(1, 50);
  maxp.writeUInt16BE(all.length, 4);
  tables.set('loca', places);
  tables.set('glyf', Buffer.concat(all));
  tables.set('hmtx', Buffer.concat([hmtx, Buffer.alloc(2 * more.length)]));
  return fontOf(tables);
}

/** A glyph of one contour through these points, straight from each to the next. */
export function lineGlyph(points: readonly (readonly [number, number])[]): Buffer {
  const steps = (axis: 0 | 1) =>
    words(...points.map((point, i) => point[axis] - (i === 0 ? 0 : (points[i - 1]?.[axis] ?? 0))));
  const head = words(1, 0, 0, 1000, 1000, points.length - 1, 0);
  return Buffer.concat([head, Buffer.alloc(points.length, 1), steps(0), steps(1)]);
}

/** A glyph made of others, each so far to the right. */
export function madeOf(parts: readonly { readonly glyph: number; readonly x: number }[]): Buffer {
  const [byTwoBytesAsOffsets, andMore] = [0x3, 0x20];
  return Buffer.concat([
    words(-1, 0, 0, 1000, 1000),
    ...parts.map(({ glyph, x }, i) =>
      words(byTwoBytesAsOffsets | (i < parts.length - 1 ? andMore : 0), glyph, x, 0),
    ),
  ]);
}

const oneGlyph = (glyph: number): Buffer => words(1, 1, glyph);

/** A table of substitutions that are all made, of every script, in the order given. */
function substitutions(type: number, all: readonly Buffer[]): Buffer {
  const scripts = Buffer.concat([words(1), Buffer.from('DFLT'), words(8, 4, 0, 0, 0xffff, 1, 0)]);
  const features = Buffer.concat([
    words(1),
    Buffer.from('ccmp'),
    words(8, 0, all.length, ...all.map((_, i) => i)),
  ]);
  const lookups = all.map((one) => Buffer.concat([words(type, 0, 1, 8), one]));
  const starts = lookups.map((_, i) =>
    lookups.slice(0, i).reduce((sum, { length }) => sum + length, 2 + 2 * lookups.length),
  );
  const offsets = [10, 10 + scripts.length, 10 + scripts.length + features.length];
  return Buffer.concat([
    words(1, 0, ...offsets),
    scripts,
    features,
    words(lookups.length, ...starts),
    ...lookups,
  ]);
}

/** A glyph becomes `times` of itself, and each of these as many, and so on. */
export function multiplied(glyph: number, times: number, rounds: number): Buffer {
  const one = Buffer.concat([
    words(1, 10 + 2 * times, 1, 8, times, ...Array.from({ length: times }, () => glyph)),
    oneGlyph(glyph),
  ]);
  return substitutions(
    2,
    Array.from({ length: rounds }, () => one),
  );
}

/** What is done at a glyph is to do the same again, `times` times. */
export function turningBack(glyph: number, times: number): Buffer {
  const again = Array.from({ length: times }, () => [0, 0]).flat();
  return substitutions(5, [Buffer.concat([words(3, 1, times, 8 + 4 * times, ...again), oneGlyph(glyph)])]);
}

/** A list of byte strings. Source: Adobe Technical Note 5176 (2003), section 5. */
function listOf(items: readonly Buffer[]): Buffer {
  if (items.length === 0) return words(0);
  const offsets = Buffer.alloc(4 * (items.length + 1));
  let at = 1;
  offsets.writeUInt32BE(at, 0);
  items.forEach(({ length }, i) => {
    at += length;
    offsets.writeUInt32BE(at, 4 * (i + 1));
  });
  return Buffer.concat([words(items.length), Buffer.from([4]), offsets, ...items]);
}

/** A number in a charstring, and the operators used here. Source: Adobe Technical Note 5177 (2000), section 3 and 4. */
const number = (value: number): Buffer => Buffer.concat([Buffer.from([28]), words(value)]);
const [moveTo, across, up, back, end, call] = [21, 6, 7, 11, 14, 29];
/** A routine of fewer than 1240 is called by its number less 107. */
const calling = (routine: number): Buffer => Buffer.concat([number(routine - 107), Buffer.from([call])]);
/** Begun below where it ends, so that as many as there are lie on one another. */
const boxDrawn = Buffer.concat(
  [[0], [-700, moveTo], [500, across], [700, up], [-500, across]].map(([value = 0, ...operator]) =>
    Buffer.concat([number(value), Buffer.from(operator)]),
  ),
);

/** The font with boxes for outlines, of the form of curves that calls routines: one glyph draws its own by the first. */
export const routineFont = (font: Buffer, glyph: number, isLooped: boolean): Buffer =>
  routinesFont(font, glyph, [isLooped ? [calling(0)] : [boxDrawn]]);

/** The same whose first routine calls the second so many times, and so on, to a box. */
export const branchingFont = (font: Buffer, glyph: number, deep: number, wide: number): Buffer =>
  routinesFont(font, glyph, [
    ...Array.from({ length: deep }, (_, i) => Array.from({ length: wide }, () => calling(i + 1))),
    [boxDrawn],
  ]);

function routinesFont(font: Buffer, glyph: number, drawn: readonly (readonly Buffer[])[]): Buffer {
  const tables = tablesIn(font);
  const kept = new Set(['cmap', 'head', 'hhea', 'hmtx', 'maxp', 'name', 'OS/2', 'post']);
  for (const tag of tables.keys()) if (!kept.has(tag)) tables.delete(tag);
  const glyphs = Array.from({ length: glyphCount(tables) }, (_, i) =>
    Buffer.concat([i === glyph ? calling(0) : boxDrawn, Buffer.from([end])]),
  );
  const [head, name, none, routines, outlines] = [
    Buffer.from([1, 0, 4, 4]),
    listOf([Buffer.from('A')]),
    listOf([]),
    listOf(drawn.map((steps) => Buffer.concat([...steps, Buffer.from([back])]))),
    listOf(glyphs),
  ];
  /** Where the outlines stand, and a private part of nothing. */
  const top = (at: number): Buffer => {
    const long = (value: number): Buffer => {
      const bytes = Buffer.from([29, 0, 0, 0, 0]);
      bytes.writeInt32BE(value, 1);
      return bytes;
    };
    return listOf([
      Buffer.concat([long(at), Buffer.from([17]), long(0), long(at + outlines.length), Buffer.from([18])]),
    ]);
  };
  const start = [head, name, top(0), none, routines].reduce((sum, { length }) => sum + length, 0);
  tables.set('CFF ', Buffer.concat([head, name, top(start), none, routines, outlines]));
  return fontOf(tables, Buffer.from('OTTO').readUInt32BE(0));
}
