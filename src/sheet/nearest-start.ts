// Finds the nearest of places that come and go: squares of a grid, looked at ring by ring.
import { boxOfPoints } from '../geometry/box.ts';
import type { Point } from '../geometry/point.ts';

/** Places a square holds about, if they lie evenly. */
const perSquare = 2;

export class NearestStart {
  readonly #points: readonly Point[];
  readonly #side: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #left: number;
  readonly #top: number;
  readonly #squares: number[][];
  #count = 0;

  /** The places, none of them offered yet. */
  constructor(points: readonly Point[]) {
    this.#points = points;
    const { minX, minY, maxX, maxY } = boxOfPoints(points);
    const [left, top, right, bottom] = [
      Math.min(0, minX),
      Math.min(0, minY),
      Math.max(1, maxX),
      Math.max(1, maxY),
    ];
    this.#left = left;
    this.#top = top;
    const area = (right - left) * (bottom - top);
    this.#side = Math.sqrt((area * perSquare) / Math.max(1, points.length));
    this.#columns = Math.floor((right - left) / this.#side) + 1;
    this.#rows = Math.floor((bottom - top) / this.#side) + 1;
    this.#squares = Array.from({ length: this.#columns * this.#rows }, () => []);
  }

  #column = (x: number): number =>
    Math.max(0, Math.min(this.#columns - 1, Math.floor((x - this.#left) / this.#side)));

  #row = (y: number): number =>
    Math.max(0, Math.min(this.#rows - 1, Math.floor((y - this.#top) / this.#side)));

  offer(index: number): void {
    const p = this.#points[index];
    if (!p) return;
    this.#squares[this.#row(p.y) * this.#columns + this.#column(p.x)]?.push(index);
    this.#count++;
  }

  /** Take the offered place nearest to a point; of places equally near the first by number. Undefined where none is left. */
  take({ x, y }: Point): number | undefined {
    if (this.#count === 0) return undefined;
    const [column, row] = [this.#column(x), this.#row(y)];
    let best: { readonly index: number; readonly away: number; readonly square: number[] } | undefined;
    const most = Math.max(this.#columns, this.#rows);
    for (let ring = 0; ring <= most; ring++) {
      // Nothing in this ring or past it can be nearer than the inside of the ring before.
      if (best && best.away < (ring - 1) * this.#side) break;
      for (const square of this.#ring(column, row, ring))
        for (const index of square) {
          const p = this.#points[index];
          if (!p) continue;
          const away = Math.hypot(p.x - x, p.y - y);
          if (!best || away < best.away || (away === best.away && index < best.index))
            best = { index, away, square };
        }
    }
    if (!best) return undefined;
    best.square.splice(best.square.indexOf(best.index), 1);
    this.#count--;
    return best.index;
  }

  *#ring(column: number, row: number, ring: number): Generator<number[]> {
    for (let r = row - ring; r <= row + ring; r++) {
      if (r < 0 || r >= this.#rows) continue;
      const isEdge = r === row - ring || r === row + ring;
      for (let c = column - ring; c <= column + ring; c += isEdge || ring === 0 ? 1 : 2 * ring) {
        const square = c < 0 || c >= this.#columns ? undefined : this.#squares[r * this.#columns + c];
        if (square) yield square;
      }
    }
  }
}
