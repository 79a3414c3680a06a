// Where the curves of two runs of a traced boundary cross, from a start that is as close as chords tell.
import type { Segment } from './contour.ts';
import { cross, distance, dot, norm, type Point, subtract } from './point.ts';
import { derivativeAt, pointAt, secondDerivativeAt } from './segment.ts';
import { chordTolerance } from './tolerance.ts';

/** A curve with the parameter that a run on it ends at (or begins), and that of the run's other end. */
export interface RunEnd {
  readonly segment: Segment;
  readonly at: number;
  readonly other: number;
}

export interface Crossing {
  readonly point: Point;
  readonly before: number;
  readonly after: number;
}

/** Curves at a lesser angle than this, rad, run side by side. */
const leastSlant = 1e-3;

/** A crossing this near to where the chords crossed is it, whatever the angle, mm. */
const near = 20 * chordTolerance;

/**
 * The crossing at which the boundary goes over from one run to the next; undefined where their curves run side by side. `turn` tells by its
 * sign to which side the chords turned there, with 0 for unknown: two curves that all but touch cross twice, once each way.
 */
export function jointCrossing(a: RunEnd, b: RunEnd, turn: number): Crossing | undefined {
  const close = straightOn(a, b);
  if (close && (turn === 0 || turnAt(a, b, close) * turn > 0)) return close;
  return (turn === 0 ? undefined : besideTouch(a, b, turn)) ?? close;
}

/** Which way along its curve each run goes. */
const wayIn = ({ at, other }: RunEnd): 1 | -1 => (at > other ? 1 : -1);
const wayOut = ({ at, other }: RunEnd): 1 | -1 => (other > at ? 1 : -1);

const turnAt = (a: RunEnd, b: RunEnd, { before, after }: Crossing): number =>
  wayIn(a) * wayOut(b) * cross(derivativeAt(a.segment, before), derivativeAt(b.segment, after));

/** Newton's method on A(s) = B(t). */
function straightOn({ segment: a, at: s }: RunEnd, { segment: b, at: t }: RunEnd): Crossing | undefined {
  const start = pointAt(a, s);
  let [before, after] = [s, t];
  for (let i = 0; i < 6; i++) {
    const gap = subtract(pointAt(b, after), pointAt(a, before));
    const da = derivativeAt(a, before);
    const db = derivativeAt(b, after);
    const turn = cross(da, db);
    if (Math.abs(turn) < leastSlant * norm(da.x, da.y) * norm(db.x, db.y)) return undefined;
    before += cross(gap, db) / turn;
    after += cross(gap, da) / turn;
  }
  const inside = isInside(before) && isInside(after);
  const point = inside ? pointAt(a, before) : start;
  const settled = inside && distance(point, pointAt(b, after)) < 1e-7 && distance(point, start) < near;
  return settled ? { point, before, after } : undefined;
}

const isInside = (t: number): boolean => t > 0 && t < 1;

/**
 * The same of curves that all but touch, where the chords' crossing may lie anywhere between the two of the curves: each step goes to the
 * one of the right turn of the two parabolas that the curves are like.
 */
function besideTouch(a: RunEnd, b: RunEnd, turn: number): Crossing | undefined {
  let [before, after] = [a.at, b.at];
  for (let i = 0; i < 12; i++) {
    const step = toParabolas(
      tangentAt(a.segment, before, wayIn(a)),
      tangentAt(b.segment, after, wayOut(b)),
      turn,
    );
    if (!step) return undefined;
    before += step.before;
    after += step.after;
    // One step past the end of a curve may still lead back.
    if (!(Math.abs(before - 0.5) < 1 && Math.abs(after - 0.5) < 1)) return undefined;
  }
  const [p, q] = [pointAt(a.segment, before), pointAt(b.segment, after)];
  const [da, db] = [derivativeAt(a.segment, before), derivativeAt(b.segment, after)];
  const slant = Math.abs(cross(da, db)) / (norm(da.x, da.y) * norm(db.x, db.y));
  const found = { point: p, before, after };
  // Chords that stand off by their sagitta cross as far from where the curves do as that is more than the sine of the angle.
  const most = Math.max(near, (4 * chordTolerance) / slant);
  const isIt =
    slant >= leastSlant &&
    distance(p, q) < 1e-7 &&
    distance(p, pointAt(a.segment, a.at)) < most &&
    turnAt(a, b, found) * turn > 0 &&
    leavesHalf(a, before) &&
    leavesHalf(b, after);
  return isIt ? found : undefined;
}

/** The other end of a run may move, too: with half of it left between the two it never runs backwards. */
const leavesHalf = ({ at, other }: RunEnd, t: number): boolean =>
  isInside(t) && (t - other) / (at - other) >= 0.5;

/** A place of a curve with the direction of one unit in which it is followed, its speed by the parameter and how it bends to the left. */
interface Tangent {
  readonly at: Point;
  readonly unit: Point;
  readonly speed: number;
  readonly bend: number;
}

function tangentAt(s: Segment, t: number, way: 1 | -1): Tangent {
  const d = derivativeAt(s, t);
  const length = norm(d.x, d.y);
  return {
    at: pointAt(s, t),
    unit: { x: (way * d.x) / length, y: (way * d.y) / length },
    speed: way * length,
    bend: (way * cross(d, secondDerivativeAt(s, t))) / length ** 3,
  };
}

/** How much the parameters change to where the parabolas at two places cross with a turn of that sign, or to where they come nearest. */
function toParabolas(a: Tangent, b: Tangent, turn: number): { before: number; after: number } | undefined {
  // The second curve is looked at the way the first one goes: they may meet in a point, one coming and the other going back.
  const along = dot(a.unit, b.unit) < 0 ? -1 : 1;
  const slope = along * cross(a.unit, b.unit);
  const gap = subtract(b.at, a.at);
  const [ahead, beside] = [dot(gap, a.unit), cross(a.unit, gap)];
  // The second curve's height over the first is c + p x + k x² / 2 at x along the first.
  const c = beside - slope * ahead + (along * b.bend * ahead * ahead) / 2;
  const p = slope - along * b.bend * ahead;
  const k = along * b.bend - a.bend;
  const q = Math.sign(turn) * along * Math.sqrt(Math.max(0, p * p - 2 * k * c));
  const x = p * q > 0 ? (-2 * c) / (p + q) : (q - p) / k;
  return Number.isFinite(x) ? { before: x / a.speed, after: (along * (x - ahead)) / b.speed } : undefined;
}
