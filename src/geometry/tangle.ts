// How often lines cross each other, and how many lie side by side, counted until it is too many to go on.
import { BoxIndex } from './box-index.ts';
import type { Contour } from './contour.ts';

/** Fewer steps than this can't cross often enough to matter. */
const fewSteps = 400;

/** Pairs of steps looked at for each crossing that is allowed. */
const looks = 40;

/**
 * More lines than this side by side no vessel has room for: on one half a metre around they are a tenth of a mm apart. To merge and
 * clip them takes as long as there are pairs of them.
 */
const mostAbreast = 6000;

/** More crossings than this, far more than letters that overlap have, are a scribble that no blade follows. */
export const mostCrossings = 100_000;

/**
 * Whether the segments of these contours, each taken straight, cross each other more than `most` times. Also where they
 * lie over each other, or side by side, so thickly that counting would take as long as the work it is to spare.
 */
export function isTangled(contours: readonly Contour[], most: number): boolean {
  const steps = new Steps(contours);
  if (steps.count < fewSteps) return false;
  if (steps.abreast() > mostAbreast) return true;
  const index = new BoxIndex(steps.count, (add) => {
    for (let i = 0; i < steps.count; i++) add(...steps.box(i));
  });
  let crossings = 0;
  let looked = 0;
  for (let i = 0; i < steps.count; i++)
    for (const other of index.meeting(...steps.box(i))) {
      if (other <= i) continue;
      looked += 1;
      if (steps.doCross(i, other)) crossings += 1;
      if (crossings > most || looked > most * looks) return true;
    }
  return false;
}

/** Straight steps in columns: of a whole sheet there are more than a hundred thousand. */
class Steps {
  readonly count: number;
  readonly #ends: readonly number[];

  constructor(contours: readonly Contour[]) {
    const ends: number[] = [];
    for (const { segments } of contours)
      for (const { from, to } of segments) ends.push(from.x, from.y, to.x, to.y);
    this.#ends = ends;
    this.count = ends.length / 4;
  }

  /** How many go side by side at the most, across or up. */
  abreast(): number {
    if (this.count <= mostAbreast) return 0;
    return Math.max(this.#meeting(0), this.#meeting(1));
  }

  /** How many a line straight up (`axis` 0) or across (1) meets at the most, but those that lie in it. */
  #meeting(axis: 0 | 1): number {
    const [from, to] = [new Float64Array(this.count), new Float64Array(this.count)];
    for (let i = 0; i < this.count; i++) {
      const [a, b] = [this.#end(i, axis), this.#end(i, axis === 0 ? 2 : 3)];
      from[i] = Math.min(a, b);
      to[i] = Math.max(a, b);
    }
    from.sort();
    to.sort();
    let [most, ended] = [0, 0];
    for (let i = 0; i < this.count; i++) {
      while ((to[ended] ?? Infinity) <= (from[i] ?? 0)) ended++;
      most = Math.max(most, i + 1 - ended);
    }
    return most;
  }

  box(i: number): readonly [number, number, number, number] {
    const [x0, y0, x1, y1] = [this.#end(i, 0), this.#end(i, 1), this.#end(i, 2), this.#end(i, 3)];
    return [Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1)];
  }

  doCross(a: number, b: number): boolean {
    return this.#areApart(a, b) && this.#areApart(b, a);
  }

  /** Whether the ends of one lie on either side of the other. */
  #areApart(line: number, ends: number): boolean {
    return this.#side(line, ends, 0) * this.#side(line, ends, 2) < 0;
  }

  /** On which side of a line an end of a step lies: `end` is 0 for where it begins, 2 for where it goes. */
  #side(line: number, step: number, end: 0 | 2): number {
    const [x, y] = [this.#end(line, 0), this.#end(line, 1)];
    const [px, py] = [this.#end(step, end), this.#end(step, end === 0 ? 1 : 3)];
    return (this.#end(line, 2) - x) * (py - y) - (this.#end(line, 3) - y) * (px - x);
  }

  #end(i: number, which: 0 | 1 | 2 | 3): number {
    return this.#ends[4 * i + which] ?? 0;
  }
}
