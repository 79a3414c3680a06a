// Gores: lens-shaped pieces that together follow a wall one flat piece can't.
import type { Band } from '../blank/flat-band.ts';
import { type Contour, cubic, line, reverseSegment, type Segment } from '../geometry/contour.ts';
import { distance, type Point, subtract } from '../geometry/point.ts';
import { withEnds } from '../geometry/segment.ts';
import { sinc } from '../geometry/sinc.ts';

/** The wall under the gores: radius and its slope by distance along, on the surface the film lies on. */
export interface GoreWall {
  readonly at: (along: number) => {
    readonly radius: number;
    /** d radius / d along. */
    readonly slope: number;
  };
}

/**
 * How a gore's level lines are drawn. `straight`: across it, the published gore of a globe of equal width; its area is
 * the wall's, its ends are not quite level. `arcs`: on the cone that touches the wall there, each at its own place up
 * the middle (the polyconic): exact on a cone, and the ends lie level on the wall.
 */
export type GoreLevels = 'straight' | 'arcs';

export interface GoreOptions {
  readonly count: number;
  readonly band: Band;
  /** Closest spacing of the nodes up the edge, mm. */
  readonly spacing: number;
  readonly levels: GoreLevels;
  /** Corners of a wall between which it is straight, mm along; with levels `straight`. None if left out. */
  readonly corners?: readonly number[];
  /** Extra past the right edge of this gore, of the last one in a comb, mm along its levels. None if left out. */
  readonly overlap?: number;
}

/** Half the width of a gore at a place: its share of the girth. Source: equal gores of a globe, (pi R / N) cos(lat). */
export const halfWidth = (radius: number, count: number): number => (Math.PI * radius) / count;

/** A half level line: how far it goes to the side, how far it falls below its middle, and the angle it turns by. */
export interface HalfLevel {
  readonly aside: number;
  readonly fall: number;
  readonly turn: number;
}

/**
 * Half a gore's level line at a place. Source: an arc of length h on the cone that touches a wall of slope s there, of
 * slant r/s, turns by pi s / N (J. P. Snyder, Map Projections: A Working Manual, 1987, polyconic, p. 124, from memory).
 */
export function halfLevel(
  wall: GoreWall,
  along: number,
  { count, levels }: Pick<GoreOptions, 'count' | 'levels'>,
  overlap = 0,
): HalfLevel {
  const { radius, slope } = wall.at(along);
  const half = halfWidth(radius, count) + overlap;
  const beyond = overlap === 0 ? 0 : (overlap * slope) / radius;
  const turn = levels === 'arcs' ? halfWidth(slope, count) + beyond : 0;
  return { aside: half * sinc(turn), fall: (half * turn * sinc(turn / 2) ** 2) / 2, turn };
}

/** Step of the central difference that gives an edge its direction, as a part of the spacing of its nodes. */
const nudge = 1e-3;

/** At a corner an edge is looked at from its own side, so far from it, mm. */
const beside = 1e-9;

/** A part of an edge that bends nowhere sharply, and from where to where its wall may be looked at. */
interface SmoothPart {
  readonly band: Band;
  readonly seen: Band;
}

function smoothParts({ from, to }: Band, corners: readonly number[]): SmoothPart[] {
  const inside = corners
    .filter((along) => along > from + beside && along < to - beside)
    .sort((a, b) => a - b);
  const isCorner = (end: number) => corners.some((along) => Math.abs(along - end) <= beside);
  const ends = [from, ...inside, to];
  return ends.slice(1).map((end, i) => {
    const start = ends[i] ?? from;
    return {
      band: { from: start, to: end },
      seen: {
        from: i === 0 && !isCorner(from) ? -Infinity : start + beside,
        to: i === inside.length && !isCorner(to) ? Infinity : end - beside,
      },
    };
  });
}

/**
 * The right edge of a gore from the foot up, flat, mm: x from its middle line, y down, foot end of the band at 0.
 * `overlap` moves it out along the levels.
 */
export function goreEdge(wall: GoreWall, options: GoreOptions, overlap = 0): Segment[] {
  const parts = smoothParts(options.band, options.corners ?? []);
  const edge = parts.flatMap((part) => edgePart(wall, options, part, overlap));
  return edge.map((s, i) => withEnds(s, s.from, edge[i + 1]?.from ?? s.to));
}

function edgePart(
  wall: GoreWall,
  options: GoreOptions,
  { band, seen }: SmoothPart,
  overlap: number,
): Segment[] {
  const steps = Math.max(2, Math.ceil((band.to - band.from) / options.spacing));
  const step = (band.to - band.from) / steps;
  const sighted = (along: number) => Math.min(seen.to, Math.max(seen.from, along));
  const place = (along: number): Point => {
    const { aside, fall } = halfLevel(wall, along, options, overlap);
    return { x: aside, y: options.band.from - along + fall };
  };
  const nodes = Array.from({ length: steps + 1 }, (_, i) => {
    const along = band.from + i * step;
    const [low, high] = [sighted(along - nudge * step), sighted(along + nudge * step)];
    const across = subtract(place(high), place(low));
    const third = step / (3 * (high - low));
    return { at: place(sighted(along)), reach: { x: across.x * third, y: across.y * third } };
  });
  return nodes.slice(1).map((b, i) => {
    const a = nodes[i] ?? b;
    return cubic(
      a.at,
      { x: a.at.x + a.reach.x, y: a.at.y + a.reach.y },
      { x: b.at.x - b.reach.x, y: b.at.y - b.reach.y },
      b.at,
    );
  });
}

const mirrorPoint = ({ x, y }: Point): Point => ({ x: -x, y });

/** A segment on the other side of the middle line, walked the same way up. */
export const mirrored = (s: Segment): Segment =>
  s.kind === 'line'
    ? line(mirrorPoint(s.from), mirrorPoint(s.to))
    : cubic(mirrorPoint(s.from), mirrorPoint(s.c1), mirrorPoint(s.c2), mirrorPoint(s.to));

/**
 * The arc between two points, which it leaves and reaches turned by so much, x towards y, radians. Source: the usual
 * cubic for an arc, handles of 4/3 tan(angle/4) radii; off by 2.8e-4 of the radius for a quarter turn, by under 1e-6
 * for 30 degrees.
 */
export function arcBetween(from: Point, to: Point, turnFrom: number, turnTo: number): Segment {
  const angle = turnTo - turnFrom;
  if (Math.abs(angle) < 1e-9) return line(from, to);
  const handle = ((4 / 3) * Math.tan(angle / 4) * distance(from, to)) / (2 * Math.sin(angle / 2));
  return cubic(
    from,
    { x: from.x + handle * Math.cos(turnFrom), y: from.y + handle * Math.sin(turnFrom) },
    { x: to.x - handle * Math.cos(turnTo), y: to.y - handle * Math.sin(turnTo) },
    to,
  );
}

/** A gore's level line at a place, from its left edge to its right one, in the drawing of its outline. */
export function goreLevel(wall: GoreWall, options: GoreOptions, along: number): Segment {
  const [left, right] = [0, options.overlap ?? 0].map((overlap) => halfLevel(wall, along, options, overlap));
  const up = options.band.from - along;
  const point = ({ aside, fall }: HalfLevel, sign: number): Point => ({ x: sign * aside, y: up + fall });
  if (!left || !right) throw new Error('a level has two ends');
  return arcBetween(point(left, -1), point(right, 1), -left.turn, right.turn);
}

/**
 * The outline of one gore, flat, mm: its middle line is the y axis at true length, y down, the band's foot end at y 0;
 * its width at every place, on its level line, is its share of the girth there, and the overlap. Edges are cubics with
 * the edge's own directions. Closed; where the wall ends in a point so does the gore.
 */
export function goreOutline(wall: GoreWall, options: GoreOptions): Contour {
  return closedUp([
    goreLevel(wall, options, options.band.from),
    ...goreEdge(wall, options, options.overlap),
    reverseSegment(goreLevel(wall, options, options.band.to)),
    ...leftEdge(wall, options),
  ]);
}

/** The left edge of a gore, from the lip down. */
export const leftEdge = (wall: GoreWall, options: GoreOptions): Segment[] =>
  goreEdge(wall, options)
    .map((s) => reverseSegment(mirrored(s)))
    .reverse();

/** What has no length is left out, and every segment begins exactly where the one before ends. */
export function closedUp(segments: readonly Segment[]): Contour {
  const drawn = segments.filter((s) => distance(s.from, s.to) > 1e-9);
  return {
    closed: true,
    segments: drawn.map((s, i) => withEnds(s, s.from, (drawn[i + 1] ?? drawn[0] ?? s).from)),
  };
}

/**
 * The strain a gore asks of its film, over some places of the wall: as much as its edge, were its middle line at true
 * length, would be too long (where the wall bulges; the film is stretched up the middle until the edge lies down) or
 * too short (at a waist; its edge is stretched). Given by the wall's Gaussian curvature K, 1/mm², and the width w.
 * Source: K w²/8, of a strip on a curved surface, from the geodesic-strip metric 1 - K y²/2 (derived). Film left to
 * settle by itself would share it: a third stretched in the middle, two thirds gathered at the edge.
 */
export const goreStrain = (
  wall: GoreWall,
  curvature: (along: number) => number,
  count: number,
  places: readonly number[],
): number =>
  Math.max(
    0,
    ...places.map((along) => {
      const width = 2 * halfWidth(wall.at(along).radius, count);
      return (Math.abs(curvature(along)) * width * width) / 8;
    }),
  );

/** Fewest and most gores; more than these nobody cuts and lays. */
const fewestGores = 4;
const mostGores = 48;

/** Numbers of gores, or of darts, that are looked at. */
export const evenCounts = (): readonly number[] =>
  Array.from({ length: (mostGores - fewestGores) / 2 + 1 }, (_, i) => fewestGores + 2 * i);

/** Places up a band at which its strain is looked at. */
const looks = 200;

/**
 * The fewest gores, an even number from 4 to 48, whose film is nowhere stretched by more than `stretch` on the band.
 * Undefined where 48 are not enough.
 */
export function goresNeeded(
  wall: GoreWall,
  curvature: (along: number) => number,
  band: Band,
  stretch: number,
): number | undefined {
  const places = Array.from({ length: looks + 1 }, (_, i) => band.from + ((band.to - band.from) * i) / looks);
  return evenCounts().find((count) => goreStrain(wall, curvature, count, places) <= stretch);
}
