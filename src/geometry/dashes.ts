// A line cut into dashes along its length.
import { Ruler } from './arc-length.ts';
import { type Contour, line, type Segment } from './contour.ts';
import { add, type Point, scale, unit } from './point.ts';
import { directionAt, partOf, pointAt } from './segment.ts';

/** Dash and gap by turns, an even number of them, none below zero, their sum above it; the line begins `offset` into them. */
export interface Dashes {
  readonly lengths: readonly number[];
  readonly offset: number;
}

/** A dash of no length is a stub of this share of the pen's width, which keeps the direction its caps need. */
const stub = 1e-6;

/**
 * The dashes of a contour as open contours. On a closed contour a dash that runs over its start is one dash; one that
 * covers it all begins and ends there, as renderers have it. Source: SVG 2, 13.5.6 'stroke-dasharray'.
 */
export function dashed(contour: Contour, dashes: Dashes, penWidth: number): Contour[] {
  const cutter = new DashCutter(dashes, stub * penWidth);
  const startsOn = cutter.isOn;
  for (const s of contour.segments) cutter.run(s);
  const pieces = cutter.pieces.filter((piece) => piece.length > 0);
  const [first, last] = [pieces[0], pieces.at(-1)];
  const goesRound =
    contour.closed && startsOn && cutter.isOn && first !== undefined && last !== undefined && first !== last;
  const open = goesRound ? [...pieces.slice(1, -1), [...last, ...first]] : pieces;
  return open.map((segments) => ({ closed: false, segments }));
}

/**
 * About how many dashes a length is cut into; one that lies over the next ones by its `caps`, so wide together, counts as often
 * as it lies over them: all of them are united.
 */
export function dashCount(length: number, { lengths }: Dashes, caps: number): number {
  const step = (2 * lengths.reduce((sum, part) => sum + part, 0)) / lengths.length;
  return (length / step) * Math.max(1, caps / step);
}

class DashCutter {
  readonly pieces: Segment[][] = [];
  readonly #lengths: readonly number[];
  readonly #stub: number;
  #index = 0;
  #left: number;

  constructor({ lengths, offset }: Dashes, stubLength: number) {
    this.#lengths = lengths;
    this.#stub = stubLength;
    const total = lengths.reduce((sum, part) => sum + part, 0);
    let into = offset - total * Math.floor(offset / total);
    while (into > 0 && into >= this.#part()) {
      into -= this.#part();
      this.#index = (this.#index + 1) % lengths.length;
    }
    this.#left = this.#part() - into;
    if (this.isOn) this.pieces.push([]);
  }

  get isOn(): boolean {
    return this.#index % 2 === 0;
  }

  #part(): number {
    return this.#lengths[this.#index] ?? 0;
  }

  run(s: Segment): void {
    const ruler = new Ruler(s);
    let [at, t] = [0, 0];
    while (ruler.length - at > this.#left) {
      at += this.#left;
      const next = ruler.parameterAt(at);
      this.#draw(s, t, next);
      t = next;
      this.#turn(pointAt(s, t), directionAt(s, t));
    }
    this.#draw(s, t, 1);
    this.#left -= ruler.length - at;
  }

  #draw(s: Segment, t0: number, t1: number): void {
    if (this.isOn && t1 > t0) this.pieces.at(-1)?.push(partOf(s, t0, t1));
  }

  #turn(at: Point, way: Point): void {
    this.#index = (this.#index + 1) % this.#lengths.length;
    this.#left = this.#part();
    if (!this.isOn) return;
    const isDot = this.#left === 0 && (way.x !== 0 || way.y !== 0);
    this.pieces.push(isDot ? [line(at, add(at, scale(unit(way), this.#stub)))] : []);
  }
}
