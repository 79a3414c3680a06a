// The chords that stand in for curves while areas are combined, and the way back from a chord to its curve.

import { BoxIndex } from './box-index.ts';
import { type Contour, line, type Segment } from './contour.ts';
import type { GridPoint, GridRing } from './grid-ring.ts';
import type { Point } from './point.ts';
import { norm } from './point.ts';
import { chordCount, xAt, yAt } from './segment.ts';
import type { GridEdge } from './touching.ts';

/**
 * A contour as chords, mm. Chord k runs from corner k to the next corner (the last one back to the first). Kept as plain columns:
 * there are tens of thousands of them. Arrays, for most contours are short, and a typed array is dear to make.
 */
export interface ChordedContour {
  readonly contour: Contour;
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** The first chord of each segment, then the number of all: those of one segment are equal steps of its parameter. */
  readonly first: readonly number[];
}

/** The chords of a contour, each within the tolerance of its curve. An open contour is closed by a straight line. */
export function chorded(drawn: Contour, tolerance: number): ChordedContour {
  const contour = closedUp(drawn);
  const { segments } = contour;
  const chords = { contour, x: [] as number[], y: [] as number[], first: [0] };
  for (const s of segments) {
    putCorners(s, chordCount(s, tolerance), chords);
    chords.first.push(chords.x.length);
  }
  // Arrays that grew have room to grow on, up to half as much again: copies have none.
  const { x, y, first } = chords;
  return { contour, x: x.slice(), y: y.slice(), first: first.slice() };
}

/** The corners of one segment's chords: many, so no point is made of any. */
function putCorners(
  s: Segment,
  count: number,
  { x, y }: { readonly x: number[]; readonly y: number[] },
): void {
  x.push(s.from.x);
  y.push(s.from.y);
  for (let i = 1; i < count; i++) {
    x.push(xAt(s, i / count));
    y.push(yAt(s, i / count));
  }
}

function closedUp(contour: Contour): Contour {
  const from = contour.segments.at(-1)?.to;
  const to = contour.segments[0]?.from;
  if (contour.closed || !from || !to) return contour;
  return { closed: true, segments: [...contour.segments, line(from, to)] };
}

/** A chorded contour that takes part, moved by `by`, and which of its segments only mark a window's edge. */
export interface Source {
  readonly chords: ChordedContour;
  readonly by: Point;
  readonly isEdge?: (segment: number) => boolean;
}

/**
 * How far, in grid units, the combining may have moved a corner by rounding: no less than the corners that `combine`
 * takes for one are apart, on the diagonal, or an edge between them loses its curve.
 */
export const slack = 6;

/** A coordinate, moved, on the integer grid. */
export const onGrid = (value: number | undefined, step: number, units: number): number =>
  Math.round(((value ?? 0) + step) * units) + 0;

/** All chords of a combination on the integer grid, and the search for the chord an edge of the result came from. */
export class ChordGrid {
  readonly source: number[] = [];
  readonly segment: number[] = [];
  readonly t0: number[] = [];
  readonly t1: number[] = [];
  /** The straight sides among the rings' edges. */
  readonly sides: GridEdge[] = [];
  readonly #edge: boolean[] = [];
  readonly #x0: number[] = [];
  readonly #y0: number[] = [];
  readonly #x1: number[] = [];
  readonly #y1: number[] = [];
  /** Of each source, its first chord and the one after its last. */
  readonly #range = new Map<number, readonly [number, number]>();
  /** Chords by the very corner they start from, of each ring its first and its last. */
  readonly #startOf = new Map<GridPoint, number>();
  #index: BoxIndex | undefined;

  /** Put one source on the grid. Chords too short for the grid are left out; a contour of no area is left out whole. */
  add({ chords, by, isEdge }: Source, source: number, units: number): GridRing | undefined {
    const count = chords.x.length;
    const { segments } = chords.contour;
    const ring: GridPoint[] = [];
    const begin = this.source.length;
    let x0 = onGrid(chords.x[0], by.x, units);
    let y0 = onGrid(chords.y[0], by.y, units);
    let started: number | undefined;
    let segment = 0;
    for (let k = 0; k < count; k++) {
      if (k === chords.first[segment + 1]) segment += 1;
      const [from, to] = [chords.first[segment] ?? 0, chords.first[segment + 1] ?? 0];
      const next = k + 1 === count ? 0 : k + 1;
      const x1 = onGrid(chords.x[next], by.x, units);
      const y1 = onGrid(chords.y[next], by.y, units);
      started ??= (k - from) / (to - from);
      if (x1 === x0 && y1 === y0) {
        if (k + 1 === to) started = undefined;
        continue;
      }
      const corner = { x: x0, y: y0 };
      ring.push(corner);
      if (segments[segment]?.kind === 'line') this.sides.push({ p: corner, q: { x: x1, y: y1 } });
      const t1 = (k + 1 - from) / (to - from);
      this.#push(source, segment, started, t1, x0, y0, x1, y1, isEdge?.(segment) ?? false);
      started = undefined;
      x0 = x1;
      y0 = y1;
    }
    const [first, last] = [ring[0], ring.at(-1)];
    if (ring.length < 3 || !first || !last) {
      this.#cutBack(begin);
      return undefined;
    }
    this.#range.set(source, [begin, begin + ring.length]);
    this.#startOf.set(first, begin).set(last, begin + ring.length - 1);
    return ring;
  }

  #push(
    source: number,
    segment: number,
    t0: number,
    t1: number,
    x0: number,
    y0: number,
    x1: number,
    y1: number,
    edge: boolean,
  ): void {
    this.source.push(source);
    this.segment.push(segment);
    this.t0.push(t0);
    this.t1.push(t1);
    this.#x0.push(x0);
    this.#y0.push(y0);
    this.#x1.push(x1);
    this.#y1.push(y1);
    this.#edge.push(edge);
  }

  #cutBack(length: number): void {
    for (const column of [
      this.source,
      this.segment,
      this.t0,
      this.t1,
      this.#x0,
      this.#y0,
      this.#x1,
      this.#y1,
      this.#edge,
    ])
      column.length = length;
  }

  /**
   * The chord that carries the edge from p to q; -1 if none does. Where several do, as along a shared border, drawn
   * lines win over window edges, and then the curve that was being followed.
   */
  find(p: GridPoint, q: GridPoint, following: number): number {
    // Nearly every edge is the chord after (or before) the last one: no search is needed for those.
    const near = following < 0 ? this.#startOf.get(p) : following;
    if (near !== undefined) {
      if (following < 0 && this.#isLine(near, p, q)) return near;
      const [after, before] = [this.#neighbour(near, 1), this.#neighbour(near, -1)];
      if (this.#isLine(after, p, q)) return after;
      if (this.#isLine(before, p, q)) return before;
    }
    let best = -1;
    let bestScore = Infinity;
    const [x, y] = [(p.x + q.x) / 2, (p.y + q.y) / 2];
    for (const k of this.#boxes().meeting(x - slack, y - slack, x + slack, y + slack)) {
      const score = this.#score(k, p, q, following);
      if (score < bestScore) {
        best = k;
        bestScore = score;
      }
    }
    return best;
  }

  /** The chord after one, or before it, around its source. */
  #neighbour(k: number, step: 1 | -1): number {
    const next = k + step;
    const source = this.source[k];
    if (source === undefined || this.source[next] === source) return next;
    const [begin, end] = this.#range.get(source) ?? [next, next];
    return step === 1 ? begin : end - 1;
  }

  /** Whether a chord is the drawn line from p to q, either way round. */
  #isLine(k: number, p: GridPoint, q: GridPoint): boolean {
    if (this.#edge[k]) return false;
    const x0 = this.#x0[k];
    const y0 = this.#y0[k];
    const x1 = this.#x1[k];
    const y1 = this.#y1[k];
    return (
      (x0 === p.x && y0 === p.y && x1 === q.x && y1 === q.y) ||
      (x1 === p.x && y1 === p.y && x0 === q.x && y0 === q.y)
    );
  }

  /** How ill a chord suits an edge; infinite where it does not carry it. */
  #score(k: number, p: GridPoint, q: GridPoint, following: number): number {
    const beside = this.#beside(k, p) + this.#beside(k, q);
    if (!(beside < Infinity)) return Infinity;
    const follows =
      following >= 0 &&
      this.source[k] === this.source[following] &&
      this.segment[k] === this.segment[following];
    return (this.#edge[k] ? 100 : 0) + (follows ? 0 : 10) + beside;
  }

  /** Distance of a point from a chord; infinite past its ends or too far beside it. */
  #beside(k: number, p: GridPoint): number {
    const [x0, y0] = [this.#x0[k] ?? 0, this.#y0[k] ?? 0];
    const [dx, dy] = [(this.#x1[k] ?? 0) - x0, (this.#y1[k] ?? 0) - y0];
    const [px, py] = [p.x - x0, p.y - y0];
    const length = norm(dx, dy);
    const along = (px * dx + py * dy) / length;
    const beside = Math.abs(px * dy - py * dx) / length;
    return beside <= slack && along >= -slack && along <= length + slack ? beside : Infinity;
  }

  #boxes(): BoxIndex {
    this.#index ??= new BoxIndex(this.source.length, (add) => {
      for (let k = 0; k < this.source.length; k++) {
        const [x0, y0, x1, y1] = [this.#x0[k] ?? 0, this.#y0[k] ?? 0, this.#x1[k] ?? 0, this.#y1[k] ?? 0];
        add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
      }
    });
    return this.#index;
  }

  /** The curve's parameter at a point of its chord. */
  parameterAt(k: number, p: GridPoint): number {
    const x0 = this.#x0[k] ?? 0;
    const y0 = this.#y0[k] ?? 0;
    const dx = (this.#x1[k] ?? 0) - x0;
    const dy = (this.#y1[k] ?? 0) - y0;
    const length = norm(dx, dy);
    const along = ((p.x - x0) * dx + (p.y - y0) * dy) / length;
    const t0 = this.t0[k] ?? 0;
    const t1 = this.t1[k] ?? 1;
    if (along <= slack) return t0;
    if (along >= length - slack) return t1;
    return t0 + (along / length) * (t1 - t0);
  }
}
