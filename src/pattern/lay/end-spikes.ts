// Spikes that a cut leaves where it runs along an edge of the art: no film, and two lines that a blade would follow as one.
import type { Segment } from '../../geometry/contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { cross, distance, dot } from '../../geometry/point.ts';
import { directionAt, partOf, pointAt, withEnds } from '../../geometry/segment.ts';
import { precision } from '../../geometry/tolerance.ts';

/** Tangent of the angle under which two sides are the way there and back: two degrees. */
const backAgain = Math.tan(Math.PI / 90);

/** A closed row of segments, its points that a cut is one side of taken back to where they are as wide as the precision. */
export function withoutEndSpikes(
  ring: readonly Segment[],
  isCut: (segment: Segment) => boolean,
): readonly Segment[] {
  const cuts = new Set<Segment>();
  const isEnd = (segment: Segment): boolean => cuts.has(segment) || isCut(segment);
  let segments = ring;
  // Each turn takes one segment off; two straight lines would enclose nothing.
  while (segments.length > 3) {
    const left = firstCutBack(segments, isEnd);
    if (!left) break;
    for (const segment of left.cuts) cuts.add(segment);
    segments = left.segments;
  }
  return segments;
}

function firstCutBack(segments: readonly Segment[], isEnd: (segment: Segment) => boolean) {
  for (const [i, after] of segments.entries()) {
    const before = segments.at(i - 1);
    if (!before || !turnsBack(before, after) || !(isEnd(before) || isEnd(after))) continue;
    const left = cutBack([...segments.slice(i), ...segments.slice(0, i)], isEnd);
    if (left) return left;
  }
  return undefined;
}

function turnsBack(before: Segment, after: Segment): boolean {
  const [came, goes] = [directionAt(before, 1), directionAt(after, 0)];
  const along = dot(came, goes);
  return along < 0 && Math.abs(cross(came, goes)) < -along * backAgain;
}

/**
 * A row of segments with the spike between its last and its first one cut back: the shorter side is left out, and of cut and art it is
 * the cut that is moved to meet the other. `cuts`: what was made of cuts. Undefined where the sides are farther apart.
 */
function cutBack(
  row: readonly Segment[],
  isEnd: (segment: Segment) => boolean,
): { readonly segments: readonly Segment[]; readonly cuts: readonly Segment[] } | undefined {
  const [after, next] = row;
  const [previous, before] = [row.at(-2), row.at(-1)];
  if (!after || !next || !previous || !before) return undefined;
  const isBeforeLonger = distance(before.from, before.to) >= distance(after.from, after.to);
  const [longer, shorter] = isBeforeLonger ? [before, after] : [after, before];
  const finder = new NearestFinder([{ closed: false, segments: [longer] }]);
  if (!finder.find(pointAt(shorter, 0.5), precision)) return undefined;
  const end = isBeforeLonger ? after.to : before.from;
  const at = finder.find(end, 2 * precision);
  if (!at || at.t <= 0 || at.t >= 1) return undefined;
  const node = isEnd(longer) ? end : pointAt(longer, at.t);
  if (isBeforeLonger) {
    const left = withEnds(partOf(longer, 0, at.t), longer.from, node);
    const beyond = withEnds(next, node, next.to);
    return {
      segments: [beyond, ...row.slice(2, -1), left],
      cuts: [...(isEnd(longer) ? [left] : []), ...(isEnd(next) ? [beyond] : [])],
    };
  }
  const left = withEnds(partOf(longer, at.t, 1), node, longer.to);
  const beyond = withEnds(previous, previous.from, node);
  return {
    segments: [left, ...row.slice(1, -2), beyond],
    cuts: [...(isEnd(longer) ? [left] : []), ...(isEnd(previous) ? [beyond] : [])],
  };
}
