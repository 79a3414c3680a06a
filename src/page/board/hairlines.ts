// Thin lines put into pixels directly: what changes at every key has some 20,000 chords of a few dots each, and a canvas takes three times as
// long to be told of them, and to draw them, as their pixels take here.
import type { InkPen } from './ink-path.ts';
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

/** Chords in place of a curve that is drawn so large that the path leaves it a curve. */
const chordsOfCurve = 24;

/** A pen that strokes at once, and fills nothing. What of a pixel is covered twice by one pen's lines is covered once. */
export class HairlinePen implements InkPen {
  readonly #pixels: Pixels;
  readonly #scale: number;
  readonly #originX: number;
  readonly #originY: number;
  readonly #half: number;
  readonly #shades: Uint32Array<ArrayBuffer>;
  #x = 0;
  #y = 0;

  constructor(pixels: Pixels, { scale, origin, colour, paper, width }: LineLook) {
    this.#pixels = pixels;
    this.#scale = scale;
    this.#originX = origin.x;
    this.#originY = origin.y;
    this.#half = width / 2;
    this.#shades = shades(colour, paper);
    pixels.covered.fill(0);
  }

  beginPath(): void {}
  fill(): void {}
  stroke(): void {}

  moveTo(x: number, y: number): void {
    this.#x = this.#originX + x * this.#scale;
    this.#y = this.#originY + y * this.#scale;
  }

  lineTo(x: number, y: number): void {
    const [toX, toY] = [this.#originX + x * this.#scale, this.#originY + y * this.#scale];
    const [dx, dy] = [toX - this.#x, toY - this.#y];
    const { width, height } = this.#pixels;
    // Columns where it runs more across, rows where it runs more up: in each it covers a pixel or two.
    if (Math.abs(dx) >= Math.abs(dy)) this.#line(this.#x, this.#y, dx, dy, width, height, 1, width);
    else this.#line(this.#y, this.#x, dy, dx, height, width, width, 1);
    this.#x = toX;
    this.#y = toY;
  }

  bezierCurveTo(bx: number, by: number, cx: number, cy: number, dx: number, dy: number): void {
    const [ax, ay] = [(this.#x - this.#originX) / this.#scale, (this.#y - this.#originY) / this.#scale];
    for (let i = 1; i <= chordsOfCurve; i++) {
      const t = i / chordsOfCurve;
      const u = 1 - t;
      const [a, b, c, d] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
      this.lineTo(a * ax + b * bx + c * cx + d * dx, a * ay + b * by + c * cy + d * dy);
    }
  }

  /** Of a line that goes on by `run` from `start` and by `rise`, no more, from `side`: steps are pixels along it, and across each what it covers. */
  #line(
    start: number,
    side: number,
    run: number,
    rise: number,
    length: number,
    breadth: number,
    stepAlong: number,
    stepAcross: number,
  ): void {
    const { colours, covered } = this.#pixels;
    const shades = this.#shades;
    const slope = run === 0 ? 0 : rise / run;
    const half = this.#half * Math.sqrt(1 + slope * slope);
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
          colours[at] = shades[share] ?? 0;
        }
      }
      low += slope;
    }
  }
}
