// Pictures as a page takes them: without see-through pixels. Adapter: fast-png (MIT), alike in Node and a browser.
import { decode, encode } from 'fast-png';
import { packing } from './compress.ts';

/** A picture to be put on a page. */
export interface FlatPicture {
  /** A PNG without see-through pixels. */
  readonly png: Uint8Array;
  /** Height over width. */
  readonly aspect: number;
}

/** What is drawn on white. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Three bytes a pixel, row by row from the top. */
  readonly rgb: Uint8Array;
}

/** Pixels packed. What platforms pack see-through pixels with is not the same everywhere, so there are none. */
export const flatPicture = ({ width, height, rgb }: Pixels): FlatPicture => ({
  png: encode({ width, height, channels: 3, depth: 8, data: rgb }, { zlib: packing }),
  aspect: height / width,
});

/** A picture that was packed so, taken up again. Its header stands first: PNG 3rd edition, 5.2 and 11.2.1. */
export function flatPictureIn(png: Uint8Array): FlatPicture {
  const header = new DataView(png.buffer, png.byteOffset);
  return { png, aspect: header.getUint32(20) / header.getUint32(16) };
}

/** A picture that was packed so, half as wide: each pixel the mean of four, as if it were drawn smaller. */
export function halfOf(png: Uint8Array): FlatPicture {
  const { width, height, data } = decode(png);
  const half = { width: Math.floor(width / 2), height: Math.floor(height / 2) };
  const rgb = new Uint8Array(half.width * half.height * 3);
  let to = 0;
  for (let y = 0; y < half.height; y++) {
    for (let x = 0; x < half.width; x++) {
      const above = (2 * y * width + 2 * x) * 3;
      const below = above + width * 3;
      for (let i = 0; i < 3; i++) {
        const sum =
          (data[above + i] ?? 0) +
          (data[above + 3 + i] ?? 0) +
          (data[below + i] ?? 0) +
          (data[below + 3 + i] ?? 0);
        rgb[to++] = (sum + 2) >> 2;
      }
    }
  }
  return flatPicture({ ...half, rgb });
}
