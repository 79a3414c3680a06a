// How like a picture is to itself moved by every whole step: one figure a step, worked out for all of them at once.
import { transform } from '../../geometry/fourier.ts';
import type { Planes } from './planes.ts';

type Size = Pick<Planes, 'width' | 'height'>;

/** Likeness for steps that go right, or straight down: -1 to 1; 0 where too little of the picture shows again. */
export interface Likeness {
  readonly width: number;
  readonly height: number;
  readonly at: (dx: number, dy: number) => number;
}

/** What shows less contrast than this share of the whole is blank: what rounding leaves there is like anything. */
const leastShown = 0.02;

/**
 * The correlation of what two copies show where they overlap, all channels together, normalised there.
 * Source: J. P. Lewis, Fast Normalized Cross-Correlation, Vision Interface 1995 (sums over overlaps by running totals), from memory.
 */
export function likenessOf({ width, height, planes }: Planes): Likeness {
  const room = { width: twofold(width), height: twofold(height) };
  const power = new Float64Array(room.width * room.height);
  // The mean is taken off first, so that sums stay small.
  const level = planes.map((plane) => plane.reduce((sum, value) => sum + value, 0) / plane.length);
  const centred = planes.map((plane, k) => plane.map((value) => value - (level[k] ?? 0)));
  for (let k = 0; k < centred.length; k += 2)
    addPower(power, { width, height, room }, centred[k], centred[k + 1]);
  const grid = { ...room, re: power, im: new Float64Array(power.length) };
  transform(grid, 'inverse');
  const contrast =
    centred.reduce((sum, plane) => sum + plane.reduce((all, value) => all + value * value, 0), 0) /
    (width * height);
  const sums = centred.map((plane) => new Totals(plane, width, height, false));
  const squares = centred.map((plane) => new Totals(plane, width, height, true));
  const at = (dx: number, dy: number): number => {
    const [w, h] = [width - Math.abs(dx), height - Math.abs(dy)];
    if (w <= 0 || h <= 0) return 0;
    const count = w * h;
    const [x, y] = [Math.max(0, -dx), Math.max(0, -dy)];
    const [u, v] = [(dx + room.width) % room.width, (dy + room.height) % room.height];
    let product = grid.re[v * room.width + u] ?? 0;
    let [own, other] = [0, 0];
    sums.forEach((sum, k) => {
      const [p, q] = [sum.over(x, y, w, h), sum.over(x + dx, y + dy, w, h)];
      product -= (p * q) / count;
      own += (squares[k]?.over(x, y, w, h) ?? 0) - (p * p) / count;
      other += (squares[k]?.over(x + dx, y + dy, w, h) ?? 0) - (q * q) / count;
    });
    return Math.min(own, other) <= leastShown * count * contrast ? 0 : product / Math.sqrt(own * other);
  };
  return { width, height, at };
}

/** The power of two in which a length has room twice: there a picture meets no copy of itself. */
const twofold = (length: number): number => 2 ** Math.ceil(Math.log2(2 * length));

/** Two channels at once, as the real and the imaginary part: the real part of their correlation is the sum of both. */
function addPower(
  power: Float64Array,
  { width, height, room }: Size & { readonly room: Size },
  one: Float64Array | undefined,
  other: Float64Array | undefined,
): void {
  const [re, im] = [new Float64Array(power.length), new Float64Array(power.length)];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      re[y * room.width + x] = one?.[y * width + x] ?? 0;
      im[y * room.width + x] = other?.[y * width + x] ?? 0;
    }
  transform({ ...room, re, im }, 'forward');
  for (let i = 0; i < power.length; i++) power[i] = (power[i] ?? 0) + (re[i] ?? 0) ** 2 + (im[i] ?? 0) ** 2;
}

/** Sums over rectangles of a channel, or of its squares. */
class Totals {
  readonly #totals: Float64Array;
  readonly #side: number;

  constructor(plane: Float64Array, width: number, height: number, isSquared: boolean) {
    this.#side = width + 1;
    this.#totals = new Float64Array((width + 1) * (height + 1));
    for (let y = 0; y < height; y++) {
      let row = 0;
      for (let x = 0; x < width; x++) {
        const value = plane[y * width + x] ?? 0;
        row += isSquared ? value * value : value;
        this.#totals[(y + 1) * this.#side + x + 1] = (this.#totals[y * this.#side + x + 1] ?? 0) + row;
      }
    }
  }

  over(x: number, y: number, width: number, height: number): number {
    const [top, bottom] = [y * this.#side + x, (y + height) * this.#side + x];
    const [upper, lower] = [this.#between(top, width), this.#between(bottom, width)];
    return lower - upper;
  }

  #between(at: number, width: number): number {
    return (this.#totals[at + width] ?? 0) - (this.#totals[at] ?? 0);
  }
}
