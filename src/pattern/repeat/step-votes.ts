// Votes for steps: those nearer to one another than a tolerance count as one. In columns, for there may be eighty thousand.
import { norm, type Point } from '../../geometry/point.ts';

export class StepVotes {
  /** Steps fall into cells this wide, mm. */
  readonly #cell: number;
  /** The number of each cell's step. */
  readonly #known = new Map<number, number>();
  readonly #counts: number[] = [];
  readonly #x: number[] = [];
  readonly #y: number[] = [];
  #cast = 0;

  constructor(cell: number) {
    this.#cell = cell;
  }

  /** How many votes there were. */
  get cast(): number {
    return this.#cast;
  }

  add(x: number, y: number): void {
    this.#cast++;
    const cell = cellNumber(Math.round(x / this.#cell), Math.round(y / this.#cell));
    const known = this.#known.get(cell);
    if (known === undefined) {
      this.#known.set(cell, this.#counts.length);
      this.#counts.push(1);
      this.#x.push(x);
      this.#y.push(y);
      return;
    }
    this.#counts[known] = (this.#counts[known] ?? 0) + 1;
    this.#x[known] = (this.#x[known] ?? 0) + x;
    this.#y[known] = (this.#y[known] ?? 0) + y;
  }

  /** So many steps with the most votes, and the shortest that have more than one: each the mean of its votes. */
  chosen(popular: number, short: number): readonly Point[] {
    const most = this.#withVotes(this.#leastOf(popular)).sort((p, q) => q.count - p.count);
    const shortest = this.#withVotes(2).sort((p, q) => norm(p.x, p.y) - norm(q.x, q.y));
    const steps = new Map<number, Point>();
    for (const step of [...most.slice(0, popular), ...shortest.slice(0, short)])
      if (!steps.has(step.number)) steps.set(step.number, step);
    return [...steps.values()];
  }

  /** The fewest votes that one of so many steps with the most has. */
  #leastOf(popular: number): number {
    const having: number[] = [];
    for (const count of this.#counts) having[count] = (having[count] ?? 0) + 1;
    let seen = 0;
    for (let count = having.length - 1; count > 1; count--) {
      seen += having[count] ?? 0;
      if (seen >= popular) return count;
    }
    return 1;
  }

  #withVotes(least: number) {
    const found: {
      readonly number: number;
      readonly count: number;
      readonly x: number;
      readonly y: number;
    }[] = [];
    for (let number = 0; number < this.#counts.length; number++) {
      const count = this.#counts[number] ?? 0;
      if (count >= least)
        found.push({ number, count, x: (this.#x[number] ?? 0) / count, y: (this.#y[number] ?? 0) / count });
    }
    return found;
  }
}

/**
 * A number for a column and a row. Up to 32,767 of each it is a small whole number, which the engine finds in a map several times sooner
 * than one that it has to keep as an object; past that it is another one still.
 */
export const cellNumber = (column: number, row: number): number =>
  Math.abs(column) < smallest && Math.abs(row) < smallest
    ? column * (2 * smallest) + row
    : column * 2 ** 26 + row + 0.5;
const smallest = 2 ** 15;
