// Thin lines put into pixels directly: what changes at every key has some 20,000 chords of a few dots each, and a canvas takes three times as
// long to be told of them, and to draw them, as their pixels take here.
import type { InkChords } from './ink-chords.ts';
import type { Point } from './sheet-view.ts';

/** A window's pixels. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** One a pixel, in the bytes' order of the machine: red, green, blue, and nothing shining through. */
  readonly colours: Uint32Array<ArrayBuffer>;
  /** How much of each pixel the line of now covers, of 255. */
  readonly covered: Uint8Array<ArrayBuffer>;
}

export const blankPixels = (width: number, height: number): Pixels => ({
  width,
  height,
  colours: new Uint32Array(width * height),
  covered: new Uint8Array(width * height),
});

const channelsOf = (colour: string): readonly number[] =>
  [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));

/** What a colour is on paper, by how much of a pixel it covers, of 255. */
function shades(colour: string, paper: string): Uint32Array<ArrayBuffer> {
  const [on, under] = [channelsOf(colour), channelsOf(paper)];
  const bytes = new Uint8ClampedArray(4 * 256);
  for (let share = 0; share < 256; share++)
    bytes.set(
      [0, 1, 2].map((i) => (under[i] ?? 0) + (((on[i] ?? 0) - (under[i] ?? 0)) * share) / 255),
      4 * share,
    );
  for (let share = 0; share < 256; share++) bytes[4 * share + 3] = 255;
  return new Uint32Array(bytes.buffer);
}

/** All of the window as bare paper. */
export function fillPixels({ colours }: Pixels, paper: string): void {
  colours.fill(shades(paper, paper)[0] ?? 0);
}

/** How a line is put there: mm to pixels, its colour on the paper, and how wide it is, pixels. */
export interface LineLook {
  readonly scale: number;
  readonly origin: Point;
  readonly colour: string;
  readonly paper: string;
  readonly width: number;
}

/** Strokes all chords. What of a pixel is covered twice by them is covered once. */
export function drawHairlines(pixels: Pixels, chords: InkChords, look: LineLook): void {
  const inks = shades(look.colour, look.paper);
  pixels.covered.fill(0);
  const { begins, count } = chords;
  for (let i = 1; i < count; i++) if (begins[i] === 0) drawChord(pixels, inks, chords.places, i, look);
}

/** The chord that ends at a place: columns where it runs more across, rows where it runs more up; in each it covers a pixel or two. */
function drawChord(
  { width, height, colours, covered }: Pixels,
  inks: Uint32Array<ArrayBuffer>,
  places: Float64Array,
  to: number,
  { scale, origin, width: wide }: LineLook,
): void {
  const fromX = origin.x + (places[2 * to - 2] ?? 0) * scale;
  const fromY = origin.y + (places[2 * to - 1] ?? 0) * scale;
  const dx = origin.x + (places[2 * to] ?? 0) * scale - fromX;
  const dy = origin.y + (places[2 * to + 1] ?? 0) * scale - fromY;
  const isAcross = Math.abs(dx) >= Math.abs(dy);
  // From `start` it goes on by `run`, and meanwhile from `side` by `rise`, which is no more.
  const start = isAcross ? fromX : fromY;
  const side = isAcross ? fromY : fromX;
  const run = isAcross ? dx : dy;
  const rise = isAcross ? dy : dx;
  const length = isAcross ? width : height;
  const breadth = isAcross ? height : width;
  const stepAlong = isAcross ? 1 : width;
  const stepAcross = isAcross ? width : 1;
  const slope = run === 0 ? 0 : rise / run;
  const half = (wide / 2) * Math.sqrt(1 + slope * slope);
  // Half a pixel more at both ends: so no joint is left open.
  const first = Math.max(0, Math.ceil((run < 0 ? start + run : start) - 1));
  const last = Math.min(length - 1, Math.floor(run < 0 ? start : start + run));
  let low = side - half + slope * (first + 0.5 - start);
  for (let i = first; i <= last; i++) {
    const high = low + 2 * half;
    for (let j = Math.floor(low); j < high; j++) {
      const share = (255 * (Math.min(j + 1, high) - Math.max(j, low))) | 0;
      const at = i * stepAlong + j * stepAcross;
      if (j >= 0 && j < breadth && share > (covered[at] ?? 0)) {
        covered[at] = share;
        colours[at] = inks[share] ?? 0;
      }
    }
    low += slope;
  }
}
