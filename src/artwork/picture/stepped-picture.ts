// Pictures of tiles that are drawn for a half drop or for bricks: beside its copy, a part of its size further on, one goes on.
import type { Picture } from './decode-picture.ts';
import { mostPixels } from './picture-head.ts';
import { rowEdges } from './picture-rows.ts';
import { goesOnAcross } from './wrapped-picture.ts';

/** Copies of a picture as one that goes on straight across its borders. */
export interface SteppedPicture {
  readonly picture: Picture;
  /** How many copies stand side by side, and above one another; one of the two is 1. */
  readonly across: number;
  readonly up: number;
  /** How far on each copy stands from the one before, in parts of the size: of two parts one, of three one or two. */
  readonly parts: number;
}

/** Drops and shifts that tiles are drawn for: so many parts of so many. Common practice, no source. */
const steps = [
  { parts: 1, of: 2 },
  { parts: 1, of: 3 },
  { parts: 2, of: 3 },
  { parts: 1, of: 4 },
  { parts: 3, of: 4 },
] as const;

/** Where pixels beside the border differ by this an edge lies between them; a step leaves so much of the edges that straight copies show. */
const leastChange = 48;
const mostLeft = 0.5;

/** The copies by which a picture goes on that does not straight: by a drop, or by a shift; undefined where none does. */
export function steppedPicture(picture: Picture): SteppedPicture | undefined {
  for (const isDrop of [true, false]) {
    const size = isDrop ? picture.height : picture.width;
    const straight = breaks(picture, isDrop, 0);
    for (const { parts, of } of steps) {
      const by = (size * parts) / of;
      if (!Number.isInteger(by) || picture.width * picture.height * of > mostPixels) continue;
      if (breaks(picture, isDrop, by) > mostLeft * straight) continue;
      const copies = copiesOf(picture, isDrop, by, of);
      if (allMeet(copies, isDrop) && goesOnAcross(copies))
        return { picture: copies, across: isDrop ? of : 1, up: isDrop ? 1 : of, parts };
    }
  }
  return undefined;
}

/** How many pixels of a border differ from what the copy beside it shows there, the copy a step further on. */
function breaks({ width, height, rgb }: Picture, isDrop: boolean, by: number): number {
  const size = isDrop ? height : width;
  let count = 0;
  for (let i = 0; i < size; i++) {
    const on = (i + size - by) % size;
    const [last, first] = isDrop ? [i * width + width - 1, on * width] : [(height - 1) * width + i, on];
    if ([0, 1, 2].some((c) => Math.abs((rgb[3 * last + c] ?? 0) - (rgb[3 * first + c] ?? 0)) >= leastChange))
      count++;
  }
  return count;
}

/** Fewer edges than this meet by chance; each has to, within so many px. */
const leastEdges = 4;
const metWithin = 1.5;

/** Whether every edge that crosses the border between copies goes on there: film that ends on it tells of no step. */
function allMeet({ width, height, rgb }: Picture, isDrop: boolean): boolean {
  const [along, size] = isDrop ? [height, width] : [width, height];
  const wrap = (at: number, whole: number) => ((at % whole) + whole) % whole;
  const value = (i: number, k: number, channel: number) => {
    const [x, y] = isDrop ? [k, wrap(i, along)] : [wrap(i, along), k];
    return rgb[3 * (y * width + x) + channel] ?? 0;
  };
  const [last, first] = [rowEdges(value, along, size - 1), rowEdges(value, along, 0)];
  return (
    last.length >= leastEdges &&
    last.length === first.length &&
    last.every(({ at, rises }) =>
      first.some((edge) => edge.rises === rises && Math.abs(edge.at - at) <= metWithin),
    )
  );
}

/** So many copies, each a step further down than the one before it, or further right than the one above. */
function copiesOf({ width, height, rgb }: Picture, isDrop: boolean, by: number, count: number): Picture {
  const [w, h] = isDrop ? [width * count, height] : [width, height * count];
  const copies = new Uint8Array(3 * w * h);
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      const copy = isDrop ? Math.floor(x / width) : Math.floor(y / height);
      const [u, v] = isDrop
        ? [x % width, (y + copy * (height - by)) % height]
        : [(x + copy * (width - by)) % width, y % height];
      const from = 3 * (v * width + u);
      copies.set(rgb.subarray(from, from + 3), 3 * (y * w + x));
    }
  return { width: w, height: h, rgb: copies };
}
