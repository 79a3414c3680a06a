// Lays: how a pattern drawn on the plane is spread over a wall whose girth changes.
import type { Point } from '../../geometry/point.ts';
import { expm1c, log1pc } from '../../geometry/sinc.ts';
import {
  type FlatWall,
  girthAt,
  levelAngle,
  radiusAt,
  toFlat,
  type WallPoint,
} from '../../unroll/flat-wall.ts';

/**
 * A lay maps the laid pattern (x: mm around where its scale is taken, y: mm up) onto the wall. Level lines stay level
 * and a step of `around` in x is once around, in every lay.
 */
export interface Lay {
  readonly wall: FlatWall;
  /** The girth at which the pattern has its stated size: x of one whole turn, mm. */
  readonly around: number;
  readonly toAlong: (y: number) => number;
  readonly fromAlong: (along: number) => number;
  /** d along / d y */
  readonly stretchUp: (y: number) => number;
}

/** Where a lay begins: a band in several pieces has one pattern, which goes on from piece to piece. */
export interface LayStart {
  /** Left out, the girth at the wall's own reference height. */
  readonly around?: number;
  /** The pattern's height at the piece's foot end. */
  readonly y?: number;
}

const aroundOf = (wall: FlatWall, { around }: LayStart): number => around ?? girthAt(wall, wall.reference);

/** Rows stay equally far apart; motifs widen with the girth. The equidistant conic projection, seen from the flat side. */
export function evenLay(wall: FlatWall, from: number, start: LayStart = {}): Lay {
  const { y: below = 0 } = start;
  return {
    wall,
    around: aroundOf(wall, start),
    toAlong: (y) => from + (y - below),
    fromAlong: (along) => below + (along - from),
    stretchUp: () => 1,
  };
}

/**
 * Every angle is kept; motifs grow with the girth. The conformal conic projection: equal steps of the pattern are
 * equal steps of ln(radius). Source: J. P. Snyder, Map Projections: A Working Manual (USGS PP 1395, 1987), ch. 15,
 * composed with the inverse Mercator. Written with the radius at the foot end, so that a cylinder needs no other form.
 */
export function conformalLay(wall: FlatWall, from: number, start: LayStart = {}): Lay {
  const { y: below = 0 } = start;
  const around = aroundOf(wall, start);
  const radius = around / (2 * Math.PI);
  const atFoot = radiusAt(wall, from);
  const growth = wall.sine / atFoot;
  return {
    wall,
    around,
    toAlong: (y) => from + (atFoot / radius) * (y - below) * expm1c(((y - below) * wall.sine) / radius),
    fromAlong: (along) => below + (radius / atFoot) * (along - from) * log1pc((along - from) * growth),
    stretchUp: (y) => (atFoot / radius) * Math.exp(((y - below) * wall.sine) / radius),
  };
}

export const toWallPoint = (lay: Lay, p: Point): WallPoint => ({
  turn: p.x / lay.around,
  along: lay.toAlong(p.y),
});

/** Where a point of the laid pattern comes to lie on the sheet. */
export const toSheet = (lay: Lay, p: Point): Point => toFlat(lay.wall, toWallPoint(lay, p));

/** What a small step in the laid pattern becomes on the sheet: the derivative of `toSheet`. */
export function stepOnSheet(lay: Lay, at: Point, by: Point): Point {
  const { turn, along } = toWallPoint(lay, at);
  const level = (by.x * girthAt(lay.wall, along)) / lay.around;
  const up = by.y * lay.stretchUp(at.y);
  const angle = levelAngle(lay.wall, turn);
  return {
    x: level * Math.cos(angle) + up * Math.sin(angle),
    y: level * Math.sin(angle) - up * Math.cos(angle),
  };
}
