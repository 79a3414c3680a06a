// From traced boundaries back to curves.
import { moveSegment, translation } from './affine.ts';
import type { Source } from './chords.ts';
import { type Run, type TracedRegion, type TracedRing, untraced } from './combine.ts';
import { type Contour, line, type Segment, type Shape } from './contour.ts';
import { between, cross, distance, norm, type Point, subtract } from './point.ts';
import { derivativeAt, partOf, pointAt, withEnds } from './segment.ts';
import { chordTolerance, sliverWidth } from './tolerance.ts';

/** Gives the segment a run is part of. */
export type SegmentOf = (run: Run) => Segment;

/** The segments of numbered sources, as `combine` numbers them. */
export const segmentsOf =
  (sources: readonly Source[]): SegmentOf =>
  (run) => {
    const source = sources[run.source];
    const segment = source?.chords.contour.segments[run.segment];
    if (!source || !segment) return line(run.from, run.to);
    const { x, y } = source.by;
    return x === 0 && y === 0 ? segment : moveSegment(translation(x, y), segment);
  };

/** Where one run ends and the next begins, with the parameters of that place on each. */
export interface Joint {
  readonly point: Point;
  readonly before: number;
  readonly after: number;
}

const isWholeEnd = (t: number): boolean => t === 0 || t === 1;

/**
 * The place where two runs meet: a drawn node where one of them ends at one, else the crossing of the two curves,
 * so that combining twice does not wander.
 */
export function jointOf(before: Run, after: Run, segmentOf: SegmentOf): Joint {
  const a = segmentOf(before);
  const b = segmentOf(after);
  const endA = pointAt(a, before.t1);
  const endB = pointAt(b, after.t0);
  const keep = { before: before.t1, after: after.t0 };
  if (isWholeEnd(before.t1) && isWholeEnd(after.t0))
    return { point: distance(endA, endB) < 1e-9 ? endA : between(endA, endB, 0.5), ...keep };
  if (isWholeEnd(before.t1)) return { point: endA, ...keep };
  if (isWholeEnd(after.t0)) return { point: endB, ...keep };
  return crossing(a, before.t1, b, after.t0) ?? { point: between(endA, endB, 0.5), ...keep };
}

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
export function runSegments(
  runs: readonly Run[],
  joints: readonly Joint[],
  segmentOf: SegmentOf,
): RebuiltRun[] {
  return runs.flatMap((run, i) => {
    const start = joints[i];
    const end = joints[i + 1];
    if (!start || !end || (start.after === end.before && run.source !== untraced)) return [];
    const part = partOf(segmentOf(run), start.after, end.before);
    return [{ run, start, end, segment: withEnds(part, start.point, end.point) }];
  });
}

/** The joints of a closed ring: before each run, and the first again after the last. */
function ringJoints(runs: readonly Run[], segmentOf: SegmentOf): readonly Joint[] {
  const joints = runs.map((run, i) => jointOf(runs.at(i - 1) ?? run, run, segmentOf));
  return [...joints, ...joints.slice(0, 1)];
}

/** The curves of a closed ring of runs, in order. */
export function ringSegments(runs: readonly Run[], segmentOf: SegmentOf): RebuiltRun[] {
  const joints = ringJoints(runs, segmentOf);
  return runSegments(runs, joints, segmentOf);
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
