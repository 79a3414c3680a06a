// Which chords lie near a place: squares of a grid, each with the chords whose boxes meet it.
import type { Box } from '../geometry/box.ts';

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
    const counts = new Int32Array(this.#columns * this.#rows + 1);
    this.#each(chords, (square) => {
      counts[square + 1] = (counts[square + 1] ?? 0) + 1;
    });
    for (let i = 1; i < counts.length; i++) counts[i] = (counts[i] ?? 0) + (counts[i - 1] ?? 0);
    this.#first = counts;
    this.#chords = new Int32Array(counts[counts.length - 1] ?? 0);
    const filled = counts.slice();
    this.#each(chords, (square, k) => {
      const at = filled[square] ?? 0;
      this.#chords[at] = k;
      filled[square] = at + 1;
    });
  }

  #column(x: number): number {
    return Math.max(0, Math.min(this.#columns - 1, Math.floor((x - this.#minX) / this.#side)));
  }

  #row(y: number): number {
    return Math.max(0, Math.min(this.#rows - 1, Math.floor((y - this.#minY) / this.#side)));
  }

  #each({ count, x, y, toX, toY }: Chords, put: (square: number, chord: number) => void): void {
    for (let k = 0; k < count; k++) {
      const from = x[k] ?? 0;
      const to = toX[k] ?? 0;
      const left = this.#column(Math.min(from, to));
      const right = this.#column(Math.max(from, to));
      const low = y[k] ?? 0;
      const high = toY[k] ?? 0;
      const top = this.#row(Math.min(low, high));
      const bottom = this.#row(Math.max(low, high));
      for (let row = top; row <= bottom; row++)
        for (let column = left; column <= right; column++) put(row * this.#columns + column, k);
    }
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
