// From traced boundaries back to curves.
import { moveSegment, translation } from './affine.ts';
import type { Source } from './chords.ts';
import { untraced } from './combine.ts';
import { type Contour, line, type Segment, type Shape } from './contour.ts';
import { NearestFinder } from './nearest.ts';
import { between, cross, distance, dot, norm, type Point, subtract } from './point.ts';
import { derivativeAt, directionAt, partOf, pointAt, withEnds } from './segment.ts';
import { chordTolerance, shortestPart, sliverWidth } from './tolerance.ts';
import type { Run, TracedRegion, TracedRing } from './traced.ts';

/** Gives the segment a run is part of. */
export type SegmentOf = (run: Run) => Segment;

/** The segments of numbered sources, as `combine` numbers them. */
export const segmentsOf = (sources: readonly Source[]): SegmentOf => {
  // Runs of one source follow one another, and segments that are kept as numbers are made anew each time.
  let [contour, segments]: [Contour | undefined, readonly Segment[]] = [undefined, []];
  return (run) => {
    const source = sources[run.source];
    if (source && source.chords.contour !== contour) {
      contour = source.chords.contour;
      segments = contour.segments;
    }
    const segment = source && segments[run.segment];
    if (!segment) return line(run.from, run.to);
    const { x, y } = source.by;
    return x === 0 && y === 0 ? segment : moveSegment(translation(x, y), segment);
  };
};

/** Where one run ends and the next begins, with the parameters of that place on each. */
export interface Joint {
  readonly point: Point;
  readonly before: number;
  readonly after: number;
}

const isWholeEnd = (t: number): boolean => t === 0 || t === 1;

/**
 * A run that ends this near to a node ends at it, mm: rounding moves corners by less. Were only what ends on the very node taken for it,
 * a hair of rounding would decide between two places, here one and in a copy the other.
 */
const atNode = 0.002;

/** The parameter that a run ends at: its curve's own node where it ends there; `other` is the parameter of its other end. */
function settledEnd(s: Segment, t: number, other: number): number {
  if (isWholeEnd(t)) return t;
  const whole = t < 0.5 ? 0 : 1;
  const node = placeAt(s, whole);
  // A run of next to no length would be lost.
  const isLong = distance(placeAt(s, other), node) > 2 * atNode;
  return isLong && distance(placeAt(s, t), node) <= atNode ? whole : t;
}

/**
 * The place where two runs meet: a drawn node where one of them ends at one, else the crossing of the two curves,
 * so that combining twice does not wander.
 */
export const jointOf = (before: Run, after: Run, segmentOf: SegmentOf): Joint =>
  jointBetween(before, segmentOf(before), after, segmentOf(after));

function jointBetween(before: Run, a: Segment, after: Run, b: Segment): Joint {
  const t1 = settledEnd(a, before.t1, before.t0);
  const t0 = settledEnd(b, after.t0, after.t1);
  const endA = placeAt(a, t1);
  const endB = placeAt(b, t0);
  const joint = (point: Point): Joint => ({ point, before: t1, after: t0 });
  if (isWholeEnd(t1) && isWholeEnd(t0))
    return joint(distance(endA, endB) < 1e-9 ? endA : between(endA, endB, 0.5));
  if (isWholeEnd(t1)) return joint(endA);
  if (isWholeEnd(t0)) return joint(endB);
  return crossing(a, t1, b, t0) ?? joint(between(endA, endB, 0.5));
}

/** As `pointAt`; at a curve's ends its own nodes. */
const placeAt = (s: Segment, t: number): Point => {
  if (t === 0) return s.from;
  return t === 1 && s.kind === 'cubic' ? s.to : pointAt(s, t);
};

/** Newton's method on A(s) = B(t) from a close start; undefined where the curves run side by side. */
function crossing(a: Segment, s: number, b: Segment, t: number): Joint | undefined {
  const start = pointAt(a, s);
  let [before, after] = [s, t];
  for (let i = 0; i < 6; i++) {
    const gap = subtract(pointAt(b, after), pointAt(a, before));
    const da = derivativeAt(a, before);
    const db = derivativeAt(b, after);
    const turn = cross(da, db);
    if (Math.abs(turn) < 1e-3 * norm(da.x, da.y) * norm(db.x, db.y)) return undefined;
    before += cross(gap, db) / turn;
    after += cross(gap, da) / turn;
  }
  const inside = before > 0 && before < 1 && after > 0 && after < 1;
  const point = inside ? pointAt(a, before) : start;
  const settled =
    inside && distance(point, pointAt(b, after)) < 1e-7 && distance(point, start) < 20 * chordTolerance;
  return settled ? { point, before, after } : undefined;
}

/** A run with the curve it became, and the joints at its ends. */
export interface RebuiltRun {
  readonly run: Run;
  readonly segment: Segment;
  readonly start: Joint;
  readonly end: Joint;
}

/** The curves of runs that follow one another, from the joint before the first to the joint after the last. */
export const runSegments = (
  runs: readonly Run[],
  joints: readonly Joint[],
  segmentOf: SegmentOf,
): readonly RebuiltRun[] => withoutSpikes(withoutRounding(rebuilt(runs, joints, runs.map(segmentOf))));

function rebuilt(runs: readonly Run[], joints: readonly Joint[], segments: readonly Segment[]): RebuiltRun[] {
  const found: RebuiltRun[] = [];
  runs.forEach((run, i) => {
    const [start, end, segment] = [joints[i], joints[i + 1], segments[i]];
    if (!start || !end || !segment || (start.after === end.before && run.source !== untraced)) return;
    const part = partOf(segment, start.after, end.before);
    found.push({ run, start, end, segment: withEnds(part, start.point, end.point) });
  });
  return found;
}

/** Such parts are far shorter than the runs beside them: a shape that is itself as small keeps all it has. */
const farShorter = 0.1;

const lengthOf = ({ start, end }: RebuiltRun): number => distance(start.point, end.point);

/** Whether a run is a part left by rounding, next to `beside`, which goes on in its place. */
const isRounding = (item: RebuiltRun, beside: RebuiltRun): boolean =>
  lengthOf(item) < Math.min(shortestPart, farShorter * lengthOf(beside)) &&
  (item.run.source === untraced || !(isWholeEnd(item.run.t0) && isWholeEnd(item.run.t1)));

/**
 * Runs in order without parts that are rounding: the run before each, or of the first the one after, takes its place. Of
 * several in a row only one is left out, for many are a way of their own.
 */
function withoutRounding(runs: readonly RebuiltRun[]): readonly RebuiltRun[] {
  const kept: RebuiltRun[] = [];
  let left: RebuiltRun | undefined;
  for (const [i, item] of runs.entries()) {
    const before = kept.at(-1);
    const beside = before ?? runs[i + 1];
    if (!left && beside && isRounding(item, beside)) {
      left = item;
      if (before) kept[kept.length - 1] = movedTo(before, before.start.point, item.end.point);
      continue;
    }
    kept.push(left && !before ? movedTo(item, left.start.point, item.end.point) : item);
    left = undefined;
  }
  return kept;
}

/** A way back this close to the way there encloses nothing, mm. */
const spikeWidth = 0.002;

/** Of the two runs of a spike the longer one must go on by at least this share of itself. */
const leastLeft = 0.02;

/**
 * Runs in order without spikes: where two edges all but coincide, a traced boundary may go on along one of them to its node and
 * come back along the other. The longer of the two runs is cut back to where the shorter one began or ends.
 */
function withoutSpikes(runs: readonly RebuiltRun[]): readonly RebuiltRun[] {
  const kept: RebuiltRun[] = [];
  for (const item of runs) {
    const before = kept.at(-1);
    const left = before && turnsBack(before, item) ? cutBack(before, item) : undefined;
    if (left) kept[kept.length - 1] = left;
    else kept.push(item);
  }
  return kept;
}

const isWholeRun = ({ run }: RebuiltRun): boolean => isWholeEnd(run.t0) && isWholeEnd(run.t1);

/** Whether a run leaves the way the one before it came, to within two degrees. */
function turnsBack(before: RebuiltRun, after: RebuiltRun): boolean {
  if (isWholeRun(before) && isWholeRun(after)) return false;
  const [came, goes] = [directionAt(before.segment, 1), directionAt(after.segment, 0)];
  const along = dot(came, goes);
  return along < 0 && Math.abs(cross(came, goes)) < -along / 30;
}

/** What is left of two runs that are a spike; undefined where they are none after all. */
function cutBack(before: RebuiltRun, after: RebuiltRun): RebuiltRun | undefined {
  const isBeforeLonger = lengthOf(before) >= lengthOf(after);
  const [longer, shorter] = isBeforeLonger ? [before, after] : [after, before];
  const finder = new NearestFinder([{ closed: false, segments: [longer.segment] }]);
  const end = isBeforeLonger ? after.end : before.start;
  const at = finder.find(end.point, spikeWidth);
  if (!at || !finder.find(pointAt(shorter.segment, 0.5), spikeWidth)) return undefined;
  const [t0, t1] = isBeforeLonger ? [0, at.t] : [at.t, 1];
  if (t1 - t0 < leastLeft) return undefined;
  const { run, start, end: finish } = longer;
  const t = start.after + at.t * (finish.before - start.after);
  const [from, to] = isBeforeLonger ? [start.point, end.point] : [end.point, finish.point];
  return {
    run,
    segment: withEnds(partOf(longer.segment, t0, t1), from, to),
    start: isBeforeLonger ? start : { ...end, after: t },
    end: isBeforeLonger ? { ...end, before: t } : finish,
  };
}

const movedTo = ({ run, segment, start, end }: RebuiltRun, from: Point, to: Point): RebuiltRun => ({
  run,
  segment: withEnds(segment, from, to),
  start: { ...start, point: from },
  end: { ...end, point: to },
});

/** The curves of a closed ring of runs, in order. */
export function ringSegments(runs: readonly Run[], segmentOf: SegmentOf): readonly RebuiltRun[] {
  const segments = runs.map(segmentOf);
  const joints = runs.map((run, i) => {
    const before = i === 0 ? runs.length - 1 : i - 1;
    const [a, b] = [segments[before], segments[i]];
    return a && b ? jointBetween(runs[before] ?? run, a, run, b) : jointOf(run, run, segmentOf);
  });
  const all = rebuilt(runs, [...joints, ...joints.slice(0, 1)], segments);
  const kept = withoutSpikes(withoutRounding(all));
  // Two straight lines enclose nothing.
  return kept.length > 2 || kept.some(({ segment }) => segment.kind === 'cubic') ? kept : all;
}

/** The contour that a closed ring of runs describes. */
const ringContour = (runs: readonly Run[], segmentOf: SegmentOf): Contour => ({
  closed: true,
  segments: ringSegments(runs, segmentOf).map(({ segment }) => segment),
});

/** What rounding leaves between edges that touch: too narrow, on the mean, to be film. */
export const isSliver = (ring: TracedRing, width = sliverWidth): boolean =>
  ring.area < (width * ring.perimeter) / 2;

/** Regions as shapes, slivers narrower than `width` left out. */
export const toShapes = (regions: readonly TracedRegion[], segmentOf: SegmentOf, width: number): Shape[] =>
  regions
    .filter(({ outer }) => !isSliver(outer, width))
    .map(({ outer, holes }) => ({
      contours: [outer, ...holes.filter((hole) => !isSliver(hole, width))].map((ring) =>
        ringContour(ring.runs, segmentOf),
      ),
    }));
