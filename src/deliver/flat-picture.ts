// Pictures as a page takes them: without see-through pixels. Adapter: fast-png (MIT), alike in Node and a browser.
import { encode } from 'fast-png';
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
