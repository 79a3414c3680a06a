// Is any line cut twice?
import type { Contour, Segment } from '../../geometry/contour.ts';
import { segmentCount } from '../../geometry/kept-contour.ts';
import { cross, distance, dot } from '../../geometry/point.ts';
import { directionAt } from '../../geometry/segment.ts';
import { atMost, type Check } from '../check.ts';
import { beside, LinesAlong, sameWay } from './lines-along.ts';

/** Shorter ones are a node of their neighbours, mm. */
const shortest = 0.1;

const roughLength = (s: Segment): number =>
  s.kind === 'line'
    ? distance(s.from, s.to)
    : distance(s.from, s.c1) + distance(s.c1, s.c2) + distance(s.c2, s.to);

/**
 * Whether another line runs along a segment in its middle and on to a quarter of it: a hole that touches the border in one place only runs
 * its way there. What runs along less of it is itself along this one throughout.
 */
const isDoubled = (segment: Segment, lines: LinesAlong): boolean =>
  roughLength(segment) >= shortest &&
  lines.runsBy(segment, 1 / 2) &&
  (lines.runsBy(segment, 1 / 4) || lines.runsBy(segment, 3 / 4));

/** Whether a line goes on from the end of one segment into another without a corner. */
function goesOn(from: Segment, into: Segment): boolean {
  const [way, next] = [directionAt(from, 1), directionAt(into, 0)];
  return dot(way, next) > 0 && Math.abs(cross(way, next)) < sameWay * dot(way, next);
}

/**
 * Whether a segment is a side of a tip at its own end, or at its start: across at most a blunt end the outline comes back beside it, and
 * away from the tip both sides go on, without a corner, into lines that part. Such lines are one beside the other near any tip of a cusp;
 * that a node stands there makes no second cut of it.
 */
function isSideOfTip(outline: readonly Segment[], i: number, lines: LinesAlong): boolean {
  const at = (step: number): Segment | undefined => outline[(i + step + outline.length) % outline.length];
  const isBlunt = (one: Segment | undefined): boolean => !!one && roughLength(one) < beside;
  const parts = (before?: Segment, side?: Segment): boolean =>
    !!before && !!side && goesOn(before, side) && !lines.runsBy(before, 1 / 2);
  const partsAfter = (side?: Segment, after?: Segment): boolean =>
    !!after && !!side && goesOn(side, after) && !lines.runsBy(after, 1 / 2);
  const [back, start] = [isBlunt(at(1)) ? 2 : 1, isBlunt(at(-1)) ? -2 : -1];
  return (
    (parts(at(-1), at(0)) && partsAfter(at(back), at(back + 1))) ||
    (partsAfter(at(0), at(1)) && parts(at(start - 1), at(start)))
  );
}

/** Lines of one layer that run along another of it. */
export function doubledLines(contours: readonly Contour[]): number {
  const lines = new LinesAlong(contours);
  let first = 0;
  return contours.reduce((sum, contour) => {
    const outline = lines.segments.slice(first, first + segmentCount(contour));
    first += outline.length;
    const doubled = outline.filter(
      (segment, i) => isDoubled(segment, lines) && !isSideOfTip(outline, i, lines),
    );
    return sum + doubled.length;
  }, 0);
}

export const doubledCheck = (value: number): Check =>
  atMost({
    rule: 'lines-once',
    value,
    limit: 0,
    unit: 'count',
    says: 'lines that run along another of the same layer, so that the blade would cut there twice',
  });
