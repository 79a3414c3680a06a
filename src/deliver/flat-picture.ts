// Pictures as a page takes them: without see-through pixels, on white. Adapter: fast-png (MIT), alike in Node and a browser.
import { decode, encode } from 'fast-png';

/** A picture to be put on a page. */
export interface FlatPicture {
  /** A PNG without see-through pixels. */
  readonly png: Uint8Array;
  /** Height over width. */
  readonly aspect: number;
}

/** A PNG of eight bits a channel on white. What platforms pack see-through pixels with is not the same everywhere. */
export function flatPicture(png: Uint8Array): FlatPicture {
  const { width, height, channels, data } = decode(png);
  const aspect = height / width;
  if (channels !== 4) return { png, aspect };
  const rgb = new Uint8Array(3 * width * height);
  for (let i = 0; i < width * height; i++) {
    const clear = 255 - (data[4 * i + 3] ?? 255);
    for (let c = 0; c < 3; c++) {
      const shade = data[4 * i + c] ?? 0;
      rgb[3 * i + c] = clear === 0 ? shade : Math.round((shade * (255 - clear) + 255 * clear) / 255);
    }
  }
  return { png: encode({ width, height, channels: 3, depth: 8, data: rgb }), aspect };
}
