// The seam gap: what the two ends of a delivered wrap miss each other by once rolled onto the wall.

import { type Affine, moveContour, movePoint } from '../../geometry/affine.ts';
import { hullBox } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import type { Contour, Segment } from '../../geometry/contour.ts';
import { lineCrossings } from '../../geometry/crossings.ts';
import { most } from '../../geometry/extremes.ts';
import { extentAlong } from '../../geometry/measure.ts';
import type { NearestFinder } from '../../geometry/nearest.ts';
import { cross, distance, dot, norm, type Point, subtract } from '../../geometry/point.ts';
import { directionAt, partOf, pointAt } from '../../geometry/segment.ts';
import { precision } from '../../geometry/tolerance.ts';
import { degrees } from '../../lengths/angle.ts';
import { atMost, type Check } from '../check.ts';
import type { ProvedPiece } from '../written/piece.ts';
import { layDown, onward, rollUp } from '../written/rolled-cone.ts';

export interface SeamGap {
  /** Largest distance between an edge of the art at one end and the same edge at the other, mm. */
  readonly position: number;
  /** Largest angle between the two, degrees. */
  readonly tangentDeg: number;
  /** Edges of the art that cross the seam, counted at both ends. */
  readonly crossings: number;
}

/** What is measured: the art of one layer, with what finds the nearest of it. */
export interface SeamLayer {
  readonly contours: readonly Contour[];
  readonly finder: NearestFinder;
}

export type SeamPiece = Pick<ProvedPiece, 'cone' | 'band'> & {
  /** The line that both ends follow, where it is not the one at turn 0. */
  readonly line?: Contour;
};

/** The largest angle the two ends may differ by at the seam, degrees: what a hand's eye still sees as one line. */
export const tangentLimitDeg = 0.1;

/** How far away the other end's edge is looked for, mm; where none is found, the gap is reported as this. */
const reach = 25;

/** Curves this close to an edge's place are candidates for going on as it, mm: twice the gap allowed. */
const nodeReach = 0.02;

/** The way an edge runs. */
interface Heading {
  readonly direction: Point;
  /** How far off the written place stands that tells its direction, mm, as `leverOf` has it; left out, it is far. */
  readonly lever?: number;
}

/** An edge of the art at a place, and the way it runs there. */
export interface Edge extends Heading {
  readonly at: Point;
  /** Of a corner that stands on the line, the way of its other side: the other end may have that one alone. */
  readonly corner?: Heading;
}

/** Places are written to this, mm. */
const written = 0.0001;

/** How far off the place stands that tells the way a segment runs at `t`, mm: at a cubic's ends the handle, of a line its other end. */
function leverOf(s: Segment, t: number): number {
  const { x, y } = directionAt(s, t);
  return norm(x, y) / (s.kind === 'cubic' ? 3 : 1);
}

/** By a lever as long as this, mm, rounding turns nothing that is seen: 0.03 degrees. */
const long = 0.25;

/**
 * An angle to a billionth of a degree: JavaScript leaves the last bit of an arctangent to its engine, and the page's report
 * differed in it from the command's.
 */
const angleOf = (opposite: number, adjacent: number): number =>
  Math.round(degrees(Math.atan2(opposite, adjacent)) * 1e9) / 1e9;

/**
 * What the rounding of written places may turn a curve by, degrees: both ends of the lever lie up to half a step off either way, which
 * is 0.08 degrees of 0.1 mm.
 */
const turnedByRounding = (lever = long): number => (lever < long ? angleOf(Math.SQRT2 * written, lever) : 0);

/** Where the art's edges cross the line up the wall at a turn, inside the finished band. */
function edgesAt(contours: readonly Contour[], { cone, band }: SeamPiece, turn: number): Edge[] {
  const foot = layDown(cone, { turn, along: band.from });
  const up = subtract(layDown(cone, { turn, along: band.to }), foot);
  const length = dot(up, up);
  const isBeside = (p: Point) => cross(up, subtract(p, foot));
  const mayCross = (s: Segment) => {
    const [first, last] = [isBeside(s.from), isBeside(s.to)];
    if (s.kind === 'line') return first > 0 !== last > 0 || first === 0 || last === 0;
    const [second, third] = [isBeside(s.c1), isBeside(s.c2)];
    return Math.min(first, second, third, last) <= 0 && Math.max(first, second, third, last) >= 0;
  };
  const found: Edge[] = [];
  for (const contour of contours) {
    if (onlyTouches(contour, foot, up)) continue;
    const { segments } = contour;
    const crossings: Crossing[] = [];
    segments.forEach((s, i) => {
      if (!mayCross(s)) return;
      for (const t of lineCrossings(s, foot, up)) {
        const at = pointAt(s, t);
        const share = dot(subtract(at, foot), up) / length;
        // The line up the wall crosses a wide sector twice: once here, once past the cone's point.
        if (share >= 0 && share <= 1 && Math.abs(rollUp(cone, at).turn - turn) < 0.25)
          crossings.push({ i, t, edge: { at, ...headingOf(s, t), ...cornerAt(segments, i, at) } });
      }
    });
    found.push(...withoutTouches(contour, crossings, foot, up));
  }
  return found;
}

/** Where the i-th segment of an outline crosses a line. */
interface Crossing {
  readonly i: number;
  readonly t: number;
  readonly edge: Edge;
}

/** An outline goes past a line and back between two crossings of these many segments or fewer, where it only touches it. */
const mostOfTouch = 3;

/** Crossings in their order around an outline, without two between which it only touches the line. */
function withoutTouches(
  { segments }: Contour,
  crossings: readonly Crossing[],
  through: Point,
  up: Point,
): readonly Edge[] {
  const isTouch = (one: Crossing, other: Crossing): boolean => {
    const part = partBetween(segments, one, other);
    return part.length > 0 && isWithin({ closed: false, segments: part }, through, up);
  };
  const touched = new Set<Crossing>();
  crossings.forEach((one, k) => {
    const other = crossings[(k + 1) % crossings.length];
    // Of a node on the line both its sides cross it, in one place.
    if (!other || touched.has(one) || touched.has(other) || distance(one.edge.at, other.edge.at) < written)
      return;
    if (isTouch(one, other)) touched.add(one).add(other);
  });
  return crossings.filter((one) => !touched.has(one)).map(({ edge }) => edge);
}

/** An outline from one crossing on to another; nothing where that is not a short way. */
function partBetween(segments: readonly Segment[], one: Crossing, other: Crossing): readonly Segment[] {
  const [first, last] = [segments[one.i], segments[other.i]];
  const steps = (other.i - one.i + segments.length) % segments.length;
  if (!first || !last || steps >= mostOfTouch) return [];
  if (steps === 0) return one.t < other.t ? [partOf(first, one.t, other.t)] : [];
  const between = Array.from({ length: steps - 1 }, (_, k) => segments[(one.i + 1 + k) % segments.length]);
  return [partOf(first, one.t, 1), ...between.filter((s) => s !== undefined), partOf(last, 0, other.t)];
}

const headingOf = (s: Segment, t: number): Heading => ({
  direction: directionAt(s, t),
  lever: leverOf(s, t),
});

/** An edge that turns by more than this at a node has a corner there, degrees. */
export const cornerDeg = 5;

/** The other side of the corner that the i-th segment has at a place, if it has one there. */
function cornerAt(segments: readonly Segment[], i: number, at: Point): Pick<Edge, 'corner'> {
  const s = segments[i];
  const [before, after] = [segments.at(i - 1), segments[(i + 1) % segments.length]];
  if (!s || !before || !after) return {};
  const [here, there] =
    distance(s.from, at) < touching
      ? [headingOf(s, 0), headingOf(before, 1)]
      : [headingOf(s, 1), headingOf(after, 0)];
  const isAt = Math.min(distance(s.from, at), distance(s.to, at)) < touching;
  return isAt && degreesBetween(here.direction, there.direction) > cornerDeg ? { corner: there } : {};
}

/** Art that reaches less than this past the seam only touches it, mm: at the other end it lies in the waste, where none is kept. */
export const touching = 0.002;

/** Whether an outline lies on one side of a line through a point but for what no eye sees: its curves, whose handles may stand farther out. */
function onlyTouches(contour: Contour, through: Point, up: Point): boolean {
  const [right, left] = sidesOf(contour, through, up);
  return left <= touching || right <= touching;
}

/** Whether no eye sees that some of an outline is beside a line at all. */
const isWithin = (contour: Contour, through: Point, up: Point): boolean =>
  Math.max(...sidesOf(contour, through, up)) <= touching;

/** How far an outline reaches to the right and to the left of a line through a point, mm. */
function sidesOf(contour: Contour, through: Point, { x, y }: Point): readonly [number, number] {
  const length = norm(x, y);
  const beside = { x: -y / length, y: x / length };
  const at = dot(through, beside);
  const [right, left] = extentAlong(contour, beside);
  return [at - right, left - at];
}

/** Chords of a winding line are this long at the most, mm: 0.0004 mm off a bend of 3 mm. */
const chordLength = 0.1;

/** Where the art's edges cross a line, inside the finished band. */
function edgesOn(contours: readonly Contour[], { cone, band }: SeamPiece, line: Contour): Edge[] {
  const segments = contours.flatMap((contour) => contour.segments);
  const boxes = segments.map((s) => hullBox([{ closed: false, segments: [s] }]));
  const index = new BoxIndex(boxes.length, (add) => {
    for (const { minX, minY, maxX, maxY } of boxes) add(minX, minY, maxX, maxY);
  });
  return line.segments.flatMap((side) => {
    const count = Math.max(1, Math.ceil(distance(side.from, side.to) / chordLength));
    return Array.from(
      { length: count },
      (_, i) => [pointAt(side, i / count), pointAt(side, (i + 1) / count)] as const,
    ).flatMap(([from, to]) => {
      const by = subtract(to, from);
      const near = index.meeting(
        Math.min(from.x, to.x),
        Math.min(from.y, to.y),
        Math.max(from.x, to.x),
        Math.max(from.y, to.y),
      );
      return near.flatMap((k) => {
        const s = segments[k];
        if (!s) return [];
        return lineCrossings(s, from, by).flatMap((t): Edge[] => {
          const at = pointAt(s, t);
          const share = dot(subtract(at, from), by) / dot(by, by);
          const { along } = rollUp(cone, at);
          const isOn = share >= 0 && share <= 1 && along >= band.from && along <= band.to;
          return isOn ? [{ at, direction: directionAt(s, t), lever: leverOf(s, t) }] : [];
        });
      });
    });
  });
}

const degreesBetween = (a: Point, b: Point): number => angleOf(Math.abs(cross(a, b)), Math.abs(dot(a, b)));

export interface Miss {
  readonly position: number;
  readonly tangentDeg: number;
}

/**
 * What one edge misses the other end's art by. At a node, which may be a corner, several curves meet: an edge is held
 * against the one of them it goes on as.
 */
export function missOf(edge: Edge, others: NearestFinder): Miss {
  const close = others.within(edge.at, nodeReach);
  const places = close.length > 0 ? close : [others.find(edge.at, 1) ?? others.find(edge.at, reach)];
  const found = places.filter((place) => place !== undefined);
  if (found.length === 0) return { position: reach, tangentDeg: 90 };
  const sides = edge.corner ? [edge, edge.corner] : [edge];
  return {
    position: Math.min(...found.map((place) => place.distance)),
    tangentDeg: Math.min(
      ...sides.flatMap((side) => found.map(({ segment, t }) => turnedBy(side, headingOf(segment, t)))),
    ),
  };
}

/** The angle between two ways, degrees, less what rounding may turn them by. */
const turnedBy = (one: Heading, other: Heading): number =>
  Math.max(
    0,
    degreesBetween(one.direction, other.direction) -
      turnedByRounding(one.lever) -
      turnedByRounding(other.lever),
  );

function moved(motion: Affine, { at, corner, ...heading }: Edge): Edge {
  const turned = <T extends Heading>(one: T): T => ({
    ...one,
    direction: movePoint({ ...motion, e: 0, f: 0 }, one.direction),
  });
  return { ...turned(heading), at: movePoint(motion, at), ...(corner ? { corner: turned(corner) } : {}) };
}

/** Roll the art of a piece onto the wall and compare its two ends, layer by layer. */
export function seamGap(piece: SeamPiece, layers: readonly SeamLayer[]): SeamGap {
  const ends = [
    { turn: 0, motion: onward(piece.cone, 1) },
    { turn: 1, motion: onward(piece.cone, -1) },
  ];
  const { line } = piece;
  const edgesOf = (contours: readonly Contour[], turn: number) =>
    line
      ? edgesOn(contours, piece, moveContour(onward(piece.cone, turn), line))
      : edgesAt(contours, piece, turn);
  const misses = layers.flatMap(({ contours, finder }) =>
    ends.flatMap(({ turn, motion }) =>
      edgesOf(contours, turn).map((edge) => missOf(moved(motion, edge), finder)),
    ),
  );
  return gapFrom(misses);
}

const gapFrom = (misses: readonly Miss[]): SeamGap => ({
  position: most(
    misses.map(({ position }) => position),
    0,
  ),
  tangentDeg: most(
    misses.map(({ tangentDeg }) => tangentDeg),
    0,
  ),
  crossings: misses.length,
});

/** What the art of two panels misses each other by at the joint between them, at this turn of the frame of both. */
export function jointGap(piece: SeamPiece, turn: number, sides: readonly [SeamLayer, SeamLayer]): SeamGap {
  const [one, other] = sides;
  return gapFrom([
    ...edgesAt(one.contours, piece, turn).map((edge) => missOf(edge, other.finder)),
    ...edgesAt(other.contours, piece, turn).map((edge) => missOf(edge, one.finder)),
  ]);
}

/** The worst of several pieces. */
export const worseGap = (a: SeamGap, b: SeamGap): SeamGap => ({
  position: Math.max(a.position, b.position),
  tangentDeg: Math.max(a.tangentDeg, b.tangentDeg),
  crossings: a.crossings + b.crossings,
});

export const seamChecks = ({ position, tangentDeg, crossings }: SeamGap): Check[] => [
  atMost({
    rule: 'seam-position',
    value: position,
    limit: precision,
    unit: 'mm',
    says: `what the art's two ends miss each other by at the seam, over ${crossings} crossings`,
  }),
  atMost({
    rule: 'seam-direction',
    value: tangentDeg,
    limit: tangentLimitDeg,
    unit: 'degrees',
    says: 'angle between the two ends of a line at the seam',
  }),
];
