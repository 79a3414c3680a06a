// What share of each cell of a grid film covers: exactly, so that a line pays the same for a bar wherever in a cell it lies.
import type { Point } from '../../geometry/point.ts';

/** An outline's corners: x in columns and y in rows of the grid. */
export type CellOutline = readonly Point[];

/**
 * Film on a grid, one shape after another. Edges leave, in each row they pass, how much of it lies to their right, cell by
 * cell, as its change from the cell before; the running sum along a row is what is covered.
 */
export class FilmCover {
  readonly #changes: Float64Array;
  readonly #columns: number;
  readonly #rows: number;

  constructor(columns: number, rows: number) {
    [this.#columns, this.#rows] = [columns, rows];
    this.#changes = new Float64Array((columns + 1) * rows);
  }

  /** Add a shape by its outlines, its holes among them, which wind the other way: what is on the grid, which begins at a column. */
  add(outlines: readonly CellOutline[], first = 0): void {
    const way = outlines.reduce((sum, outline) => sum + area(outline), 0) < 0 ? -1 : 1;
    for (const outline of outlines)
      outline.forEach((p, i) => {
        this.#addEdge(p, outline[(i + 1) % outline.length] ?? p, first, way);
      });
  }

  #addEdge(p: Point, q: Point, first: number, way: number): void {
    const [low, high] = p.y < q.y ? [p, q] : [q, p];
    const sign = p.y < q.y ? -way : way;
    const xAt = (y: number) => low.x - first + ((high.x - low.x) * (y - low.y)) / (high.y - low.y);
    for (let row = Math.max(0, Math.floor(low.y)); row < high.y && row < this.#rows; row++) {
      const [from, to] = [Math.max(low.y, row), Math.min(high.y, row + 1)];
      if (to > from) this.#addSlant(row, xAt(from), xAt(to), sign * (to - from));
    }
  }

  /** Part of an edge within one row, `rise` of a row high: its share in each cell it passes, the rest to the right of it. */
  #addSlant(row: number, x0: number, x1: number, rise: number): void {
    const [left, right] = x0 < x1 ? [x0, x1] : [x1, x0];
    const first = row * (this.#columns + 1);
    const put = (column: number, change: number) => {
      this.#changes[first + column] = (this.#changes[first + column] ?? 0) + change;
    };
    const shareOf = (from: number, to: number) => (right > left ? (to - from) / (right - left) : 1);
    if (left < 0) put(0, rise * shareOf(left, Math.min(right, 0)));
    for (let column = Math.max(0, Math.floor(left)); column < this.#columns; column++) {
      const [from, to] = [Math.max(left, column), Math.min(right, column + 1)];
      if (to < from || (to === from && right > left)) break;
      const change = rise * shareOf(from, to);
      const passed = (from + to) / 2 - column;
      put(column, change * (1 - passed));
      put(column + 1, change * passed);
      if (right === left) break;
    }
  }

  /** The share of each cell, row by row; films over one another count as one. */
  shares(): Float32Array {
    const shares = new Float32Array(this.#columns * this.#rows);
    for (let row = 0; row < this.#rows; row++) {
      let sum = 0;
      for (let column = 0; column < this.#columns; column++) {
        sum += this.#changes[row * (this.#columns + 1) + column] ?? 0;
        shares[row * this.#columns + column] = Math.max(0, Math.min(1, sum));
      }
    }
    return shares;
  }
}

/** Twice an outline's area, by the way it winds. */
const area = (outline: CellOutline): number =>
  outline.reduce((sum, p, i) => {
    const q = outline[(i + 1) % outline.length] ?? p;
    return sum + p.x * q.y - q.x * p.y;
  }, 0);
