// What a wall that curves asks of flat film: the cone that asks the least stretch without gathering.
import { convexChains, leastSummit } from '../geometry/convex-chains.ts';
import type { Point } from '../geometry/point.ts';
import { longestRun, reaches } from '../geometry/reaches.ts';

/** A wall by its radius at places along it, from the foot up, close together. */
export interface RadiusAlong {
  readonly along: number;
  readonly radius: number;
}

/** A cone laid to a band: its radius is `radius` + along * `sine`, both of the surface the film lies on. */
export interface LaidCone {
  readonly radius: number;
  readonly sine: number;
}

/** The strain of film around the wall at a place: 0.02 is stretched by two in a hundred, negative is gathered. */
export const strainAt = (cone: LaidCone, { along, radius }: RadiusAlong): number =>
  radius / (cone.radius + along * cone.sine) - 1;

/** A sheet can't be steeper than level; a cone is kept from being quite as flat as a plate. */
const steepest = 0.999;

/**
 * The cone that asks the least stretch of film laid on the band, gathering nowhere more than `gather`; what `gather`
 * allows and stretch does not need is left unused. Lengths up the wall are kept; only girths differ, so the strain at
 * a place is the wall's girth over the cone's, less 1. Needs two places or more.
 *
 * Without gathering the cone lies under all places, and the most the wall is over it is to be least. With three
 * unknowns three places touch: the cone runs along an edge of the hull under the places, or is an edge of the hull
 * over them drawn in until it lies under all. A larger cone asks the same part less everywhere, so gathering only makes
 * the same cone larger.
 *
 * For a band of width w about the equator of a ball of radius R it gives 1/cos(w/2R) - 1, near w²/8R²: the edge excess
 * of a strip on a curved surface, K w²/8 (derived from the geodesic-strip metric).
 */
export function leastStretchCone(
  wall: readonly RadiusAlong[],
  gather: number,
): { readonly cone: LaidCone; readonly stretch: number; readonly gathered: number } {
  const { cone, ratio } = tightestCone(wall);
  const larger = Math.max(1, Math.min(1 / (1 - gather), ratio, steepest / Math.abs(cone.sine)));
  return {
    cone: { radius: cone.radius * larger, sine: cone.sine * larger },
    stretch: Math.max(0, ratio / larger - 1),
    gathered: 1 - 1 / larger,
  };
}

/** The cone under all places that the wall is the least over, and how many times it is over it at most. */
function tightestCone(wall: readonly RadiusAlong[]): { readonly cone: LaidCone; readonly ratio: number } {
  const { above, below } = convexChains(wall.map(({ along, radius }) => ({ x: along, y: radius })));
  const under = leastSummit(below, above, (a, b, p) => over(p.y, lineAt(a, b, p)));
  const drawnIn = leastSummit(above, below, (a, b, p) => over(lineAt(a, b, p), p.y));
  if (!under || !drawnIn) return { cone: { radius: wall[0]?.radius ?? 0, sine: 0 }, ratio: 1 };
  return under.summit <= drawnIn.summit
    ? { cone: coneThrough(under.a, under.b, 1), ratio: under.summit }
    : { cone: coneThrough(drawnIn.a, drawnIn.b, 1 / drawnIn.summit), ratio: drawnIn.summit };
}

/** A line that meets the axis within the band is no cone to lay it on. */
const over = (radius: number, cone: number): number => (radius > 0 && cone > 0 ? radius / cone : Infinity);

const lineAt = (a: Point, b: Point, p: Point): number => a.y + ((b.y - a.y) / (b.x - a.x)) * (p.x - a.x);

const coneThrough = (a: Point, b: Point, part: number): LaidCone => {
  const sine = (b.y - a.y) / (b.x - a.x);
  return { radius: (a.y - sine * a.x) * part, sine: sine * part };
};

/** Limits are met when they are exceeded by no more than rounding. */
const rounding = 1e-9;

/**
 * The widest band of the wall that one piece of film can take: stretched by no more than `stretch` and gathered by no
 * more than `gather`; of equal ones the lowest. The wall's points must be close together: the band ends on one of
 * them. Undefined for fewer than two.
 */
export function widestBand(
  wall: readonly RadiusAlong[],
  limits: { readonly stretch: number; readonly gather: number },
): { readonly from: number; readonly to: number } | undefined {
  const places = wall.map(({ along }) => along);
  const run = longestRun(places, liesDownTo(wall, limits), 0, wall.length - 1);
  return run && { from: places[run.start] ?? 0, to: places[run.end] ?? 0 };
}

/** For each place, the last one up to which one piece lies down within the limits. */
const liesDownTo = (
  wall: readonly RadiusAlong[],
  { stretch, gather }: { readonly stretch: number; readonly gather: number },
): readonly number[] =>
  reaches(
    wall.length,
    (start, end) => leastStretchCone(wall.slice(start, end + 1), gather).stretch <= stretch + rounding,
  );
