// This wall laid flat: exact maps between a place on the wall and a place on the sheet, both ways.

import type { Affine } from '../geometry/affine.ts';
import { type Box, boxOfPoints } from '../geometry/box.ts';
import type { Point } from '../geometry/point.ts';
import { norm } from '../geometry/point.ts';
import { atanc, sinc } from '../geometry/sinc.ts';

/** A place on the wall. `turn`: 0 to 1 around, counter-clockwise seen from above, 0 at the seam; past 1 is the overlap. */
export interface WallPoint {
  readonly turn: number;
  /** mm up the wall from the foot corner, measured on the wall. */
  readonly along: number;
}

/** The box of places on a wall: x in turns, y in mm along it. Of however many: a spread of them would run out of stack. */
export const wallBox = (places: readonly WallPoint[]): Box =>
  boxOfPoints(places.map(({ turn, along }) => ({ x: turn, y: along })));

/**
 * A straight wall laid flat: cylinder or cone, wider at the lip or at the foot.
 *
 * The flat frame is the sheet seen from outside the vessel, mm, y down, foot down, turn growing to the right:
 * its origin is where `turn` 0.5 meets the reference height, so the sector lies symmetric about x = 0.
 * A cylinder is the case `curvature` 0. The maps are written so that nothing is lost on the way there:
 * no large radius is ever subtracted from another.
 */
export interface FlatWall {
  /** Sine of the half angle: growth of the radius per mm along; positive when wider at the lip. */
  readonly sine: number;
  /** The reference height, along the wall, mm. */
  readonly reference: number;
  /** Radius of the sheet's mid-thickness from the axis, at the reference height, mm. */
  readonly radius: number;
  /** Curvature of the level line through the reference height once laid flat: sine / radius, per mm. */
  readonly curvature: number;
  /** The turn in the middle of a piece of it, laps counted: opposite it no film lies. Half a turn if left out. */
  readonly middle?: number;
}

/**
 * The flat wall of a sheet whose mid-thickness has this radius at the reference height.
 * Needs radius > 0 and |sine| < 1.
 */
export const flatWall = (radius: number, sine: number, reference: number): FlatWall => ({
  sine,
  reference,
  radius,
  curvature: sine / radius,
});

/** Radius of the sheet's mid-thickness at a height along the wall, mm. */
export const radiusAt = (wall: FlatWall, along: number): number =>
  wall.radius + (along - wall.reference) * wall.sine;

/** Girth at a height: mm of sheet per whole turn there. The scale of the map across; up the wall the scale is 1. */
export const girthAt = (wall: FlatWall, along: number): number => 2 * Math.PI * radiusAt(wall, along);

/** Angle of the laid-out sector for one whole turn, radians; positive when the wall is wider at the lip. */
export const sweep = (wall: FlatWall): number => 2 * Math.PI * wall.sine;

/**
 * Where a place on the wall comes to lie on the sheet.
 * Source: development of a cone, a point at slant distance rho and azimuth lambda goes to
 * (rho sin(lambda sin a), rho cos(lambda sin a)); rewritten about the reference height (references, 4.1).
 */
export function toFlat(wall: FlatWall, { turn, along }: WallPoint): Point {
  const u = 2 * Math.PI * wall.radius * (turn - 0.5);
  const v = along - wall.reference;
  const angle = wall.curvature * u;
  const half = angle / 2;
  return {
    x: u * sinc(angle) + v * Math.sin(angle),
    y: u * sinc(half) * Math.sin(half) - v * Math.cos(angle),
  };
}

/** As `toFlat`, of many: turn and along one after the other become x and y, where they stand. */
export function toFlatAll({ radius, reference, curvature }: FlatWall, places: Float64Array): void {
  for (let i = 0; i < places.length; i += 2) {
    const u = 2 * Math.PI * radius * ((places[i] ?? 0) - 0.5);
    const v = (places[i + 1] ?? 0) - reference;
    const angle = curvature * u;
    const half = angle / 2;
    places[i] = u * sinc(angle) + v * Math.sin(angle);
    places[i + 1] = u * sinc(half) * Math.sin(half) - v * Math.cos(angle);
  }
}

/**
 * The place on the wall of a place on the sheet: the inverse of `toFlat`, for angles within half a turn of the
 * piece's middle line either way.
 */
export function toWall(wall: FlatWall, { x, y }: Point): WallPoint {
  const k = wall.curvature;
  const up = 1 - k * y;
  const across = k * x;
  const near = up > 0 ? (x / up) * atanc(across / up) : Math.atan2(across, up) / k;
  const u = near + beyondHalf(wall, k * near);
  const rho = norm(across, up);
  const v = (k * (x * x + y * y) - 2 * y) / (rho + 1);
  return { turn: 0.5 + u / (2 * Math.PI * wall.radius), along: wall.reference + v };
}

/** What brings an angle about the point of the cone to within half a turn of the piece's middle line, as mm around at the reference height. */
function beyondHalf(wall: FlatWall, angle: number): number {
  const off = angle - levelAngle(wall, wall.middle ?? 0.5);
  return Math.abs(off) > Math.PI ? (-Math.sign(off) * 2 * Math.PI) / wall.curvature : 0;
}

/** The angle by which the level direction is turned on the sheet at this turn, radians, y down. */
export const levelAngle = (wall: FlatWall, turn: number): number => sweep(wall) * (turn - 0.5);

/** The motion of the sheet that carries every wall point to the one `turn` further around. Exact, and rigid. */
export function turnMotion(wall: FlatWall, turn: number): Affine {
  const u = 2 * Math.PI * wall.radius * turn;
  const angle = wall.curvature * u;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return {
    a: cos,
    b: sin,
    c: -sin,
    d: cos,
    e: u * sinc(angle),
    f: u * sinc(angle / 2) * Math.sin(angle / 2),
  };
}
