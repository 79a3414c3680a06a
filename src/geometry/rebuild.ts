// From traced boundaries back to curves.
import { moveSegment, translation } from './affine.ts';
import type { Source } from './chords.ts';
import { untraced } from './combine.ts';
import { type Contour, line, type Segment, type Shape } from './contour.ts';
import { jointCrossing } from './joint-crossing.ts';
import { withoutRounding, withoutSpikes } from './left-by-rounding.ts';
import { between, distance, type Point } from './point.ts';
import { isWholeEnd, type Joint, type RebuiltRun } from './rebuilt-run.ts';
import { partOf, pointAt, withEnds } from './segment.ts';
import { sliverWidth } from './tolerance.ts';
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
  const found = jointCrossing(
    { segment: a, at: t1, other: before.t0 },
    { segment: b, at: t0, other: after.t1 },
    after.turn,
  );
  return found ?? joint(between(endA, endB, 0.5));
}

/** As `pointAt`; at a curve's ends its own nodes. */
const placeAt = (s: Segment, t: number): Point => {
  if (t === 0) return s.from;
  return t === 1 && s.kind === 'cubic' ? s.to : pointAt(s, t);
};

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
