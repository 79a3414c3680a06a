// Which chords lie near a place: squares of a grid, each with the chords whose boxes meet it.
import type { Box } from '../../geometry/box.ts';

/** Straight lines by their ends, in columns. */
export interface Chords {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly toX: Float64Array;
  readonly toY: Float64Array;
}

/** Squares along the longer side: finer ones would only cost memory. */
const mostSquares = 2000;

/** An index of chords by squares. Flat columns: it is asked once a chord, of which there may be a million. */
export class ChordSquares {
  readonly #minX: number;
  readonly #minY: number;
  readonly #side: number;
  readonly #columns: number;
  readonly #rows: number;
  /** Where the chords of each square begin in `#chords`. */
  readonly #first: Int32Array;
  readonly #chords: Int32Array;
  /** The last question in which a chord was found, so that none is found twice. */
  readonly #asked: Int32Array;
  #question = 0;

  constructor(chords: Chords, side: number) {
    const { count } = chords;
    const { minX, minY, maxX, maxY } = boxOf(chords);
    const reach = count === 0 ? 1 : Math.max(maxX - minX, maxY - minY, side);
    this.#side = Math.max(side, reach / mostSquares);
    this.#minX = count === 0 ? 0 : minX;
    this.#minY = count === 0 ? 0 : minY;
    this.#columns = count === 0 ? 1 : Math.floor((maxX - minX) / this.#side) + 1;
    this.#rows = count === 0 ? 1 : Math.floor((maxY - minY) / this.#side) + 1;
    this.#asked = new Int32Array(count);
    const spans = this.#spans(chords);
    const columns = this.#columns;
    const first = new Int32Array(columns * this.#rows + 1);
    for (let i = 0; i < spans.length; i += 4) {
      const [left, right, bottom] = [spans[i] ?? 0, spans[i + 1] ?? 0, spans[i + 3] ?? 0];
      for (let row = spans[i + 2] ?? 0; row <= bottom; row++)
        for (let at = row * columns + left + 1; at <= row * columns + right + 1; at++)
          first[at] = (first[at] ?? 0) + 1;
    }
    for (let i = 1; i < first.length; i++) first[i] = (first[i] ?? 0) + (first[i - 1] ?? 0);
    const all = new Int32Array(first[first.length - 1] ?? 0);
    const filled = first.slice();
    for (let i = 0; i < spans.length; i += 4) {
      const [left, right, bottom] = [spans[i] ?? 0, spans[i + 1] ?? 0, spans[i + 3] ?? 0];
      for (let row = spans[i + 2] ?? 0; row <= bottom; row++)
        for (let at = row * columns + left; at <= row * columns + right; at++) {
          const place = filled[at] ?? 0;
          all[place] = i / 4;
          filled[at] = place + 1;
        }
    }
    this.#first = first;
    this.#chords = all;
  }

  #column(x: number): number {
    return Math.max(0, Math.min(this.#columns - 1, Math.floor((x - this.#minX) / this.#side)));
  }

  #row(y: number): number {
    return Math.max(0, Math.min(this.#rows - 1, Math.floor((y - this.#minY) / this.#side)));
  }

  /** Of each chord its first column, its last, its first row and its last. */
  #spans({ count, x, y, toX, toY }: Chords): Int32Array {
    const spans = new Int32Array(4 * count);
    const [minX, minY, side] = [this.#minX, this.#minY, this.#side];
    const [lastColumn, lastRow] = [this.#columns - 1, this.#rows - 1];
    for (let k = 0; k < count; k++) {
      const [x0, y0, x1, y1] = [x[k] ?? 0, y[k] ?? 0, toX[k] ?? 0, toY[k] ?? 0];
      spans[4 * k] = Math.max(0, Math.min(lastColumn, Math.floor((Math.min(x0, x1) - minX) / side)));
      spans[4 * k + 1] = Math.max(0, Math.min(lastColumn, Math.floor((Math.max(x0, x1) - minX) / side)));
      spans[4 * k + 2] = Math.max(0, Math.min(lastRow, Math.floor((Math.min(y0, y1) - minY) / side)));
      spans[4 * k + 3] = Math.max(0, Math.min(lastRow, Math.floor((Math.max(y0, y1) - minY) / side)));
    }
    return spans;
  }

  /** Put the chords that may meet a box into `found`, each once; gives how many there are. */
  near(minX: number, minY: number, maxX: number, maxY: number, found: number[]): number {
    this.#question += 1;
    let count = 0;
    const left = this.#column(minX);
    const right = this.#column(maxX);
    for (let row = this.#row(minY); row <= this.#row(maxY); row++) {
      const line = row * this.#columns;
      const end = this.#first[line + right + 1] ?? 0;
      for (let i = this.#first[line + left] ?? 0; i < end; i++) {
        const k = this.#chords[i] ?? 0;
        if (this.#asked[k] === this.#question) continue;
        this.#asked[k] = this.#question;
        found[count] = k;
        count += 1;
      }
    }
    return count;
  }
}

function boxOf({ count, x, y, toX, toY }: Chords): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let k = 0; k < count; k++) {
    minX = Math.min(minX, x[k] ?? 0, toX[k] ?? 0);
    minY = Math.min(minY, y[k] ?? 0, toY[k] ?? 0);
    maxX = Math.max(maxX, x[k] ?? 0, toX[k] ?? 0);
    maxY = Math.max(maxY, y[k] ?? 0, toY[k] ?? 0);
  }
  return { minX, minY, maxX, maxY };
}
