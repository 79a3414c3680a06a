// Which rings come near one another: those that don't can be combined by themselves, in time that grows with their number.
import { type Box, boxOfPoints } from './box.ts';
import { BoxIndex } from './box-index.ts';
import type { GridPoint, GridRing } from './grid-ring.ts';
import { setsJoined } from './joined.ts';

/** How near edges of different sets may come to the same square, grid units: more than combining moves a corner by. */
const nearness = 2;

/** Squares laid under the rings: about so many for each of their edges, at least and at most. */
const squaresPerEdge = 8;
const [fewestSquares, mostSquares] = [1 << 12, 1 << 22];

/**
 * Numbers of rings in sets, each in the order given: no edge of one set comes near an edge of another, though a set may lie within a ring
 * of another. Sets that come near the same square are one, so some that lie apart count as near.
 */
export const setsApart = (rings: readonly GridRing[]): readonly (readonly number[])[] =>
  setsJoined(rings.length, (join) => {
    const squares = new Squares(rings);
    rings.forEach((ring, i) => {
      squares.mark(ring, i, (other) => join(other, i));
    });
  });

/** Rings whose boxes meet more others than this, on the mean, are not looked at one by one: they are a heap. */
const mostNeighbours = 64;

/** Numbers of rings in sets: no box around a ring of one set meets that around a ring of another, so neither lies in the other. */
export const setsSideBySide = (rings: readonly GridRing[]): readonly (readonly number[])[] =>
  boxesSideBySide(rings.map(boxOfPoints));

/** Numbers of boxes in sets, lowest first: no box of one set meets one of another. */
export function boxesSideBySide(boxes: readonly Box[]): readonly (readonly number[])[] {
  const index = indexOf(boxes);
  let met = 0;
  const others = (i: number): readonly number[] => {
    // Those looked at so far are joined to all that they meet.
    if (met > mostNeighbours * boxes.length) return [0];
    const { minX, minY, maxX, maxY } = boxes[i] ?? boxOfPoints([]);
    const found = index.meeting(minX, minY, maxX, maxY);
    met += found.length;
    return found;
  };
  return setsJoined(boxes.length, (join) => {
    for (let i = 0; i < boxes.length; i++) for (const other of others(i)) join(i, other);
  });
}

/** An index of the rings' boxes. */
export const ringIndex = (rings: readonly GridRing[]): BoxIndex => indexOf(rings.map(boxOfPoints));

const indexOf = (boxes: readonly Box[]): BoxIndex =>
  new BoxIndex(boxes.length, (add) => {
    for (const { minX, minY, maxX, maxY } of boxes) add(minX, minY, maxX, maxY);
  });

/** A chequer of squares that each remember the last ring that came near. */
class Squares {
  readonly #minX: number;
  readonly #minY: number;
  readonly #side: number;
  readonly #columns: number;
  readonly #last: Int32Array;

  constructor(rings: readonly GridRing[]) {
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    let edges = 0;
    for (const ring of rings) {
      edges += ring.length;
      for (const { x, y } of ring) {
        minX = Math.min(minX, x);
        minY = Math.min(minY, y);
        maxX = Math.max(maxX, x);
        maxY = Math.max(maxY, y);
      }
    }
    const count = Math.min(mostSquares, Math.max(fewestSquares, squaresPerEdge * edges));
    const [width, height] = [maxX - minX + 2 * nearness, maxY - minY + 2 * nearness];
    this.#side = Math.max(8 * nearness, Math.sqrt((width * height) / count), Math.max(width, height) / count);
    this.#minX = minX - nearness;
    this.#minY = minY - nearness;
    this.#columns = Math.floor(width / this.#side) + 1;
    const rows = Math.floor(height / this.#side) + 1;
    this.#last = new Int32Array(edges === 0 ? 0 : this.#columns * rows).fill(-1);
  }

  /** Mark every square that an edge of the ring comes near; `met` is told of rings that did before. */
  mark(ring: GridRing, number: number, met: (other: number) => void): void {
    let p = ring.at(-1);
    for (const q of ring) {
      if (p) this.#markEdge(p, q, number, met);
      p = q;
    }
  }

  #markEdge(p: GridPoint, q: GridPoint, number: number, met: (other: number) => void): void {
    const low = p.y <= q.y ? p : q;
    const high = low === p ? q : p;
    const from = this.#row(low.y - nearness);
    const to = this.#row(high.y + nearness);
    const slope = (high.x - low.x) / (high.y - low.y);
    for (let row = from; row <= to; row++) {
      // Within a row the edge goes from where it comes in to where it goes out.
      const bottom = this.#minY + row * this.#side - nearness;
      const enters = Math.min(high.y, Math.max(low.y, bottom));
      const leaves = Math.max(low.y, Math.min(high.y, bottom + this.#side + 2 * nearness));
      const x0 = high.y > low.y ? low.x + slope * (enters - low.y) : low.x;
      const x1 = high.y > low.y ? low.x + slope * (leaves - low.y) : high.x;
      const first = this.#column(Math.min(x0, x1) - nearness);
      const last = this.#column(Math.max(x0, x1) + nearness);
      for (let at = row * this.#columns + first; at <= row * this.#columns + last; at++) {
        const before = this.#last[at] ?? -1;
        if (before >= 0 && before !== number) met(before);
        this.#last[at] = number;
      }
    }
  }

  #row = (y: number): number => Math.max(0, Math.floor((y - this.#minY) / this.#side));
  #column = (x: number): number =>
    Math.min(this.#columns - 1, Math.max(0, Math.floor((x - this.#minX) / this.#side)));
}
