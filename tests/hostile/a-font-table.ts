// Fonts of which one table, or a number in one, is made to do harm.

interface Place {
  /** Where the font's list of tables names it, and where it begins and how long it is. */
  readonly entry: number;
  readonly from: number;
  readonly length: number;
}

/** The tables of a plain font. Source: OpenType 1.9, "Table Directory". */
export function tablesOf(font: Buffer): ReadonlyMap<string, Place> {
  return new Map(
    Array.from({ length: font.readUInt16BE(4) }, (_, i): [string, Place] => {
      const entry = 12 + 16 * i;
      const tag = font.toString('latin1', entry, entry + 4);
      return [tag, { entry, from: font.readUInt32BE(entry + 8), length: font.readUInt32BE(entry + 12) }];
    }),
  );
}

/** A copy of a font whose table was changed in place. */
export function withTable(font: Buffer, tag: string, change: (table: Buffer) => void): Buffer {
  const copy = Buffer.from(font);
  const place = tablesOf(copy).get(tag);
  if (!place) throw new Error(`the font has no table ${tag}`);
  change(copy.subarray(place.from, place.from + place.length));
  return copy;
}

/** A copy of a font that ends within a table. */
export function cutWithin(font: Buffer, tag: string): Buffer {
  const place = tablesOf(font).get(tag);
  if (!place) throw new Error(`the font has no table ${tag}`);
  return font.subarray(0, place.from + Math.floor(place.length / 2));
}

/** A copy of a font whose composite glyphs are all made of one another: each names the first of them, which names itself. */
export function withLoopedGlyphs(font: Buffer): Buffer {
  const tables = tablesOf(font);
  const [head, loca, glyf, maxp] = ['head', 'loca', 'glyf', 'maxp'].map((tag) => tables.get(tag)?.from ?? 0);
  const isLong = font.readInt16BE((head ?? 0) + 50) === 1;
  const copy = Buffer.from(font);
  const at = (glyph: number): number =>
    (glyf ?? 0) +
    (isLong ? font.readUInt32BE((loca ?? 0) + 4 * glyph) : 2 * font.readUInt16BE((loca ?? 0) + 2 * glyph));
  const composite: number[] = [];
  for (let glyph = 0; glyph < font.readUInt16BE((maxp ?? 0) + 4); glyph++)
    if (at(glyph + 1) > at(glyph) && font.readInt16BE(at(glyph)) < 0) composite.push(glyph);
  // Source: OpenType 1.9, "glyf", composite glyph description: ten bytes of head, then flags and the glyph that it is made of.
  for (const glyph of composite) copy.writeUInt16BE(composite[0] ?? 0, at(glyph) + 12);
  if (composite.length === 0) throw new Error('the font has no composite glyph');
  return copy;
}
