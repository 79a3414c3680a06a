// Is any line cut twice?
import type { Contour, Segment } from '../../geometry/contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { cross, distance, dot } from '../../geometry/point.ts';
import { directionAt, pointAt } from '../../geometry/segment.ts';
import { precision } from '../../geometry/tolerance.ts';
import { atMost, type Check } from '../check.ts';

/** Lines that run within this of one another the same way are one line to a blade, mm. */
const beside = precision;

/** Tangent of the angle up to which two lines run the same way: one degree. */
const sameWay = Math.tan(Math.PI / 180);

/** Shorter ones are a node of their neighbours, mm. */
const shortest = 0.1;

const roughLength = (s: Segment): number =>
  s.kind === 'line'
    ? distance(s.from, s.to)
    : distance(s.from, s.c1) + distance(s.c1, s.c2) + distance(s.c2, s.to);

/** Whether another line runs along a segment at a place of it. */
function runsAlong(segment: Segment, at: number, finder: NearestFinder): boolean {
  const way = directionAt(segment, at);
  return finder.within(pointAt(segment, at), beside, segment).some(({ segment: other, t }) => {
    const otherWay = directionAt(other, t);
    return Math.abs(cross(way, otherWay)) < sameWay * Math.abs(dot(way, otherWay));
  });
}

/**
 * Whether another line runs along a segment in its middle and on to a quarter of it: a hole that touches the border in one place only runs
 * its way there. What runs along less of it is itself along this one throughout.
 */
const isDoubled = (segment: Segment, finder: NearestFinder): boolean =>
  roughLength(segment) >= shortest &&
  runsAlong(segment, 1 / 2, finder) &&
  (runsAlong(segment, 1 / 4, finder) || runsAlong(segment, 3 / 4, finder));

/** Lines of one layer that run along another of it. */
export function doubledLines(contours: readonly Contour[]): number {
  const finder = new NearestFinder(contours);
  return finder.segments.filter((segment) => isDoubled(segment, finder)).length;
}

export const doubledCheck = (value: number): Check =>
  atMost({
    rule: 'lines-once',
    value,
    limit: 0,
    unit: 'count',
    says: 'lines that run along another of the same layer, so that the blade would cut there twice',
  });
