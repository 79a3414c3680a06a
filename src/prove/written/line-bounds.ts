// How many lines a delivered file may hold: what is past that was not written here, and measuring it would take minutes and gigabytes.

/** Lines in one file: a third of the curves that one wrap may have. */
const mostLines = 500_000;

/** Lines that begin on one square of a user unit: the finest art that is read, laid a tenth as large, begins fewer than half as many. */
const mostOnSquare = 20_000;

/** A number of seven digits before its point, or more by its exponent: a kilometre and more, along which a wall is gone around without end. */
const farAway = /(?<![.\d])0*[1-9]\d{6}|e\+?0*[1-9]/i;

/** Columns of squares: far more than a sheet is wide. */
const columns = 2 ** 24;

/** Counts lines by where their path data says that they begin. */
export class LineBounds {
  readonly #onSquare = new Map<number, number>();
  #lines = 0;

  /** What is past a bound, with the paths seen before; undefined where nothing is. */
  faultOf(data: string): string | undefined {
    if (farAway.test(data)) return 'a place a kilometre away or more';
    for (const [, letter, x, y] of data.matchAll(/([Mm])\s*([-+.\de]+)[\s,]*([-+.\de]+)/g)) {
      this.#lines += 1;
      if (this.#lines > mostLines) return `more than ${mostLines} lines`;
      // Where one begins that is told from the last is known to the reader of paths alone.
      if (letter === 'm') continue;
      const square = Math.floor(Number(y)) * columns + Math.floor(Number(x));
      const count = (this.#onSquare.get(square) ?? 0) + 1;
      this.#onSquare.set(square, count);
      if (count > mostOnSquare) return `more than ${mostOnSquare} lines that begin on one square millimetre`;
    }
    return undefined;
  }
}
