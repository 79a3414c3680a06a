// Flat bands found by the straightedge: where one straightedge as long as the band touches the wall with no gap.
import { convexChains, leastSummit } from '../geometry/convex-chains.ts';
import type { Point } from '../geometry/point.ts';
import { longestRun, reaches } from '../geometry/reaches.ts';
import type { Band } from './flat-band.ts';

/** A point of the profile: distance from the axis, height. */
interface ProfileCorner {
  readonly along: number;
  readonly radius: number;
  readonly height: number;
}

/** Gap under a straightedge that still counts as touching, mm. Ours: two thicknesses of film. */
export const standardFlatGap = 0.15;

/** A flat band shorter than this is of no use to anybody, mm. */
const shortest = 3;

/**
 * The least gap one straightedge leaves on a stretch of the profile, mm: over all ways to lay it against the outside,
 * the largest distance from it to the wall. It may touch along an edge of the stretch's hull, or rock on one point of
 * it while it is parallel to an edge of the far side: the width of a convex set is reached with one of its two lines
 * along an edge. Needs two points or more, from the foot up.
 * Source: M. E. Houle, G. T. Toussaint, Computing the width of a set, IEEE PAMI 10 (1988) 761, from memory.
 */
export const straightedgeGap = (stretch: readonly ProfileCorner[]): number => gapOf(stretch.map(toPoint));

const toPoint = ({ radius, height }: ProfileCorner): Point => ({ x: height, y: radius });

function gapOf(stretch: readonly Point[]): number {
  const { above, below } = convexChains(stretch);
  const along = leastSummit(above, below, (a, b, p) => distanceFrom(b, a, p));
  const rocking = leastSummit(below, above, distanceFrom);
  return Math.min(along?.summit ?? 0, rocking?.summit ?? 0);
}

/** Distance of p to the left of the line from a to b. */
function distanceFrom(a: Point, b: Point, p: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  // Not Math.hypot: this is the inmost line of the search, and hypot alone took most of its time.
  return (dx * (p.y - a.y) - dy * (p.x - a.x)) / Math.sqrt(dx * dx + dy * dy);
}

/**
 * Flat bands of a profile given as close points from the foot up, the longest first, then the longest of what is left
 * on either side; listed from the foot up. Each is as long as one straightedge that leaves no gap over `gap`, and no
 * shorter than 3 mm. Between close points a band may run a little past a corner; given the corners alone it ends at one.
 */
export function flatBandsOf(points: readonly ProfileCorner[], gap: number): Band[] {
  const outline = points.map(toPoint);
  const places = points.map(({ along }) => along);
  const ends = reaches(points.length, (start, end) => gapOf(outline.slice(start, end + 1)) <= gap);
  const bandsBetween = (first: number, last: number): Band[] => {
    const run = longestRun(places, ends, first, last);
    if (!run) return [];
    const band = { from: places[run.start] ?? 0, to: places[run.end] ?? 0 };
    if (band.to - band.from < shortest) return [];
    return [...bandsBetween(first, run.start), band, ...bandsBetween(run.end, last)];
  };
  return bandsBetween(0, points.length - 1);
}
