// Path data to curves, the proof's own way: what wrote the file must not be what reads it back.
import type { Affine } from '../../geometry/affine.ts';
import type { Contour, Segment } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';

const code = (letter: string): number => letter.charCodeAt(0);
const [nought, nine, dot, minus, plus, comma] = [
  code('0'),
  code('9'),
  code('.'),
  code('-'),
  code('+'),
  code(','),
];
const [smallE, bigE] = [code('e'), code('E')];

/** Most decimals read digit by digit: up to here a power of ten and the digits before it are exact. */
const exactDigits = 15;

/** Walks the characters of path data (SVG 2, 9.3.9, the grammar for path data). */
class Scanner {
  readonly #text: string;
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  /** The next command letter; undefined where a number follows, or at the end. */
  letter(): string | undefined {
    this.#skip();
    const c = this.#text[this.#at];
    if (c === undefined || !/[a-zA-Z]/.test(c)) return undefined;
    this.#at += 1;
    return c;
  }

  get isDone(): boolean {
    this.#skip();
    return this.#at >= this.#text.length;
  }

  /** @throws Error where no number stands. */
  number(): number {
    this.#skip();
    const start = this.#at;
    const first = this.#text.charCodeAt(start);
    if (first === minus || first === plus) this.#at += 1;
    let digits = 0;
    let value = 0;
    let decimals = -1;
    for (; ; this.#at++) {
      const c = this.#text.charCodeAt(this.#at);
      if (c >= nought && c <= nine) {
        value = value * 10 + (c - nought);
        digits += 1;
        if (decimals >= 0) decimals += 1;
      } else if (c === dot && decimals < 0) decimals = 0;
      else break;
    }
    if (digits === 0) throw new Error(`no number at character ${start + 1} of a path`);
    const c = this.#text.charCodeAt(this.#at);
    if (digits > exactDigits || c === smallE || c === bigE) return this.#exponent(start);
    const size = decimals > 0 ? value / 10 ** decimals : value;
    return first === minus ? -size : size;
  }

  #exponent(start: number): number {
    const match = /^[-+]?[\d.]+(?:[eE][-+]?\d+)?/.exec(this.#text.slice(start, start + 64));
    if (!match) throw new Error(`no number at character ${start + 1} of a path`);
    this.#at = start + match[0].length;
    return Number(match[0]);
  }

  #skip(): void {
    for (; ; this.#at++) {
      const c = this.#text.charCodeAt(this.#at);
      if (!(c <= 32 || c === comma)) return;
    }
  }
}

/** Puts the pieces of a path together, moved by a map as they come. */
class PathBuilder {
  readonly contours: Contour[] = [];
  readonly #map: Affine;
  #segments: Segment[] = [];
  #start: Point = { x: 0, y: 0 };
  #at: Point = { x: 0, y: 0 };
  /** The last control point, for the commands that mirror it, and of which kind it was. */
  #control: { readonly point: Point; readonly kind: 'cubic' | 'quadratic' } | undefined;

  constructor(map: Affine) {
    this.#map = map;
  }

  get at(): Point {
    return this.#at;
  }

  move(to: Point): void {
    this.finish(false);
    this.#start = to;
    this.#at = to;
  }

  line(to: Point): void {
    this.#segments.push({ kind: 'line', from: this.#from(), to: this.#moved(to) });
    this.#at = to;
    this.#control = undefined;
  }

  cubic(c1: Point, c2: Point, to: Point): void {
    this.#segments.push({
      kind: 'cubic',
      from: this.#from(),
      c1: this.#moved(c1),
      c2: this.#moved(c2),
      to: this.#moved(to),
    });
    this.#at = to;
    this.#control = { point: c2, kind: 'cubic' };
  }

  quadratic(control: Point, to: Point): void {
    const { x, y } = this.#at;
    this.cubic(
      { x: (x + 2 * control.x) / 3, y: (y + 2 * control.y) / 3 },
      { x: (to.x + 2 * control.x) / 3, y: (to.y + 2 * control.y) / 3 },
      to,
    );
    this.#control = { point: control, kind: 'quadratic' };
  }

  /** The first control point of a curve that goes on smoothly. */
  mirrored(kind: 'cubic' | 'quadratic'): Point {
    const { x, y } = this.#at;
    return this.#control?.kind === kind
      ? { x: 2 * x - this.#control.point.x, y: 2 * y - this.#control.point.y }
      : this.#at;
  }

  finish(closed: boolean): void {
    if (closed && (this.#at.x !== this.#start.x || this.#at.y !== this.#start.y)) this.line(this.#start);
    if (this.#segments.length > 0) this.contours.push({ closed, segments: this.#segments });
    this.#segments = [];
    this.#at = this.#start;
    this.#control = undefined;
  }

  #from(): Point {
    return this.#segments.at(-1)?.to ?? this.#moved(this.#at);
  }

  #moved({ x, y }: Point): Point {
    const m = this.#map;
    return { x: m.a * x + m.c * y + m.e, y: m.b * x + m.d * y + m.f };
  }
}

/**
 * The curves of path data, each point moved by `map`. Every command but elliptic arcs, which no delivered file has.
 * @throws Error in words where it can't be read to its end.
 */
export function readPath(data: string, map: Affine): readonly Contour[] {
  const scanner = new Scanner(data);
  const path = new PathBuilder(map);
  let command = scanner.letter();
  if (command !== undefined && command !== 'M' && command !== 'm')
    throw new Error('a path that does not begin with a move');
  while (command !== undefined) {
    command = follow(command, scanner, path);
    command = scanner.letter() ?? (scanner.isDone ? undefined : command);
  }
  path.finish(false);
  if (!scanner.isDone) throw new Error('a path with something that is no path data');
  return path.contours;
}

/** Stands for no command at all: after a closing a letter must come. */
const afterClosing = '';

/** Do one command; gives the one that holds when numbers follow without a letter. */
function follow(command: string, scanner: Scanner, path: PathBuilder): string {
  const isRelative = command >= 'a';
  const origin = isRelative ? path.at : { x: 0, y: 0 };
  const point = (): Point => ({ x: origin.x + scanner.number(), y: origin.y + scanner.number() });
  switch (command.toUpperCase()) {
    case 'M':
      path.move(point());
      return isRelative ? 'l' : 'L';
    case 'L':
      path.line(point());
      return command;
    case 'H':
      path.line({ x: origin.x + scanner.number(), y: path.at.y });
      return command;
    case 'V':
      path.line({ x: path.at.x, y: origin.y + scanner.number() });
      return command;
    case 'C':
      path.cubic(point(), point(), point());
      return command;
    case 'S':
      path.cubic(path.mirrored('cubic'), point(), point());
      return command;
    case 'Q':
      path.quadratic(point(), point());
      return command;
    case 'T':
      path.quadratic(path.mirrored('quadratic'), point());
      return command;
    case 'Z':
      path.finish(true);
      return afterClosing;
    case afterClosing:
      throw new Error('a number straight after a path was closed');
    default:
      throw new Error(`the path command "${command}", which is not read here`);
  }
}
