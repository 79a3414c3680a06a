// A line of many points, closed or without end, as few lines and curves.
import { type Contour, type CubicSegment, cubic, line, type Segment } from './contour.ts';
import { add, cross, distance, dot, type Point, scale, subtract, unit } from './point.ts';
import { derivativeAt, pointAt, secondDerivativeAt } from './segment.ts';

export interface PointFitOptions {
  /** How far the points may lie from what is fitted. */
  readonly tolerance: number;
  /** Length over which directions are taken: corners rounder than it are curves. */
  readonly reach: number;
  /** How far on a line begins again that goes on without end; left out, it comes back to its first point. */
  readonly by?: Point;
}

/** A way that turns more than this within the reach turns a corner, radians. */
const cornerTurn = (55 * Math.PI) / 180;

/**
 * Lines and cubics that pass within the tolerance of the points of a closed line, with corners where it has some.
 * Source: P. J. Schneider, An Algorithm for Automatically Fitting Digitized Curves (Graphics Gems, 1990), from memory:
 * least squares for the handles, parameters bettered by Newton, split at the farthest point. Of a line without end it gives
 * one round, which its own copy goes on from.
 */
export function fitPoints(points: readonly Point[], options: PointFitOptions): Contour {
  const fitter = new PointFitter(points, options);
  return { closed: options.by === undefined, segments: fitter.segments };
}

class PointFitter {
  readonly segments: Segment[] = [];
  readonly #points: readonly Point[];
  readonly #tolerance: number;
  readonly #reach: number;
  readonly #by: Point;

  constructor(points: readonly Point[], { tolerance, reach, by = { x: 0, y: 0 } }: PointFitOptions) {
    this.#points = points;
    this.#tolerance = tolerance;
    this.#reach = reach;
    this.#by = by;
    const corners = this.#corners();
    const starts = corners.length > 0 ? corners : [0];
    for (const [k, from] of starts.entries()) {
      const next = starts[k + 1] ?? (starts[0] ?? 0) + points.length;
      const isCorner = corners.length > 0;
      this.#fit(
        from,
        next,
        isCorner ? this.#wayFrom(from, next) : this.#wayAt(from),
        isCorner ? this.#wayInto(from, next) : this.#wayAt(next),
      );
    }
  }

  #at(i: number): Point {
    const count = this.#points.length;
    const rounds = Math.floor(i / count);
    const { x, y } = this.#points[i - rounds * count] ?? { x: 0, y: 0 };
    return { x: x + rounds * this.#by.x, y: y + rounds * this.#by.y };
  }

  /** The point about the reach away from point i, forwards or backwards, not past `end`. */
  #away(i: number, by: 1 | -1, end = i + by * this.#points.length): number {
    let [k, length] = [i, 0];
    while (k !== end && length < this.#reach) {
      length += distance(this.#at(k), this.#at(k + by));
      k += by;
    }
    return k;
  }

  /** How much the way turns at a point, over the reach. */
  #turn(i: number): number {
    const before = subtract(this.#at(i), this.#at(this.#away(i, -1)));
    const after = subtract(this.#at(this.#away(i, 1)), this.#at(i));
    return Math.abs(Math.atan2(cross(before, after), dot(before, after)));
  }

  /** Points where the way turns a corner: the sharpest within each reach. */
  #corners(): number[] {
    const turns = this.#points.map((_, i) => this.#turn(i));
    return turns.flatMap((turn, i) => {
      if (turn < cornerTurn) return [];
      const [from, to] = [this.#away(i, -1), this.#away(i, 1)];
      for (let k = from; k <= to; k++) {
        const other = turns[((k % turns.length) + turns.length) % turns.length] ?? 0;
        if (other > turn || (other === turn && k < i)) return [];
      }
      return [i];
    });
  }

  #wayFrom(i: number, end: number): Point {
    return unit(subtract(this.#at(this.#away(i, 1, end)), this.#at(i)));
  }

  #wayInto(start: number, i: number): Point {
    return unit(subtract(this.#at(i), this.#at(this.#away(i, -1, start))));
  }

  #wayAt(i: number): Point {
    return unit(subtract(this.#at(this.#away(i, 1)), this.#at(this.#away(i, -1))));
  }

  /** Fit the points from `start` to `end`, which leave and arrive in these directions. */
  #fit(start: number, end: number, leaving: Point, arriving: Point): void {
    const [from, to] = [this.#at(start), this.#at(end)];
    if (this.#isStraight(start, end)) {
      this.segments.push(line(from, to));
      return;
    }
    const lengths = [0];
    for (let i = start + 1; i <= end; i++)
      lengths.push((lengths.at(-1) ?? 0) + distance(this.#at(i - 1), this.#at(i)));
    const total = lengths.at(-1) ?? 1;
    let ts = lengths.map((length) => length / total);
    for (let round = 0; round < 4; round++) {
      const curve = this.#leastSquares(start, ts, leaving, arriving, from, to);
      const { miss, at } = this.#worst(curve, start, ts);
      if (miss <= this.#tolerance) {
        this.segments.push(curve);
        return;
      }
      if (round === 3 || miss > 4 * this.#tolerance) {
        const middle = Math.min(Math.max(start + at, start + 1), end - 1);
        const way = this.#wayAt(middle);
        if (middle <= start || middle >= end) this.segments.push(line(from, to));
        else {
          this.#fit(start, middle, leaving, way);
          this.#fit(middle, end, way, arriving);
        }
        return;
      }
      ts = ts.map((t, k) => bettered(curve, this.#at(start + k), t));
    }
  }

  #isStraight(start: number, end: number): boolean {
    const [from, to] = [this.#at(start), this.#at(end)];
    const way = subtract(to, from);
    const length = Math.hypot(way.x, way.y);
    for (let i = start + 1; i < end; i++) {
      const p = subtract(this.#at(i), from);
      const off = length > 0 ? Math.abs(cross(way, p)) / length : Math.hypot(p.x, p.y);
      if (off > this.#tolerance / 2) return false;
    }
    return true;
  }

  /** The handles, along the given directions, that bring a cubic closest to the points at their parameters. */
  #leastSquares(
    start: number,
    ts: readonly number[],
    leaving: Point,
    arriving: Point,
    from: Point,
    to: Point,
  ): CubicSegment {
    const back = scale(arriving, -1);
    let [c00, c01, c11, x0, x1] = [0, 0, 0, 0, 0];
    for (const [k, t] of ts.entries()) {
      const u = 1 - t;
      const [b0, b1, b2, b3] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
      const [a, b] = [scale(leaving, b1), scale(back, b2)];
      const rest = subtract(this.#at(start + k), add(scale(from, b0 + b1), scale(to, b2 + b3)));
      c00 += dot(a, a);
      c01 += dot(a, b);
      c11 += dot(b, b);
      x0 += dot(a, rest);
      x1 += dot(b, rest);
    }
    const size = c00 * c11 - c01 * c01;
    const span = distance(from, to);
    let [one, other] =
      size > 1e-12 * c00 * c11 ? [(x0 * c11 - x1 * c01) / size, (c00 * x1 - c01 * x0) / size] : [0, 0];
    // Handles that run backwards or far past the other end make loops: the third part of the span is always safe.
    if (!(one > 1e-3 * span) || !(other > 1e-3 * span) || one > 3 * span || other > 3 * span)
      [one, other] = [span / 3, span / 3];
    return cubic(from, add(from, scale(leaving, one)), add(to, scale(back, other)), to);
  }

  #worst(
    curve: CubicSegment,
    start: number,
    ts: readonly number[],
  ): { readonly miss: number; readonly at: number } {
    let [miss, at] = [0, 0];
    for (const [k, t] of ts.entries()) {
      const away = distance(pointAt(curve, t), this.#at(start + k));
      if (away > miss) [miss, at] = [away, k];
    }
    return { miss, at };
  }
}

/** One step of Newton towards the parameter of the place on a curve that is nearest to a point. */
function bettered(curve: CubicSegment, p: Point, t: number): number {
  const off = subtract(pointAt(curve, t), p);
  const [first, second] = [derivativeAt(curve, t), secondDerivativeAt(curve, t)];
  const slope = dot(first, first) + dot(off, second);
  if (!(slope > 0)) return t;
  return Math.max(0, Math.min(1, t - dot(off, first) / slope));
}
