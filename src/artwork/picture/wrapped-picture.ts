// Pictures that go on across their own borders, as seamless tiles do.
import type { SampleGrid } from '../../geometry/level-lines.ts';
import type { Picture } from './decode-picture.ts';
import { edgesMet } from './edges-met.ts';
import type { Coloured } from './picture-colours.ts';
import { coverOf } from './picture-cover.ts';
import {
  BorderRows,
  type BorderView,
  type RowReader,
  type RowStretch,
  wholeStretch,
} from './picture-rows.ts';
import { pictureSides } from './picture-sides.ts';

/** A channel may jump by so much where two copies meet, for noise; more has to be explained by how steep it is beside it. */
const slack = 24;
const steepness = 1.5;

/** A picture with fewer pixels than this one way is no tile. */
const leastSize = 8;

/** So many pixels on end that do not go on are film that ends there. */
const mostOpen = 5;

/** Fewer than so many, or than this share of all that jump, are left where an edge runs beside the border and a JPEG blurred it. */
const leastOpen = 2;
const mostOpenShare = 0.25;

/**
 * Whether a picture goes on across both its borders: where its last row meets its first, and its last column its first, no
 * channel changes by more than it does in the pixels around, and edges that cross the one cross the other.
 */
export function goesOnAcross({ width, height, rgb }: Picture): boolean {
  if (Math.min(width, height) < leastSize) return false;
  const level = (x: number, y: number) => 3 * (wrap(y, height) * width + wrap(x, width));
  const upright = (y: number, x: number) => 3 * (wrap(y, height) * width + wrap(x, width));
  return [
    { at: level, along: width, size: height },
    { at: upright, along: height, size: width },
  ].every(({ at, along, size }) => {
    const value: RowReader = (i, k, channel) => rgb[at(i, k) + channel] ?? 0;
    const rows = new BorderRows({ value, along, size });
    const goesOn = (sides: readonly RowStretch[]): boolean => {
      const { meet, touching } = edgesMet(rows, sides);
      const ending = [...touching, ...sides].map((stretch) => wholeStretch(rows.view, 0, stretch));
      return meet && meets(rgb, along, at, size, ending);
    };
    if (goesOn([])) return true;
    const sides = pictureSides(rows, goesOn);
    return (sides !== undefined && sides.length > 0) || changesAsWithin(rows.view);
  });
}

/** A picture that changes by so much from each row to the next, on the mean, is all texture: no edge of it need be looked at. */
const texture = 8;

/** Its border is one more row of it where it changes there by no more than so many times that. */
const asWithin = 1.25;

/** Rows that follow on one another differ by less than this share of what rows far apart do; those of a fine regular pattern do not. */
const leastAlike = 0.75;

/** A row so far on, as a share of all, has nothing to do with one. */
const farOn = 0.37;

/** Whether a texture changes across a border as it does from row to row within: a crop's rows there have nothing in common. */
function changesAsWithin({ value, along, size }: BorderView): boolean {
  const change = (k: number, from: number): number => {
    let sum = 0;
    for (let i = 0; i < along; i++)
      for (let channel = 0; channel < 3; channel++)
        sum += Math.abs(value(i, k, channel) - value(i, from, channel));
    return sum / (3 * along);
  };
  const usualOf = (apart: number): number =>
    Array.from({ length: size - apart }, (_, k) => change(k + apart, k)).sort((p, q) => p - q)[
      (size - apart) >> 1
    ] ?? 0;
  const [usual, border] = [usualOf(1), change(size, size - 1)];
  return (
    usual >= texture && border <= asWithin * usual && border <= leastAlike * usualOf(Math.round(farOn * size))
  );
}

const wrap = (value: number, size: number): number =>
  value >= 0 && value < size ? value : ((value % size) + size) % size;

/** Whether a place lies in a stretch, which may go on past the end of the row. */
const isBetween = (i: number, from: number, to: number, along: number): boolean =>
  [-along, 0, along].some((by) => i + by > from && i + by < to);

/** One border: `at(i, k)` is the place of the pixel i along it, k past its last row. */
function meets(
  rgb: Uint8Array,
  along: number,
  at: (i: number, k: number) => number,
  size: number,
  ending: readonly RowStretch[],
): boolean {
  let [run, longest, open, jumps] = [0, 0, 0, 0];
  for (let i = 0; i < along; i++) {
    if (ending.some(({ from, to }) => isBetween(i, from - 2, to + 2, along))) continue;
    const seen = [0, 1, 2].map((channel) => jumpAt(rgb, at, i, size, channel));
    run = seen.includes('open') ? run + 1 : 0;
    longest = Math.max(longest, run);
    open += run > 0 ? 1 : 0;
    jumps += seen.some((jump) => jump !== 'none') ? 1 : 0;
  }
  return longest < leastOpen || (longest < mostOpen && open <= mostOpenShare * jumps);
}

/** Whether the middle one of three pixels in a row is a mix of the two beside it: an edge runs through it. */
const isMixed = (before: number, value: number, after: number): boolean =>
  Math.min(before, after) + leastMix <= value && value <= Math.max(before, after) - leastMix;

/** A mix differs from both by more than pixels do that are packed as a JPEG. */
const leastMix = 12;

/** What stands across the border at a place along it: no jump, one that edges beside it explain, or one that nothing does. */
function jumpAt(
  rgb: Uint8Array,
  at: (i: number, k: number) => number,
  i: number,
  size: number,
  channel: number,
): 'none' | 'explained' | 'open' {
  const value = (u: number, k: number) => rgb[at(u, k) + channel] ?? 0;
  const jump = Math.abs(value(i, size) - value(i, size - 1));
  if (jump <= slack) return 'none';
  if (
    isMixed(value(i, size - 2), value(i, size - 1), value(i, size)) ||
    isMixed(value(i, size - 1), value(i, size), value(i, size + 1))
  )
    return 'explained';
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
  return jump <= steepness * steep + slack ? 'explained' : 'open';
}

/** How much of each pixel a colour covers (see `coverOf`), where the picture's own copies lie all around it. */
export function wrappedCover(
  { width, height, rgb }: Picture,
  { palette, labels }: Coloured,
  label: number,
): SampleGrid {
  const [w, h] = [width + 2, height + 2];
  const wide = { rgb: new Uint8Array(3 * w * h), labels: new Uint8Array(w * h) };
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      const from = wrap(y - 1, height) * width + wrap(x - 1, width);
      wide.labels[y * w + x] = labels[from] ?? 0;
      for (let k = 0; k < 3; k++) wide.rgb[3 * (y * w + x) + k] = rgb[3 * from + k] ?? 0;
    }
  const cover = coverOf({ width: w, height: h, rgb: wide.rgb }, { palette, labels: wide.labels }, label);
  const values = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    values.set(cover.subarray((y + 1) * w + 1, (y + 1) * w + 1 + width), y * width);
  return { width, height, values };
}
