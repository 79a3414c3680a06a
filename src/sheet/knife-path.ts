// The way of a drag knife's axis so that its tip, which trails behind, cuts the lines that are wanted.
//
// The tip of a drag knife follows its axis as the back wheel of a bicycle follows the front one: it moves only towards
// the axis (a tractrix). So the axis has to run ahead of each point of the line by the knife's offset, along the line's
// own direction there; and at a corner it swings round the tip on an arc, while the tip stands still.
// Source: the tractory of a curve, mathcurve.com (seen); that a circle of radius r is cut by the axis on one of
// sqrt(r² + d²) follows from it, and is held in a test.

import { segmentLength } from '../geometry/arc-length.ts';
import { type Contour, cubic, line, type Segment } from '../geometry/contour.ts';
import { fitCurve } from '../geometry/fit.ts';
import { add, cross, distance, dot, type Point, scale, subtract } from '../geometry/point.ts';
import { derivativeAt, directionAt, partOf, pointAt } from '../geometry/segment.ts';

export interface Knife {
  /** How far the tip trails behind the axis, mm; above 0. */
  readonly offset: number;
  /** How far it goes on over the beginning of a closed line, mm. */
  readonly runOn: number;
  /** At a corner: swing round the tip, or lift and come down again on the other side of it. */
  readonly corner: 'swivel' | 'lift';
  /** With `lift`: how far each side is cut past the corner, mm. */
  readonly pastCorner: number;
  /** Turns smaller than this are no corners, radians. */
  readonly cornerFrom: number;
}

/** The axis from one coming down to the next going up: an open line. */
export type Stroke = Contour;

export interface KnifePath {
  readonly strokes: readonly Stroke[];
  /** Which way the blade points at the end, from tip to axis: a vector of length one. */
  readonly heading: Point;
}

/** How the knife is set before it starts: to the right. */
export const firstHeading: Point = { x: 1, y: 0 };

/** How far the axis may stray from where it has to be, mm: a tenth of what the tip may. */
const axisTolerance = 0.002;

/** Turns under this are none, radians: the axis is nowhere near 0.001 mm off. */
const leastTurn = 1e-4;

const unit = (v: Point): Point => scale(v, 1 / Math.hypot(v.x, v.y));

const secondDerivative = (s: Segment, t: number): Point => {
  if (s.kind === 'line') return { x: 0, y: 0 };
  const bend = (a: Point, b: Point, c: Point): Point => ({ x: a.x - 2 * b.x + c.x, y: a.y - 2 * b.y + c.y });
  return add(scale(bend(s.from, s.c1, s.c2), 6 * (1 - t)), scale(bend(s.c1, s.c2, s.to), 6 * t));
};

/** The axis while the tip follows a segment. */
function axisOf(s: Segment, offset: number): readonly Segment[] {
  const point = (t: number): Point => add(pointAt(s, t), scale(unit(directionAt(s, t)), offset));
  if (s.kind === 'line') return [line(point(0), point(1))];
  const derivative = (t: number): Point => {
    const d = derivativeAt(s, t);
    const speed = Math.hypot(d.x, d.y);
    const reach = distance(s.from, s.to) + distance(s.from, s.c1);
    if (speed < 1e-6 * reach) {
      // A handle of no length: by differences a little further in.
      const [a, b] = t < 0.5 ? [t, t + 1e-4] : [t - 1e-4, t];
      return scale(subtract(point(b), point(a)), 1 / (b - a));
    }
    const turn = cross(d, secondDerivative(s, t)) / (speed * speed);
    return add(d, scale({ x: -d.y / speed, y: d.x / speed }, offset * turn));
  };
  return fitCurve({ point, derivative, mayBeStraight: false }, axisTolerance).segments;
}

/** The axis swinging round a tip that stands still, the shorter way from one heading to another. */
function swing(tip: Point, from: Point, to: Point, offset: number): readonly Segment[] {
  const turn = Math.atan2(cross(from, to), dot(from, to));
  if (Math.abs(turn) < leastTurn) return [];
  const start = Math.atan2(from.y, from.x);
  const count = Math.ceil(Math.abs(turn) / (Math.PI / 2) - 1e-9);
  const step = turn / count;
  const handle = (4 / 3) * Math.tan(step / 4) * offset;
  const at = (angle: number): Point => ({ x: Math.cos(angle), y: Math.sin(angle) });
  return Array.from({ length: count }, (_, i) => {
    const [a, b] = [at(start + i * step), at(start + (i + 1) * step)];
    const [p, q] = [add(tip, scale(a, offset)), add(tip, scale(b, offset))];
    return cubic(
      p,
      add(p, scale({ x: -a.y, y: a.x }, handle)),
      add(q, scale({ x: b.y, y: -b.x }, handle)),
      q,
    );
  });
}

/** The line as it is cut: a closed one goes on over its own beginning. */
function withRunOn({ closed, segments }: Contour, runOn: number): readonly Segment[] {
  if (!closed) return segments;
  const again: Segment[] = [];
  let left = runOn;
  for (const s of segments) {
    if (left <= 0) break;
    const length = segmentLength(s, 1e-3);
    // Of a curve the share of its length is near enough: how far it goes on is no measure of the cut.
    again.push(length <= left ? s : partOf(s, 0, left / length));
    left -= length;
  }
  return [...segments, ...again];
}

/** A line in parts that are cut without lifting: one, or its sides where corners are cut by lifting. */
function sidesOf(
  segments: readonly Segment[],
  { corner, pastCorner, cornerFrom }: Knife,
): readonly (readonly Segment[])[] {
  if (corner === 'swivel') return [segments];
  const sides: Segment[][] = [];
  for (const [i, s] of segments.entries()) {
    const before = segments[i - 1];
    const side = sides.at(-1);
    if (side && before && turnBetween(before, s) < cornerFrom) side.push(s);
    else sides.push([s]);
  }
  if (pastCorner === 0) return sides;
  return sides.map((side, i) => {
    const [first, last] = [side[0], side.at(-1)];
    if (!first || !last) return side;
    const before = scale(unit(directionAt(first, 0)), pastCorner);
    const after = scale(unit(directionAt(last, 1)), pastCorner);
    return [
      ...(i === 0 ? [] : [line(subtract(first.from, before), first.from)]),
      ...side,
      ...(i === sides.length - 1 ? [] : [line(last.to, add(last.to, after))]),
    ];
  });
}

function turnBetween(before: Segment, after: Segment): number {
  const [a, b] = [directionAt(before, 1), directionAt(after, 0)];
  return Math.abs(Math.atan2(cross(a, b), dot(a, b)));
}

/** The axis along one run of segments, the blade first brought round to its direction about its first point. */
function strokeAlong(segments: readonly Segment[], { offset, cornerFrom }: Knife, heading: Point): KnifePath {
  const axis: Segment[] = [];
  let at = heading;
  const goOn = (more: readonly Segment[]) => {
    const [last, first] = [axis.at(-1), more[0]];
    if (last && first && distance(last.to, first.from) > 0) axis.push(line(last.to, first.from));
    axis.push(...more);
  };
  for (const [i, s] of segments.entries()) {
    const direction = unit(directionAt(s, 0));
    const turn = Math.abs(Math.atan2(cross(at, direction), dot(at, direction)));
    if (i === 0 || turn >= cornerFrom) goOn(swing(s.from, at, direction, offset));
    goOn(axisOf(s, offset));
    at = unit(directionAt(s, 1));
  }
  return { strokes: [{ closed: false, segments: axis }], heading: at };
}

/**
 * The knife's axis for lines in the order they are cut, each from its own start; `heading`: how the blade points when it
 * first comes down. Between lines the blade keeps its heading; it comes down on the start of the next and is swung round
 * there. The tip keeps within a few thousandths of a mm of the lines, but for what is cut past corners on purpose.
 */
export function knifePath(
  contours: readonly Contour[],
  knife: Knife,
  heading: Point = firstHeading,
): KnifePath {
  const strokes: Stroke[] = [];
  let at = heading;
  for (const contour of contours) {
    if (contour.segments.length === 0) continue;
    for (const side of sidesOf(withRunOn(contour, knife.runOn), knife)) {
      const { strokes: made, heading: after } = strokeAlong(side, knife, at);
      strokes.push(...made);
      at = after;
    }
  }
  return { strokes, heading: at };
}

/** Strokes of which the last ends with the blade swung round, its tip at rest, from a heading to the one it is set to. */
export function turnedBack(
  strokes: readonly Stroke[],
  heading: Point,
  offset: number,
  to: Point = firstHeading,
): readonly Stroke[] {
  const last = strokes.at(-1);
  const end = last?.segments.at(-1)?.to;
  if (!last || !end) return strokes;
  const back = swing(subtract(end, scale(heading, offset)), heading, to, offset);
  return [...strokes.slice(0, -1), { ...last, segments: [...last.segments, ...back] }];
}
