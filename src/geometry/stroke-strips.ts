// What a pen sweeps along one segment of a line, from its start to its end: areas that together are all of it.
import { arcAbout } from './arc.ts';
import {
  type Contour,
  type CubicSegment,
  line,
  polygon,
  reverseContour,
  reverseSegment,
  type Segment,
} from './contour.ts';
import { bendAt, fitBeside, normalAt } from './curve-beside.ts';
import { signedArea } from './measure.ts';
import { add, cross, distance, dot, type Point, scale, subtract, unit } from './point.ts';
import { directionAt, pointAt, withEnds } from './segment.ts';

/** Half the pen's width, and how far what comes out may stray, in the same unit. */
export interface Sweep {
  readonly half: number;
  readonly tolerance: number;
}

/** The normals to use at the two ends of a segment: where two segments go on smoothly they share one. */
export interface EndNormals {
  readonly start: Point;
  readonly end: Point;
}

/** A contour that runs counter-clockwise with y up. */
export const turnedLeft = (contour: Contour): Contour =>
  signedArea(contour) < 0 ? reverseContour(contour) : contour;

/** A stretch turns by no more than this, so that what is swept nowhere covers itself. */
const widestTurn = Math.PI / 3;

/** A curve that bends more than this share of what the pen's edge can follow is swept chord by chord on its inner side. */
const tightest = 0.95;

/** Halvings of one curve, at most. What still turns wide after them is a cusp. */
const deepest = 14;

/** Halvings that separate what is bent too tightly from what is not. */
const sorting = 5;

export const disc = (centre: Point, radius: number): Contour => ({
  closed: true,
  segments: arcAbout(centre, { x: centre.x + radius, y: centre.y }, 2 * Math.PI),
});

/** The areas swept along a segment by a pen held across it. Each runs counter-clockwise with y up and nowhere crosses itself. */
export function strips(s: Segment, normals: EndNormals, { half, tolerance }: Sweep): Contour[] {
  if (s.kind === 'line') {
    const [a, b] = [scale(normals.start, half), scale(normals.end, half)];
    return [turnedLeft(polygon([subtract(s.from, a), subtract(s.to, b), add(s.to, b), add(s.from, a)]))];
  }
  return new CurveSweep(s, normals, half, tolerance).areas;
}

class CurveSweep {
  readonly areas: Contour[] = [];
  readonly #s: CubicSegment;
  readonly #normals: EndNormals;
  readonly #half: number;
  readonly #tolerance: number;
  /** Most that a curve may turn within one chord, so that the pen's edge strays from it by less than the tolerance. */
  readonly #chordTurn: number;

  constructor(s: CubicSegment, normals: EndNormals, half: number, tolerance: number) {
    this.#s = s;
    this.#normals = normals;
    this.#half = half;
    this.#tolerance = tolerance;
    this.#chordTurn = Math.min(widestTurn, Math.sqrt((8 * tolerance) / half));
    this.#span(0, 1, deepest);
  }

  #span(t0: number, t1: number, depth: number): void {
    const canHalve = depth > 0 && this.#reach(t0, t1) > this.#tolerance;
    if (this.#turn(t0, t1) > widestTurn) {
      if (canHalve) this.#halves(t0, t1, depth);
      // A cusp: the pen turns on the spot.
      else this.areas.push(disc(pointAt(this.#s, (t0 + t1) / 2), this.#half));
      return;
    }
    const bends = samples.map((u) => bendAt(this.#s, t0 + u * (t1 - t0)) * this.#half);
    const tight = bends.filter((bend) => !(Math.abs(bend) < tightest));
    if (tight.length === 0) this.#regular(t0, t1);
    else if (canHalve && tight.length < bends.length && depth > deepest - sorting)
      this.#halves(t0, t1, depth);
    else this.#tight(t0, t1, Math.sign(tight[0] ?? 1) || 1);
  }

  #halves(t0: number, t1: number, depth: number): void {
    const middle = (t0 + t1) / 2;
    this.#span(t0, middle, depth - 1);
    this.#span(middle, t1, depth - 1);
  }

  /** About how long a stretch is. */
  #reach(t0: number, t1: number): number {
    const [from, middle, to] = [t0, (t0 + t1) / 2, t1].map((t) => pointAt(this.#s, t));
    return from && middle && to ? distance(from, middle) + distance(middle, to) : 0;
  }

  /** The widest angle between the direction at the start and any later one. */
  #turn(t0: number, t1: number): number {
    const start = unit(directionAt(this.#s, t0));
    return Math.max(
      ...samples.map((u) => {
        const there = unit(directionAt(this.#s, t0 + u * (t1 - t0)));
        return Math.abs(Math.atan2(cross(start, there), dot(start, there)));
      }),
    );
  }

  #normal(t: number): Point {
    if (t === 0) return this.#normals.start;
    return t === 1 ? this.#normals.end : normalAt(this.#s, t);
  }

  /** The place at t, `by` half widths to the left with y up. */
  #place(t: number, by: number): Point {
    return add(pointAt(this.#s, t), scale(this.#normal(t), by * this.#half));
  }

  /** The pen's edge on one side, its ends where the normals say. */
  #edge(t0: number, t1: number, side: number): readonly Segment[] {
    const segments = fitBeside(this.#s, side * this.#half, t0, t1, this.#tolerance);
    const last = segments.length - 1;
    return segments.map((segment, i) =>
      withEnds(
        segment,
        i === 0 ? this.#place(t0, side) : segment.from,
        i === last ? this.#place(t1, side) : segment.to,
      ),
    );
  }

  #regular(t0: number, t1: number): void {
    const right = this.#edge(t0, t1, -1);
    const left = this.#edge(t0, t1, 1);
    this.areas.push(
      turnedLeft({
        closed: true,
        segments: [
          ...right,
          line(this.#place(t1, -1), this.#place(t1, 1)),
          ...left.map(reverseSegment).reverse(),
          line(this.#place(t0, 1), this.#place(t0, -1)),
        ],
      }),
    );
  }

  /** Where the pen's edge on the inner side, given by `inner`, runs backwards: the outer side whole, the inner in chords. */
  #tight(t0: number, t1: number, inner: number): void {
    const ts = [t0, ...this.#chords(t0, t1, deepest)];
    const spine = ts.map((t) => pointAt(this.#s, t)).reverse();
    const [first, last] = [spine.at(-1), spine[0]];
    if (!first || !last) return;
    this.areas.push(
      turnedLeft({
        closed: true,
        segments: [
          ...this.#edge(t0, t1, -inner),
          line(this.#place(t1, -inner), last),
          ...spine.slice(1).map((p, i) => line(spine[i] ?? p, p)),
          line(first, this.#place(t0, -inner)),
        ],
      }),
    );
    ts.slice(1).forEach((t, i) => {
      const before = ts[i] ?? t0;
      this.#between(
        [pointAt(this.#s, before), this.#place(before, inner)],
        [pointAt(this.#s, t), this.#place(t, inner)],
      );
    });
  }

  /** Ends of stretches that turn little enough for a chord. */
  #chords(t0: number, t1: number, depth: number): readonly number[] {
    if (depth === 0 || this.#turn(t0, t1) <= this.#chordTurn) return [t1];
    const middle = (t0 + t1) / 2;
    return [...this.#chords(t0, middle, depth - 1), ...this.#chords(middle, t1, depth - 1)];
  }

  /** What lies between two normals that are next to each other: they may cross. */
  #between([p, q]: readonly [Point, Point], [p2, q2]: readonly [Point, Point]): void {
    const at = crossing(p, q, p2, q2);
    const parts = at
      ? [
          [p, p2, at],
          [at, q2, q],
        ]
      : [[p, p2, q2, q]];
    for (const part of parts) this.areas.push(turnedLeft(polygon(part)));
  }
}

const samples = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1];

/** Where the lines from p to q and from p2 to q2 cross between their ends. */
function crossing(p: Point, q: Point, p2: Point, q2: Point): Point | undefined {
  const [a, b, from] = [subtract(q, p), subtract(q2, p2), subtract(p2, p)];
  const size = cross(a, b);
  if (size === 0) return undefined;
  const [s, t] = [cross(from, b) / size, cross(from, a) / size];
  return s > 0 && s < 1 && t > 0 && t < 1 ? add(p, scale(a, s)) : undefined;
}
