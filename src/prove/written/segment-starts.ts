// Finds segments by where they begin: a table of small squares, so that one look tells whether a line has its like.
import type { Segment } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';

/** Side of a square, mm: a few times what likes may be apart, so that few looks go into a second one. */
const side = 0.1;

const apart = (a: Point, b: Point): number => Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y));

/** Largest distance between matching points of two segments, mm; Infinity where they are of two kinds. */
export function unlike(a: Segment, b: Segment): number {
  const ends = Math.max(apart(a.from, b.from), apart(a.to, b.to));
  if (a.kind === 'cubic' && b.kind === 'cubic') return Math.max(ends, apart(a.c1, b.c1), apart(a.c2, b.c2));
  return a.kind === b.kind ? ends : Infinity;
}

export class SegmentStarts {
  readonly #segments: readonly Segment[];
  readonly #size: number;
  /** First segment of a square, and for each segment the next of its square; -1 ends a chain. */
  readonly #first: Int32Array;
  readonly #next: Int32Array;

  constructor(segments: readonly Segment[]) {
    this.#segments = segments;
    this.#size = 2 ** Math.ceil(Math.log2(2 * segments.length + 2));
    this.#first = new Int32Array(this.#size).fill(-1);
    this.#next = new Int32Array(segments.length).fill(-1);
    segments.forEach(({ from }, i) => {
      const slot = this.#slot(Math.floor(from.x / side), Math.floor(from.y / side));
      this.#next[i] = this.#first[slot] ?? -1;
      this.#first[slot] = i;
    });
  }

  #slot(column: number, row: number): number {
    return (Math.imul(column, 73_856_093) ^ Math.imul(row, 19_349_663)) & (this.#size - 1);
  }

  /** The least that any segment which begins within `reach` (less than a square) of another's beginning differs from that one, mm. */
  nearest(segment: Segment, reach: number): number {
    const { x, y } = segment.from;
    const [left, right] = [Math.floor((x - reach) / side), Math.floor((x + reach) / side)];
    const [low, high] = [Math.floor((y - reach) / side), Math.floor((y + reach) / side)];
    let best = Infinity;
    for (let column = left; column <= right; column++)
      for (let row = low; row <= high; row++)
        for (let i = this.#first[this.#slot(column, row)] ?? -1; i >= 0; i = this.#next[i] ?? -1) {
          const other = this.#segments[i];
          if (other) best = Math.min(best, unlike(segment, other));
        }
    return best;
  }
}
