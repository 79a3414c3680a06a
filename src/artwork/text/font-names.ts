// The names that a font file gives itself: of its family, and its own.

/** Names that a family goes by. Source: OpenType 1.9, 'name' table: 1 is the family, 16 the typographic family. */
const familyIds: ReadonlySet<number> = new Set([1, 16]);

/** Names of the one font alone: 4 is its full name, 6 its PostScript name. */
const ownIds: ReadonlySet<number> = new Set([4, 6]);

/** Platforms whose names are UTF-16; those of the old one (1) are read where they are plain letters. */
const wide: ReadonlySet<number> = new Set([0, 3]);

/** The family names of a plain TTF or OTF whose tables lie within it (`fontIn`); none where it has no table of names. */
export const fontFamilies = (bytes: Uint8Array): readonly string[] => namesOf(bytes, familyIds);

/** Where drawing programs name a font: in attributes and in styles. */
const naming = /\bfont(?:-family)?\s*[:=]\s*(?:"[^"]*"|'[^']*'|[^;{}<>]*)/g;

/**
 * A drawing in which fonts that are named by their full or PostScript names, as some programs do, are named by their families. A name
 * is left where others of its family were given too: the family would not tell which.
 */
export function namedByFamily(svg: string, fonts: readonly Uint8Array[]): string {
  const families = fonts.map(fontFamilies);
  const all = new Set(families.flat());
  const known = fonts.flatMap((font, i): (readonly [string, string])[] => {
    const [family] = families[i] ?? [];
    const isOnly = family !== undefined && families.filter((one) => one.includes(family)).length === 1;
    const own = namesOf(font, ownIds).filter((name) => !all.has(name));
    return isOnly ? own.map((name) => [name, family] as const) : [];
  });
  const here = known.filter(([name]) => svg.includes(name)).sort(([a], [b]) => b.length - a.length);
  if (here.length === 0) return svg;
  return svg.replace(naming, (part) =>
    here.reduce((text, [name, family]) => text.replaceAll(name, () => family), part),
  );
}

function namesOf(bytes: Uint8Array, ids: ReadonlySet<number>): readonly string[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const table = nameTable(view);
  if (!table) return [];
  const [count, storage] = [table.getUint16(2), table.getUint16(4)];
  const names = new Set<string>();
  for (let i = 0; i < count && 6 + 12 * (i + 1) <= table.byteLength; i++) {
    const at = 6 + 12 * i;
    const [platform, id, length, offset] = [0, 6, 8, 10].map((step) => table.getUint16(at + step));
    const from = storage + (offset ?? 0);
    if (!ids.has(id ?? 0) || from + (length ?? 0) > table.byteLength) continue;
    const text = new Uint8Array(table.buffer, table.byteOffset + from, length);
    names.add(wide.has(platform ?? 0) ? wideText(text) : String.fromCharCode(...text));
  }
  return [...names].filter((name) => name !== '');
}

function nameTable(view: DataView): DataView | undefined {
  const count = view.getUint16(4);
  for (let i = 0; i < count; i++) {
    const at = 12 + 16 * i;
    // 'name'
    if (view.getUint32(at) !== 0x6e616d65) continue;
    const [from, length] = [view.getUint32(at + 8), view.getUint32(at + 12)];
    return length >= 6 ? new DataView(view.buffer, view.byteOffset + from, length) : undefined;
  }
  return undefined;
}

const wideText = (bytes: Uint8Array): string =>
  String.fromCharCode(
    ...Array.from(
      { length: bytes.length >> 1 },
      (_, i) => ((bytes[2 * i] ?? 0) << 8) | (bytes[2 * i + 1] ?? 0),
    ),
  );
