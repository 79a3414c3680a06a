// The families that a font file says it is of.

/** Names that a family goes by. Source: OpenType 1.9, 'name' table: 1 is the family, 16 the typographic family. */
const familyIds: ReadonlySet<number> = new Set([1, 16]);

/** Platforms whose names are UTF-16; those of the old one (1) are read where they are plain letters. */
const wide: ReadonlySet<number> = new Set([0, 3]);

/** The family names of a plain TTF or OTF whose tables lie within it (`fontIn`); none where it has no table of names. */
export function fontFamilies(bytes: Uint8Array): readonly string[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const table = nameTable(view);
  if (!table) return [];
  const [count, storage] = [table.getUint16(2), table.getUint16(4)];
  const names = new Set<string>();
  for (let i = 0; i < count && 6 + 12 * (i + 1) <= table.byteLength; i++) {
    const at = 6 + 12 * i;
    const [platform, id, length, offset] = [0, 6, 8, 10].map((step) => table.getUint16(at + step));
    const from = storage + (offset ?? 0);
    if (!familyIds.has(id ?? 0) || from + (length ?? 0) > table.byteLength) continue;
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
