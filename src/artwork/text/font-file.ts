// A font file as it comes: which kind it is, whether it is whole, and the plain font in it.
import { Refused, stop } from '../../finding.ts';
import { tooLarge } from '../../lengths/file-size.ts';

/** Gives the plain bytes of packed ones (RFC 1950), no more than `size` of them. @throws Error where they can't be unpacked. */
export type Inflate = (packed: Uint8Array, size: number) => Uint8Array;

/** More tables than this no font has. */
const mostTables = 200;

const refused = (file: string, says: string): Refused => new Refused([stop('font', { file }, says)]);

const another = 'give a TTF, OTF or WOFF file of the font';

interface Table {
  readonly tag: string;
  readonly from: number;
  readonly length: number;
}

const tagAt = (view: DataView, at: number): string =>
  String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.length);

/** What a shaper can't do without: letters to glyphs, their widths, and their outlines in one of two forms. */
const needed: readonly (readonly string[])[] = [
  ['cmap'],
  ['head'],
  ['hhea'],
  ['hmtx'],
  ['maxp'],
  ['glyf', 'CFF ', 'CFF2'],
];

/**
 * The plain font of a TTF, OTF or WOFF file, its tables checked to lie within it.
 * Source: OpenType 1.9, "Organization of an OpenType Font"; WOFF File Format 1.0 (W3C 2012), sections 3 to 5.
 * @throws Refused in words where it is another kind of file, or cut short.
 */
export function fontIn(bytes: Uint8Array, file: string, inflate: Inflate): Uint8Array {
  if (bytes.length < 12) throw refused(file, `is too short to be a font; ${another}`);
  const kind = tagAt(viewOf(bytes), 0);
  switch (kind) {
    case '\0\x01\0\0':
    case 'true':
    case 'OTTO':
      return checked(bytes, file);
    case 'wOFF':
      return checked(unwrapped(bytes, file, inflate), file);
    case 'wOF2':
      throw refused(file, `is a WOFF2 file, which is not read; ${another}`);
    case 'ttcf':
      throw refused(file, `is a collection of several fonts; ${another}`);
    default:
      throw refused(file, `is no font; ${another}`);
  }
}

/** A font whose tables all lie within it, with those that lettering needs. */
function checked(bytes: Uint8Array, file: string): Uint8Array {
  const view = viewOf(bytes);
  const count = view.getUint16(4);
  if (count > mostTables || 12 + 16 * count > bytes.length)
    throw refused(file, `is cut short, or damaged; ${another}`);
  const tables = Array.from({ length: count }, (_, i): Table => {
    const at = 12 + 16 * i;
    return { tag: tagAt(view, at), from: view.getUint32(at + 8), length: view.getUint32(at + 12) };
  });
  const broken = tables.find(({ from, length }) => from + length > bytes.length);
  if (broken)
    throw refused(file, `is cut short: its table "${broken.tag.trim()}" goes on past its end; ${another}`);
  const missing = needed.find((tags) => !tables.some(({ tag, length }) => length > 0 && tags.includes(tag)));
  if (missing)
    throw refused(
      file,
      `has no table "${missing.map((tag) => tag.trim()).join('" or "')}", so it has no letters to cut; ${another}`,
    );
  return bytes;
}

/** The font that a WOFF file wraps. */
function unwrapped(bytes: Uint8Array, file: string, inflate: Inflate): Uint8Array {
  const damaged = () => refused(file, `is cut short, or damaged; ${another}`);
  const view = viewOf(bytes);
  if (bytes.length < 44) throw damaged();
  const [flavour, count] = [view.getUint32(4), view.getUint16(12)];
  if (count > mostTables || 44 + 20 * count > bytes.length) throw damaged();
  const entries = Array.from({ length: count }, (_, i) => {
    const at = 44 + 20 * i;
    const [tag, from, packed, length] = [0, 4, 8, 12].map((step) => view.getUint32(at + step));
    return {
      tag: tag ?? 0,
      from: from ?? 0,
      packed: packed ?? 0,
      length: length ?? 0,
      sum: view.getUint32(at + 16),
    };
  });
  const size = entries.reduce((sum, { length }) => sum + rounded(length), 12 + 16 * count);
  const large = tooLarge(size, 'would be unpacked');
  if (large) throw refused(file, large);
  const font = new Uint8Array(size);
  const out = viewOf(font);
  out.setUint32(0, flavour);
  out.setUint16(4, count);
  let at = 12 + 16 * count;
  entries.forEach(({ tag, from, packed, length, sum }, i) => {
    if (from + packed > bytes.length || packed > length) throw damaged();
    const part = bytes.subarray(from, from + packed);
    font.set(packed === length ? part : plain(part, length, inflate, damaged), at);
    [tag, sum, at, length].forEach((value, k) => void out.setUint32(12 + 16 * i + 4 * k, value));
    at += rounded(length);
  });
  return font;
}

/** Tables begin at multiples of four. */
const rounded = (length: number): number => Math.ceil(length / 4) * 4;

function plain(part: Uint8Array, length: number, inflate: Inflate, damaged: () => Refused): Uint8Array {
  try {
    const bytes = inflate(part, length);
    if (bytes.length === length) return bytes;
  } catch {
    throw damaged();
  }
  throw damaged();
}
