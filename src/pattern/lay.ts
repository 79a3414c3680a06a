// Lays: how a pattern drawn on the plane is spread over a wall whose girth changes.
import type { Point } from '../geometry/point.ts';
import { type FlatWall, girthAt, levelAngle, toFlat, type WallPoint } from '../unroll/flat-wall.ts';
import { expm1c, log1pc } from '../unroll/sinc.ts';

/**
 * A lay maps the laid pattern (x: mm around at the reference height, y: mm up from the band's foot end) onto the wall.
 * Level lines stay level and a step of the girth in x is once around, in every lay.
 */
export interface Lay {
  readonly wall: FlatWall;
  readonly toAlong: (y: number) => number;
  readonly fromAlong: (along: number) => number;
  /** d along / d y */
  readonly stretchUp: (y: number) => number;
}

/** Rows stay equally far apart; motifs widen with the girth. The equidistant conic projection, seen from the flat side. */
export const evenLay = (wall: FlatWall, from: number): Lay => ({
  wall,
  toAlong: (y) => from + y,
  fromAlong: (along) => along - from,
  stretchUp: () => 1,
});

/**
 * Every angle is kept; motifs grow with the girth. The conformal conic projection: equal steps of the pattern are
 * equal steps of ln(radius). Source: J. P. Snyder, Map Projections: A Working Manual (USGS PP 1395, 1987), ch. 15,
 * composed with the inverse Mercator.
 */
export function conformalLay(wall: FlatWall, from: number): Lay {
  const k = wall.curvature;
  const height = (along: number) => (along - wall.reference) * log1pc((along - wall.reference) * k);
  const foot = height(from);
  return {
    wall,
    toAlong: (y) => wall.reference + (y + foot) * expm1c((y + foot) * k),
    fromAlong: (along) => height(along) - foot,
    stretchUp: (y) => Math.exp((y + foot) * k),
  };
}

export const toWallPoint = (lay: Lay, p: Point): WallPoint => ({
  turn: p.x / girthAt(lay.wall, lay.wall.reference),
  along: lay.toAlong(p.y),
});

/** Where a point of the laid pattern comes to lie on the sheet. */
export const toSheet = (lay: Lay, p: Point): Point => toFlat(lay.wall, toWallPoint(lay, p));

/** What a small step in the laid pattern becomes on the sheet: the derivative of `toSheet`. */
export function stepOnSheet(lay: Lay, at: Point, by: Point): Point {
  const { turn, along } = toWallPoint(lay, at);
  const level = (by.x * girthAt(lay.wall, along)) / girthAt(lay.wall, lay.wall.reference);
  const up = by.y * lay.stretchUp(at.y);
  const angle = levelAngle(lay.wall, turn);
  return {
    x: level * Math.cos(angle) + up * Math.sin(angle),
    y: level * Math.sin(angle) - up * Math.cos(angle),
  };
}
