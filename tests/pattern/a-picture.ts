// Pictures of patterns whose lattice is known, drawn by the engine that draws our pictures, then spoilt as scans and photographs are.
import { decode, encode } from 'jpeg-js';
import type { Planes } from '../../src/pattern/pixels/planes.ts';
import { drawn } from '../pictures/compare.ts';

export interface Spoilt {
  /** Standard deviation of noise, 0 to 255. */
  readonly noise?: number;
  /** Quality it is packed with as a JPEG, 0 to 100. */
  readonly jpeg?: number;
  /** Shares of width and height between which something grey lies on it. */
  readonly covered?: { readonly from: number; readonly to: number };
  readonly random?: () => number;
}

/** An SVG on white as the channels of a picture so many pixels wide. */
export async function pictureOf(svg: string, widthPx: number, spoilt: Spoilt = {}): Promise<Planes> {
  const { width, height, data: clean } = await drawn(svg, widthPx);
  const { covered, noise = 0, jpeg, random = Math.random } = spoilt;
  const data = Uint8Array.from(clean);
  const isCovered = (share: number) => covered !== undefined && share > covered.from && share < covered.to;
  for (let i = 0; i < width * height; i++) {
    const hidden = isCovered((i % width) / width) && isCovered(Math.floor(i / width) / height);
    for (let k = 0; k < 3; k++) {
      // The sum of four even chances is near enough to a normal one, of deviation 0.577.
      const off = noise === 0 ? 0 : (noise / 0.577) * (random() + random() + random() + random() - 2);
      data[4 * i + k] = Math.max(0, Math.min(255, Math.round((hidden ? 130 : (data[4 * i + k] ?? 0)) + off)));
    }
  }
  const shown =
    jpeg === undefined
      ? data
      : decode(encode({ data, width, height }, jpeg).data, { useTArray: true, formatAsRGBA: true }).data;
  const planes = [0, 1, 2].map((k) =>
    Float64Array.from({ length: width * height }, (_, i) => shown[4 * i + k] ?? 0),
  );
  return { width, height, planes };
}
