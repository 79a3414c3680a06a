// Areas grown or shrunk by a distance, their curves kept curves.
import { arcAbout } from './arc.ts';
import { type Contour, type CubicSegment, cubic, line, type Segment, type Shape } from './contour.ts';
import { fitCurve } from './fit.ts';
import { directed } from './measure.ts';
import { add, cross, distance, dot, type Point, scale, subtract, unit } from './point.ts';
import { filledShapes } from './regions.ts';
import { chordCount, derivativeAt, directionAt, partOf, pointAt } from './segment.ts';
import { chordTolerance, fitTolerance } from './tolerance.ts';
import { turnover } from './turnover.ts';

/** What becomes of corners that the edge moves away from: rounded, or kept up to the miter limit and flattened past it. */
export type Corners = 'round' | 'kept';

/** How far a kept corner may reach past the edge, as a multiple of the distance: the usual limit of strokes in SVG. */
const miterLimit = 4;

/** Ends closer than this are one, mm. */
const same = 1e-9;

/**
 * Shapes grown by a distance, mm; shrunk where it is negative. What then touches becomes one, what vanishes is gone.
 * The edge lies within `fitTolerance` of its exact place. Needs closed contours; shapes may overlap.
 *
 * Every segment is moved along its normal, moved ends are joined (around a corner where they part, over the corner
 * itself where they cross), and what is then gone around counter-clockwise is the area.
 * Source: offsetting by winding numbers, X. Chen and S. McMains, Polygon Offsetting by Computing Winding Numbers
 * (ASME DETC 2005), from memory.
 */
export function offsetShapes(shapes: readonly Shape[], by: number, corners: Corners = 'round'): Shape[] {
  const contours = shapes.flatMap(directed);
  if (by === 0) return filledShapes(contours, 'nonzero', chordTolerance);
  const moved = contours.map((contour) => movedContour(contour, by, corners));
  return filledShapes(moved, 'positive', chordTolerance);
}

/** Shapes whose inner corners and gaps narrower than twice the radius are filled, their outer corners as they were. */
export const closedUp = (shapes: readonly Shape[], radius: number): Shape[] =>
  offsetShapes(offsetShapes(shapes, radius), -radius);

/** Shapes whose outer corners are rounded to the radius, and whose parts narrower than twice the radius are gone. */
export const openedUp = (shapes: readonly Shape[], radius: number): Shape[] =>
  offsetShapes(offsetShapes(shapes, -radius), radius);

function movedContour({ segments }: Contour, by: number, corners: Corners): Contour {
  const parts = segments
    .map(withoutStubs)
    .flatMap((s) => partsToMove(s, by))
    .filter((s) => distance(s.from, s.to) > same);
  const laid = parts.map((s) => movedSegment(s, by));
  const joined = parts.flatMap((s, i) => {
    const next = (i + 1) % parts.length;
    const [after, from, to] = [parts[next], laid[i]?.at(-1)?.to, laid[next]?.[0]?.from];
    const own = laid[i] ?? [];
    if (!after || !from || !to) return own;
    const [leaving, arriving] = [unit(directionAt(after, 0)), unit(directionAt(s, 1))];
    return [...own, ...joint({ corner: s.to, from, to, arriving, leaving }, by, corners)];
  });
  return { closed: true, segments: withLongLines(joined) };
}

/** A handle shorter than this share of its curve's reach tells no direction: it is what rounding left of none. */
const leastShare = 1e-4;

/**
 * A curve whose handles that tell no direction lie on its ends. An edge moved as far as it bends ends in such a handle,
 * and moved again by that direction it would leap aside, which no fit follows.
 */
function withoutStubs(segment: Segment): Segment {
  if (segment.kind === 'line') return segment;
  const { from, c1, c2, to } = segment;
  const [first, last] = [distance(from, c1), distance(c2, to)];
  const least = leastShare * (first + distance(c1, c2) + last);
  return first >= least && last >= least
    ? segment
    : cubic(from, first < least ? from : c1, last < least ? to : c2, to);
}

/** Lines that go on straight from one another as one; the one that the contour begins in may stay in two. */
function withLongLines(segments: readonly Segment[]): Segment[] {
  const merged: Segment[] = [];
  for (const s of segments) {
    const last = merged.at(-1);
    if (last && goesOn(last, s)) merged[merged.length - 1] = line(last.from, s.to);
    else merged.push(s);
  }
  const [first] = merged;
  const last = merged.at(-1);
  if (!first || !last || merged.length < 3 || !goesOn(last, first)) return merged;
  return [...merged.slice(1, -1), line(last.from, first.to)];
}

/** Sine of the angle under which a line goes on straight. */
const straightOn = 1e-9;

function goesOn(a: Segment, b: Segment): boolean {
  if (a.kind !== 'line' || b.kind !== 'line') return false;
  const [one, other] = [unit(subtract(a.to, a.from)), unit(subtract(b.to, b.from))];
  return Math.abs(cross(one, other)) < straightOn && dot(one, other) > 0;
}

/** A curve is looked at for places where it bends more than it can be moved by, in so many steps. */
const steps = 16;

/**
 * The parts of a segment that can be moved. Where a curve bends towards the move by more than the distance its moved
 * copy runs backwards, and would be counted as a hole; there chords take its place. None of them is seen: what they
 * reach lies nearer to other places of the curve.
 */
function partsToMove(s: Segment, by: number): Segment[] {
  if (s.kind === 'line') return [s];
  if (turnsAway(s, by)) return [partOf(s, 0, 1)];
  const runsBack = (t: number): boolean => dot(movedDerivative(s, by, t), directionAt(s, t)) < 0;
  const parts: Segment[] = [];
  let [from, isBack] = [0, runsBack(0)];
  const take = (to: number) => {
    const part = partOf(s, from, to);
    parts.push(...(isBack ? chordsOf(part) : [part]));
    from = to;
    isBack = !isBack;
  };
  for (let i = 1; i <= steps; i++)
    if (runsBack(i / steps) !== isBack) take(turnover(runsBack, (i - 1) / steps, i / steps));
  take(1);
  return parts;
}

/** Handles shorter than this tell no direction, mm. */
const leastHandle = 1e-3;

/**
 * Whether a curve surely bends nowhere towards the move: all three turns of its handles go the other way, and so does the curve, for its
 * turning is a sum of theirs with weights above 0 (the Bernstein form of its first derivative times its second).
 */
function turnsAway({ from, c1, c2, to }: CubicSegment, by: number): boolean {
  const [a, b, c] = [subtract(c1, from), subtract(c2, c1), subtract(to, c2)];
  const isTold = [a, b, c].every(({ x, y }) => Math.abs(x) + Math.abs(y) > leastHandle);
  return isTold && Math.min(cross(a, b) * by, cross(b, c) * by, cross(a, c) * by) > 0;
}

function chordsOf(s: Segment): Segment[] {
  const count = chordCount(s, chordTolerance);
  return Array.from({ length: count }, (_, i) => line(pointAt(s, i / count), pointAt(s, (i + 1) / count)));
}

/** The right of a direction, with y up: out of an area that is gone around counter-clockwise. */
const rightOf = ({ x, y }: Point): Point => ({ x: y, y: -x });

/** Step of a parameter where a derivative is taken by differences. */
const small = 1e-5;

/** The derivative of a moved curve by the parameter of its own. */
function movedDerivative(s: Segment, by: number, t: number): Point {
  const [from, to] = [Math.max(0, t - small), Math.min(1, t + small)];
  const turning = subtract(unit(directionAt(s, to)), unit(directionAt(s, from)));
  return add(derivativeAt(s, t), scale(rightOf(turning), by / (to - from)));
}

function movedSegment(s: Segment, by: number): readonly Segment[] {
  const point = (t: number): Point => add(pointAt(s, t), scale(rightOf(unit(directionAt(s, t))), by));
  if (s.kind === 'line') return [line(point(0), point(1))];
  const derivative = (t: number): Point => movedDerivative(s, by, t);
  return fitCurve({ point, derivative, mayBeStraight: false }, fitTolerance).segments;
}

/** Two moved segments about the corner where their own ones meet. */
interface Joint {
  readonly corner: Point;
  readonly from: Point;
  readonly to: Point;
  readonly arriving: Point;
  readonly leaving: Point;
}

function joint({ corner, from, to, arriving, leaving }: Joint, by: number, corners: Corners): Segment[] {
  if (distance(from, to) <= same) return [];
  const turn = Math.atan2(cross(arriving, leaving), dot(arriving, leaving));
  if (turn * by < 0) return [line(from, corner), line(corner, to)];
  if (corners === 'round') return arcAbout(corner, from, turn);
  // The reach of a corner past the edge is the distance over the cosine of half its turn.
  const half = Math.cos(turn / 2);
  if (half * miterLimit < 1) return [line(from, to)];
  const out = unit(add(subtract(from, corner), subtract(to, corner)));
  const tip = add(corner, scale(out, Math.abs(by) / half));
  return [line(from, tip), line(tip, to)];
}
