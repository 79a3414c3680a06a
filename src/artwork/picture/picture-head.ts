// What a PNG or JPEG file says of its picture before any of it is unpacked: kind, size in pixels, and resolution.

/** Most pixels read: a square of 4,000. What unpacks to more is a slip or made to do harm. */
export const mostPixels = 16_000_000;

export interface PictureHead {
  readonly kind: 'PNG' | 'JPEG';
  readonly width: number;
  readonly height: number;
  /** Bits a colour. */
  readonly depth: number;
  /** Pixels to the mm, across and up; undefined where the file does not say. */
  readonly resolution: { readonly x: number; readonly y: number } | undefined;
  /** Whether a viewer would turn or mirror it: EXIF orientation other than 1. */
  readonly isTurned: boolean;
}

const starts = (bytes: Uint8Array, at: number, text: string): boolean =>
  [...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

export const isPng = (bytes: Uint8Array): boolean => starts(bytes, 0, '\u0089PNG\r\n\u001a\n');
const isJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;

export const isPicture = (bytes: Uint8Array): boolean => isPng(bytes) || isJpeg(bytes);

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** The head of a picture; undefined where the bytes are none. @throws RangeError where they end too early. */
export function pictureHead(bytes: Uint8Array): PictureHead | undefined {
  if (isPng(bytes)) return pngHead(bytes);
  return isJpeg(bytes) ? jpegHead(bytes) : undefined;
}

export interface PngChunk {
  readonly type: string;
  /** Where it begins and ends, its length and checksum with it. */
  readonly from: number;
  readonly to: number;
}

/** The chunks of a PNG file. Source: PNG, third edition, 5.3: length, type, data, CRC. */
export function* pngChunks(bytes: Uint8Array): Generator<PngChunk> {
  const view = viewOf(bytes);
  for (let from = 8; from + 12 <= bytes.length; ) {
    const to = from + 12 + view.getUint32(from);
    const type = String.fromCharCode(...bytes.subarray(from + 4, from + 8));
    yield { type, from, to };
    if (type === 'IEND') return;
    from = to;
  }
}

function pngHead(bytes: Uint8Array): PictureHead {
  const view = viewOf(bytes);
  let resolution: PictureHead['resolution'];
  for (const { type, from } of pngChunks(bytes)) {
    // Source: PNG, 11.3.4.3 pHYs: pixels per unit across and up, then 1 where the unit is the metre.
    if (type === 'pHYs' && view.getUint8(from + 16) === 1)
      resolution = { x: view.getUint32(from + 8) / 1000, y: view.getUint32(from + 12) / 1000 };
    if (type === 'IDAT') break;
  }
  const [width, height] = [view.getUint32(16), view.getUint32(20)];
  const depth = view.getUint8(24);
  return { kind: 'PNG', width, height, depth, resolution: meant(resolution), isTurned: false };
}

/** Source: ITU-T T.81, B.1: markers with the length of what follows; JFIF 1.02 for the density; Exif 2.3 for the orientation. */
function jpegHead(bytes: Uint8Array): PictureHead | undefined {
  const view = viewOf(bytes);
  let resolution: PictureHead['resolution'];
  let isTurned = false;
  for (let at = 2; at + 4 <= bytes.length; ) {
    if (bytes[at] !== 0xff) return undefined;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const data = at + 4;
    if (marker === 0xe0 && starts(bytes, data, 'JFIF\u0000')) {
      const perMm = [0, 1 / 25.4, 1 / 10][view.getUint8(data + 7)] ?? 0;
      resolution = { x: view.getUint16(data + 8) * perMm, y: view.getUint16(data + 10) * perMm };
    }
    if (marker === 0xe1 && starts(bytes, data, 'Exif\u0000\u0000'))
      isTurned ||= orientation(view, data + 6) > 1;
    // Frames C0 to CF, without the tables C4, C8 and CC among them.
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)) {
      const [height, width] = [view.getUint16(data + 1), view.getUint16(data + 3)];
      const depth = view.getUint8(data);
      return { kind: 'JPEG', width, height, depth, resolution: meant(resolution), isTurned };
    }
    at += 2 + view.getUint16(at + 2);
  }
  return undefined;
}

/** Tag 0x0112 of the first directory; 1 where there is none. */
function orientation(view: DataView, start: number): number {
  const little = view.getUint16(start) === 0x4949;
  const directory = start + view.getUint32(start + 4, little);
  const count = view.getUint16(directory, little);
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + 12 * i;
    if (view.getUint16(entry, little) === 0x0112) return view.getUint16(entry + 8, little);
  }
  return 1;
}

/** A resolution that can be meant: from a picture 10 m wide to one a pixel of which no eye sees. */
const meant = (resolution: PictureHead['resolution']): PictureHead['resolution'] =>
  resolution && [resolution.x, resolution.y].every((perMm) => perMm > 0.01 && perMm < 1000)
    ? resolution
    : undefined;
