// Where a blade starts a closed line: on a straight run, where its end meets its beginning unseen.
import type { Contour, Segment } from '../geometry/contour.ts';
import { cross, distance, dot } from '../geometry/point.ts';
import { derivativeAt, directionAt, partOf } from '../geometry/segment.ts';

/** A straight run at least this long is started on in its middle, mm: room for a drag knife to come round on either side. */
const longEnough = 4;

/** Angle at a node up to which the line goes on smoothly, radians: 5 degrees. */
const smooth = (5 * Math.PI) / 180;

/** A curve is cut in two for a start only where it is at least this long, mm: no short curves are made. */
const leastCurve = 2;

/** The same line begun at another node. */
const begunAt = ({ segments }: Contour, index: number): Contour => ({
  closed: true,
  segments: [...segments.slice(index), ...segments.slice(0, index)],
});

/** The same line begun in the middle of one of its segments. */
const begunInside = ({ segments }: Contour, index: number): Contour => {
  const cut = segments[index];
  if (!cut) return { closed: true, segments };
  return {
    closed: true,
    segments: [
      partOf(cut, 0.5, 1),
      ...segments.slice(index + 1),
      ...segments.slice(0, index),
      partOf(cut, 0, 0.5),
    ],
  };
};

const lengthOf = (s: Segment): number => distance(s.from, s.to);

/** The angle by which a line turns at the start of a segment, radians. */
function turnBefore(before: Segment, after: Segment): number {
  const [one, other] = [directionAt(before, 1), directionAt(after, 0)];
  return Math.abs(Math.atan2(cross(one, other), dot(one, other)));
}

/** How much a curve bends in all, radians: between its ends and its middle. */
function bend(s: Segment): number {
  if (s.kind === 'line') return 0;
  const directions = [directionAt(s, 0), derivativeAt(s, 0.5), directionAt(s, 1)];
  return directions.slice(1).reduce((sum, to, i) => {
    const from = directions[i] ?? to;
    return sum + Math.abs(Math.atan2(cross(from, to), dot(from, to)));
  }, 0);
}

/** The index of the largest of some values; the first of equals. */
const largestAt = (values: readonly number[]): number =>
  values.reduce((best, value, i) => (value > (values[best] ?? -Infinity) + 1e-9 ? i : best), 0);

/** How gently a line runs on over a node, mm of curve for a radian of its bend; nothing where it has a corner. */
function gentleAt(segments: readonly Segment[], index: number): number {
  const [before, after] = [segments.at(index - 1), segments[index]];
  if (!before || !after || turnBefore(before, after) > smooth) return 0;
  return Math.min(lengthOf(before), lengthOf(after)) / (1 + bend(before) + bend(after));
}

/**
 * A closed line begun where a blade starts well: in the middle of its longest straight run; without one, at the node
 * over which it runs on most gently; where all nodes are corners, in the middle of its gentlest curve. No curve is
 * changed; a line, or a curve between corners, may be parted in two. The same line turned or moved begins at the same
 * place of it. An open line is as it was.
 */
export function startedWell(contour: Contour): Contour {
  const { closed, segments } = contour;
  if (!closed || segments.length === 0) return contour;
  const straight = segments.map((s) => (s.kind === 'line' ? lengthOf(s) : 0));
  const run = largestAt(straight);
  if ((straight[run] ?? 0) >= longEnough) return begunInside(contour, run);
  const nodes = segments.map((_, i) => gentleAt(segments, i));
  const node = largestAt(nodes);
  if ((nodes[node] ?? 0) > 0) return begunAt(contour, node);
  const curves = segments.map((s) => lengthOf(s) / (1 + bend(s)));
  const curve = largestAt(curves);
  const gentlest = segments[curve];
  return gentlest && lengthOf(gentlest) >= leastCurve ? begunInside(contour, curve) : contour;
}
