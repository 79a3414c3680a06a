// The lower or upper silhouette of shapes around a wall: the line that goes once around it and closes, as the edge of all that
// lies beyond it.

import { moveSegment } from '../../geometry/affine.ts';
import { type Contour, line, type Segment, type Shape } from '../../geometry/contour.ts';
import { fitCurve } from '../../geometry/fit.ts';
import { directed, signedArea } from '../../geometry/measure.ts';
import { dot, type Point } from '../../geometry/point.ts';
import { filledShapes } from '../../geometry/regions.ts';
import { chordCount, derivativeAt, partOf, pointAt } from '../../geometry/segment.ts';
import { chordTolerance, fitTolerance } from '../../geometry/tolerance.ts';
import { turnover } from '../../geometry/turnover.ts';
import { type FlatWall, girthAt, levelAngle, toFlat, toWall, turnMotion } from '../../unroll/flat-wall.ts';
import { levelLine } from '../../unroll/template.ts';
import { comesAgain } from '../guide/wall-patch.ts';
import { seenEdges } from './hidden-edges.ts';

export interface SilhouetteOptions {
  readonly wall: FlatWall;
  /** `foot`: the lower silhouette, what lies beyond it being all above; `lip`: the upper, and all below. */
  readonly side: 'foot' | 'lip';
  /** How far up or down the wall what lies beyond reaches, mm along. */
  readonly until: number;
  /** The turns that are looked at: more than one whole turn, so that both ends of a piece are the same line. */
  readonly turns: { readonly from: number; readonly to: number };
}

/** A place of the silhouette where a shape begins or ends, by its turn. */
interface End {
  readonly turn: number;
  readonly along: number;
}

interface Reach {
  readonly from: End;
  readonly to: End;
}

/** How far a line between two shapes goes on within them, so that no hair is left, mm. */
const within = 0.005;

/**
 * The area beyond the silhouette of shapes, each given once, in the flat wall's frame: their edges and everything up (or down) the wall
 * from them. Where nothing is above (below) a place of the wall, the silhouette goes from the end of one shape to the beginning of the
 * next, rising evenly with the turn. Curves stay curves.
 */
export function beyondSilhouette(shapes: readonly Shape[], options: SilhouetteOptions): Shape[] {
  const { wall, side, turns } = options;
  const outer = shapes.flatMap((shape) => directed(shape).slice(0, 1));
  const reaches = outer.map((contour) => reachOf(contour, wall));
  const lines = outer.map((contour) => facingParts(contour, options));
  const edges = lines.flatMap((parts) =>
    comesAgain.flatMap((k) => {
      const motion = turnMotion(wall, k);
      const seen = { from: turns.from - k, to: turns.to - k };
      return parts.flatMap((part) => withinTurns(part, seen, wall)).map((s) => moveSegment(motion, s));
    }),
  );
  // Of a pattern most edges lie beyond others, and all that is swept is combined at once.
  const swept = seenEdges(edges, wall, side).map((s) => sweep(s, options));
  const bridges = gapsBetween(reaches).flatMap((gap) =>
    comesAgain.flatMap((k) => bridge(gap, k, options).map((s) => sweep(s, options))),
  );
  const contours = [...swept, ...bridges].flatMap((contour) => directed({ contours: [contour] }));
  return filledShapes(contours, 'nonzero', chordTolerance);
}

/** Places on a segment where its direction around the wall is looked at. */
const steps = 16;

/** A hair's turn is no part of an edge, mm. */
const least = 1e-7;

/** The parts of a contour that run around the wall one way, the way of an edge that faces the foot (or the lip). */
function facingParts({ segments }: Contour, { wall, side }: SilhouetteOptions): Segment[] {
  const isFacing = (s: Segment, t: number): boolean => {
    const angle = levelAngle(wall, toWall(wall, pointAt(s, t)).turn);
    const around = dot(derivativeAt(s, t), { x: Math.cos(angle), y: Math.sin(angle) });
    return side === 'foot' ? around < 0 : around > 0;
  };
  return segments.flatMap((s) => {
    const parts: Segment[] = [];
    // A little within its ends, where a curve may run straight up the wall.
    const at = (i: number) => Math.min(1 - 1e-6, Math.max(1e-6, i / steps));
    let from = 0;
    let facing = isFacing(s, at(0));
    const take = (to: number) => {
      const part = partOf(s, from, to);
      if (facing && Math.hypot(part.to.x - part.from.x, part.to.y - part.from.y) > least) parts.push(part);
      from = to;
      facing = !facing;
    };
    for (let i = 1; i <= steps; i++)
      if (isFacing(s, at(i)) !== facing) take(turnover((t) => isFacing(s, t), at(i - 1), at(i)));
    take(1);
    return parts;
  });
}

/**
 * What of a part that runs around the wall one way lies between two turns. Past them it is of no use, and on a sheet of more than half a
 * ring it would come to lie where other turns are.
 */
function withinTurns(
  s: Segment,
  { from, to }: SilhouetteOptions['turns'],
  wall: FlatWall,
): readonly Segment[] {
  const turnAt = (t: number) => toWall(wall, pointAt(s, t)).turn;
  const [first, last] = [turnAt(0), turnAt(1)];
  if (Math.max(first, last) < from || Math.min(first, last) > to) return [];
  const placeOf = (turn: number): number | undefined =>
    turn > Math.min(first, last) && turn < Math.max(first, last)
      ? turnover((t) => turnAt(t) < turn, 0, 1)
      : undefined;
  const [low, high] = first < last ? [placeOf(from), placeOf(to)] : [placeOf(to), placeOf(from)];
  return low === undefined && high === undefined ? [s] : [partOf(s, low ?? 0, high ?? 1)];
}

/** All that a line passes when it goes straight up (or down) the wall. */
function sweep(s: Segment, { wall, until }: SilhouetteOptions): Contour {
  const [from, to] = [toWall(wall, s.from).turn, toWall(wall, s.to).turn];
  const end = levelLine(wall, until, to, from).segments;
  const [first, last] = [end[0]?.from ?? s.to, end.at(-1)?.to ?? s.from];
  return { closed: true, segments: [s, line(s.to, first), ...end, line(last, s.from)] };
}

/** The ends of a contour around the wall. */
export function reachOf({ segments }: Contour, wall: FlatWall): Reach {
  const places = segments.flatMap((s) => {
    const count = chordCount(s, 1e-4);
    return Array.from({ length: count }, (_, i) => toWall(wall, pointAt(s, i / count)));
  });
  const first = places[0] ?? { turn: 0, along: 0 };
  return {
    from: places.reduce((a, b) => (b.turn < a.turn ? b : a), first),
    to: places.reduce((a, b) => (b.turn > a.turn ? b : a), first),
  };
}

const turned = ({ turn, along }: End, by: number): End => ({ turn: turn + by, along });

/** The turns, around the wall, that no shape reaches over: from the end of one to the beginning of the next. */
function gapsBetween(reaches: readonly Reach[]): readonly Reach[] {
  const sorted = reaches
    .map(({ from, to }) => {
      const back = -Math.floor(from.turn);
      return { from: turned(from, back), to: turned(to, back) };
    })
    .sort((a, b) => a.from.turn - b.from.turn);
  const furthest = (ends: readonly End[]): End | undefined =>
    ends.length === 0 ? undefined : ends.reduce((a, b) => (b.turn > a.turn ? b : a));
  let reached = furthest(sorted.map(({ to }) => turned(to, -1)));
  const gaps: Reach[] = [];
  for (const { from, to } of sorted) {
    if (reached && from.turn > reached.turn) gaps.push({ from: reached, to: from });
    if (!reached || to.turn > reached.turn) reached = to;
  }
  return gaps;
}

/** The line over a gap, so much of it as is looked at, the way an edge runs that faces the same side. */
function bridge(
  { from, to }: Reach,
  again: number,
  { wall, side, turns }: SilhouetteOptions,
): readonly Segment[] {
  const hair = within / girthAt(wall, (from.along + to.along) / 2);
  const rise = (to.along - from.along) / (to.turn - from.turn);
  const start = Math.max(from.turn + again - hair, turns.from);
  const end = Math.min(to.turn + again + hair, turns.to);
  if (end <= start) return [];
  const alongAt = (turn: number) => from.along + (turn - again - from.turn) * rise;
  const [a, b] = side === 'foot' ? [end, start] : [start, end];
  const turnAt = (t: number) => a + (b - a) * t;
  const point = (t: number): Point => toFlat(wall, { turn: turnAt(t), along: alongAt(turnAt(t)) });
  const derivative = (t: number): Point => {
    const angle = levelAngle(wall, turnAt(t));
    const [across, up] = [(b - a) * girthAt(wall, alongAt(turnAt(t))), (b - a) * rise];
    return {
      x: across * Math.cos(angle) + up * Math.sin(angle),
      y: across * Math.sin(angle) - up * Math.cos(angle),
    };
  };
  return fitCurve({ point, derivative, mayBeStraight: true }, fitTolerance).segments;
}

/** Outer contours alone: what is enclosed is not looked through. */
export const filledOf = (shapes: readonly Shape[]): Shape[] =>
  filledShapes(
    shapes.flatMap((shape) => directed(shape).slice(0, 1)),
    'nonzero',
    chordTolerance,
  ).filter((shape) => shape.contours[0] && signedArea(shape.contours[0]) !== 0);
