// Path data as most programs write it, scanned without a library: any command but arcs, plain numbers, no slips.

/** Path data taken apart: the commands, one for each point, and all their numbers in a row. */
export interface PlainPath {
  readonly commands: readonly string[];
  readonly numbers: readonly number[];
}

/** Numbers that a command takes each time it is drawn. */
const takes: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, Z: 0 };

const [tab, newLine, carriage, space, comma, plus, minus, dot] = [9, 10, 13, 32, 44, 43, 45, 46];
const [nought, nine, upperE, lowerE] = [48, 57, 69, 101];

const isDigit = (code: number): boolean => code >= nought && code <= nine;

class Scanner {
  readonly #data: string;
  #at = 0;

  constructor(data: string) {
    this.#data = data;
  }

  get isDone(): boolean {
    return this.#at >= this.#data.length;
  }

  skipSpaces(): void {
    for (;;) {
      const code = this.#data.charCodeAt(this.#at);
      if (code !== space && code !== newLine && code !== carriage && code !== tab) return;
      this.#at++;
    }
  }

  /** Whether a comma stands here, which is then passed with the spaces after it. */
  skipComma(): boolean {
    if (this.#data.charCodeAt(this.#at) !== comma) return false;
    this.#at++;
    this.skipSpaces();
    return true;
  }

  /** The character here, passed. */
  letter(): string {
    return this.#data.charAt(this.#at++);
  }

  /** Whether a number begins here. */
  get isNumber(): boolean {
    const code = this.#data.charCodeAt(this.#at);
    return isDigit(code) || code === minus || code === dot || code === plus;
  }

  /** The number here, passed; NaN where it is none. */
  number(): number {
    const data = this.#data;
    const start = this.#at;
    let at = start;
    let code = data.charCodeAt(at);
    const isNegative = code === minus;
    if (isNegative || code === plus) code = data.charCodeAt(++at);
    let digits = 0;
    let mantissa = 0;
    let decimals = 0;
    for (; isDigit(code); code = data.charCodeAt(++at), digits++) mantissa = 10 * mantissa + code - nought;
    if (code === dot) {
      code = data.charCodeAt(++at);
      for (; isDigit(code); code = data.charCodeAt(++at), decimals++)
        mantissa = 10 * mantissa + code - nought;
      if (decimals === 0) return Number.NaN;
    }
    digits += decimals;
    if (digits === 0 || code === lowerE || code === upperE) return Number.NaN;
    this.#at = at;
    if (digits > mostExact) return Number(data.slice(start, at));
    const value = mantissa / (powers[decimals] ?? 1);
    return isNegative ? 0 - value : value;
  }
}

/**
 * Up to so many digits are a whole number that is exact, and so is the power of ten that parts it: one division is then the
 * number as `Number` reads it. Source: W. D. Clinger, How to Read Floating Point Numbers Accurately, 1990 (from memory).
 */
const mostExact = 15;
const powers = Array.from({ length: mostExact + 1 }, (_, i) => 10 ** i);

/**
 * The commands of path data that is whole and has no arcs or exponents; undefined of any other, which a full reader is to
 * look at. `most`: the largest number that is taken.
 * Source: the grammar of SVG 2, 9.3.9 (from memory), of which this is a part.
 */
export function plainPath(data: string, most: number): PlainPath | undefined {
  const commands: string[] = [];
  const numbers: number[] = [];
  const scanner = new Scanner(data);
  scanner.skipSpaces();
  while (!scanner.isDone) {
    const letter = scanner.letter();
    const count = takes[letter.toUpperCase()];
    if (count === undefined || (commands.length === 0 && letter !== 'M' && letter !== 'm')) return undefined;
    scanner.skipSpaces();
    let command = letter;
    do {
      commands.push(command);
      for (let i = 0; i < count; i++) {
        const value = scanner.number();
        if (!(Math.abs(value) <= most)) return undefined;
        numbers.push(value);
        scanner.skipSpaces();
        if (scanner.skipComma() && !scanner.isNumber) return undefined;
      }
      // More points after the first of a move are lines.
      if (command === 'M') command = 'L';
      else if (command === 'm') command = 'l';
    } while (count > 0 && scanner.isNumber);
  }
  return { commands, numbers };
}
