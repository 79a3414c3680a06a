// How many lines a delivered file may hold: what is past that was not written here, and measuring it would take minutes and gigabytes.

/** Lines in one file: a third of the curves that one wrap may have. */
const mostLines = 500_000;

/** Lines that begin on one square of a user unit: the finest art that is read, laid a tenth as large, begins fewer than half as many. */
const mostOnSquare = 20_000;

/** A number of seven digits before its point, or more by its exponent: a kilometre and more, along which a wall is gone around without end. */
const farAway = /(?<![.\d])0*[1-9]\d{6}|e\+?0*[1-9]/i;

/** Straight lines on one square of a user unit, in units of length, over the whole file: a line every 0.04 mm. No blade follows the half of that. */
const mostLength = 25;

/** Fewer straight lines are measured soon enough, however long they are. */
const fewLines = 5000;

/** Columns of squares: far more than a sheet is wide. */
const columns = 2 ** 24;

/** Counts lines by where their path data says that they begin. */
export class LineBounds {
  readonly #onSquare = new Map<number, number>();
  #lines = 0;
  readonly #straight = { count: 0, length: 0 };

  /** What is past a bound, with the paths seen before, in a file so large, square units; undefined where nothing is. */
  faultOf(data: string, area: number): string | undefined {
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
    addStraight(data, this.#straight);
    const { count, length } = this.#straight;
    return count > fewLines && length > mostLength * area
      ? `more than ${mostLength} mm of straight lines to each square millimetre`
      : undefined;
  }
}

/** Counts the straight lines of path data, and how long they are, as far as they are told by places: so ours are, and so is whatever is quickly made. */
function addStraight(data: string, known: { count: number; length: number }): void {
  let [lastX, lastY] = [Number.NaN, Number.NaN];
  for (const [, letter, numbers = ''] of data.matchAll(/([A-Za-df-z])([^A-Za-df-z]*)/g)) {
    const isStraight = letter === 'L';
    if (!isStraight && letter !== 'M') {
      [lastX, lastY] = [Number.NaN, Number.NaN];
      continue;
    }
    const values = numbers.match(/[-+.\de]+/g)?.map(Number) ?? [];
    for (let i = 0; i + 1 < values.length; i += 2) {
      const [x = 0, y = 0] = [values[i], values[i + 1]];
      // After the first pair of an M lines go on.
      if ((isStraight || i > 0) && Number.isFinite(lastX)) {
        known.count += 1;
        known.length += Math.hypot(x - lastX, y - lastY);
      }
      [lastX, lastY] = [x, y];
    }
  }
}
