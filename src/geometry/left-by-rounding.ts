// What rounding leaves where two edges all but coincide, taken off a traced boundary: parts too short to run any way, and spikes.
import { untraced } from './combine.ts';
import { NearestFinder } from './nearest.ts';
import { cross, distance, dot, type Point } from './point.ts';
import { isWholeEnd, type RebuiltRun } from './rebuilt-run.ts';
import { directionAt, partOf, pointAt, withEnds } from './segment.ts';
import { shortestPart } from './tolerance.ts';

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
export function withoutRounding(runs: readonly RebuiltRun[]): readonly RebuiltRun[] {
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
export function withoutSpikes(runs: readonly RebuiltRun[]): readonly RebuiltRun[] {
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
