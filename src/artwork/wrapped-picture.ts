// Pictures that go on across their own borders, as seamless tiles do: traced with what lies beyond, so that no motif is cut there.
import { shifted } from '../geometry/affine.ts';
import { type Box, boxesMeet, movedBox } from '../geometry/box.ts';
import type { Shape } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import type { Picture } from './decode-picture.ts';
import type { Coloured } from './picture-colours.ts';

/** A channel may jump by so much where two copies meet, for noise; more has to be explained by how steep it is beside it. */
const slack = 24;
const steepness = 1.5;

/** So many pixels on end that do not go on are a place that does not join. */
const mostOpen = 2;

/**
 * Whether a picture goes on across both its borders: where its last row meets its first, and its last column its first, no
 * channel changes by more than it does in the pixels around.
 */
export function goesOnAcross({ width, height, rgb }: Picture): boolean {
  const level = (x: number, y: number) => 3 * (wrap(y, height) * width + wrap(x, width));
  const upright = (y: number, x: number) => 3 * (wrap(y, height) * width + wrap(x, width));
  return meets(rgb, width, level, height) && meets(rgb, height, upright, width);
}

const wrap = (value: number, size: number): number => ((value % size) + size) % size;

/** One border: `at(i, k)` is the place of the pixel i along it, k past its last row. */
function meets(rgb: Uint8Array, along: number, at: (i: number, k: number) => number, size: number): boolean {
  let open = 0;
  for (let i = 0; i < along; i++) {
    open = [0, 1, 2].every((channel) => isExplained(rgb, at, i, size, channel)) ? 0 : open + 1;
    if (open >= mostOpen) return false;
  }
  return true;
}

function isExplained(
  rgb: Uint8Array,
  at: (i: number, k: number) => number,
  i: number,
  size: number,
  channel: number,
): boolean {
  const value = (u: number, k: number) => rgb[at(u, k) + channel] ?? 0;
  const jump = Math.abs(value(i, size) - value(i, size - 1));
  if (jump <= slack) return true;
  let steep = 0;
  // On either side apart: across the border itself nothing is known.
  for (const rows of [
    [size - 2, size - 1],
    [size, size + 1],
  ])
    for (let u = i - 1; u <= i + 1; u++) {
      const [k, l] = [rows[0] ?? 0, rows[1] ?? 0];
      steep = Math.max(
        steep,
        Math.abs(value(u, l) - value(u, k)),
        Math.abs(value(u + 1, k) - value(u, k)),
        Math.abs(value(u + 1, l) - value(u, l)),
      );
    }
  return jump <= steepness * steep + slack;
}

/** A picture with so many pixels of its copies around it. */
export interface Padded {
  readonly picture: Picture;
  readonly coloured: Coloured;
  readonly pad: { readonly x: number; readonly y: number };
}

/** Most of its copies that is laid around a picture, px: motifs larger than this are cut at the border. */
const mostPad = 400;

export function paddedPicture({ width, height, rgb }: Picture, { palette, labels }: Coloured): Padded {
  const pad = { x: Math.min(width, mostPad), y: Math.min(height, mostPad) };
  const [w, h] = [width + 2 * pad.x, height + 2 * pad.y];
  const made = { rgb: new Uint8Array(3 * w * h), labels: new Uint8Array(w * h) };
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      const from = wrap(y - pad.y, height) * width + wrap(x - pad.x, width);
      made.labels[y * w + x] = labels[from] ?? 0;
      for (let k = 0; k < 3; k++) made.rgb[3 * (y * w + x) + k] = rgb[3 * from + k] ?? 0;
    }
  return { picture: { width: w, height: h, rgb: made.rgb }, coloured: { palette, labels: made.labels }, pad };
}

/** Sizes in mm: of the picture, of a pixel, and of what of its copies lies around it. */
export interface WrappedSize {
  readonly width: number;
  readonly height: number;
  readonly pixel: Point;
  readonly pad: Point;
}

/**
 * Of shapes traced in a padded picture, its corner at minus the pad: each motif whole, once, and its exact copies that reach
 * into the picture. Undefined where film runs on from copy to copy without end, for then it has to be cut.
 */
export function wholeMotifs(shapes: readonly Shape[], size: WrappedSize): Shape[] | undefined {
  const { width, height, pixel, pad } = size;
  const placed = shapes.map((shape) => ({ shape, box: tightBox(shape.contours) }));
  const frame = {
    minX: pixel.x - pad.x,
    minY: pixel.y - pad.y,
    maxX: width + pad.x - pixel.x,
    maxY: height + pad.y - pixel.y,
  };
  const tile = { minX: 0, minY: 0, maxX: width, maxY: height };
  const isWhole = ({ minX, minY, maxX, maxY }: Box) =>
    minX > frame.minX && minY > frame.minY && maxX < frame.maxX && maxY < frame.maxY;
  if (placed.some(({ box }) => !isWhole(box) && boxesMeet(box, tile))) return undefined;
  const own: { readonly shape: Shape; readonly box: Box }[] = [];
  for (const one of placed) {
    const at = middleOf(one.box);
    // One whose middle lies on the border may be traced on either side of it, or on both.
    const isHere = at.x > -pixel.x && at.y > -pixel.y && at.x < width + pixel.x && at.y < height + pixel.y;
    if (isHere && isWhole(one.box) && !own.some(({ box }) => isCopy(one.box, box, size))) own.push(one);
  }
  return own.flatMap(({ shape, box }) =>
    steps.flatMap(([i, j]) => {
      const by = { x: i * width, y: j * height };
      return boxesMeet(movedBox(box, by), tile) ? [{ contours: shifted(shape.contours, by) }] : [];
    }),
  );
}

const steps = [-2, -1, 0, 1, 2].flatMap((i) => [-2, -1, 0, 1, 2].map((j) => [i, j] as const));

const middleOf = ({ minX, minY, maxX, maxY }: Box): Point => ({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 });

/** Whether two boxes are one motif's, a whole picture apart: corners within a pixel. */
function isCopy(one: Box, other: Box, { width, height, pixel }: WrappedSize): boolean {
  const off = (p: number, q: number, whole: number) => Math.abs(p - q - Math.round((p - q) / whole) * whole);
  return (
    off(one.minX, other.minX, width) < pixel.x &&
    off(one.maxX, other.maxX, width) < pixel.x &&
    off(one.minY, other.minY, height) < pixel.y &&
    off(one.maxY, other.maxY, height) < pixel.y
  );
}
