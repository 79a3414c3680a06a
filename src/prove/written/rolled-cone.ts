// Rolling a flat sheet up again: the proof's own formulas, so that a fault in the unrolling shows instead of cancelling.

import type { Affine } from '../../geometry/affine.ts';
import type { Point } from '../../geometry/point.ts';
import { norm } from '../../geometry/point.ts';

/**
 * The cone, or cylinder, that a sheet is rolled onto. Sheet points are given in the frame of its turn 0: x mm to the
 * right of the line up the wall there, y mm up along it, from the height `from`.
 */
export interface RolledCone {
  /** Height of the frame's origin, mm along the wall. */
  readonly from: number;
  /** Radius of the sheet's mid-thickness there, mm. */
  readonly radius: number;
  /** Growth of the radius per mm along the wall: positive when wider at the lip, 0 for a cylinder. */
  readonly sine: number;
  /** The turn in the middle of the sheet, laps counted: opposite it no film is. Half a turn if left out. */
  readonly middle?: number;
}

/** A place on the wall: `turn` 0 to 1 around, `along` mm up the wall. */
export interface RolledPoint {
  readonly turn: number;
  readonly along: number;
}

/** Girth at a height, mm of sheet. */
export const girthOf = ({ from, radius, sine }: RolledCone, along: number): number =>
  2 * Math.PI * (radius + (along - from) * sine);

/** Growth per mm of the sheet's distance from the point of the cone, as a share of that distance at the origin. */
const closeness = ({ radius, sine }: RolledCone): number => sine / radius;

/** Angle up to which the first three terms of an arc tangent are exact to the last digit. */
const small = 1e-3;

/**
 * Where a point of the sheet comes to lie. Every slant line of a cone passes through its point and keeps its length, so
 * polar coordinates about that point tell both: distance gives the height, angle over sine the turn (the development
 * of the cone in any text on descriptive geometry). Written with the distance at the origin as 1, so that it goes over
 * into the cylinder.
 */
export function rollUp(cone: RolledCone, { x, y }: Point): RolledPoint {
  const k = closeness(cone);
  const w = 1 + k * y;
  const q = k * x;
  const along = cone.from + (2 * y + k * (x * x + y * y)) / (norm(w, q) + 1);
  return { turn: aroundOf(cone, x, w, q) / (2 * Math.PI * cone.radius), along };
}

/** mm around at the origin's radius. */
function aroundOf({ sine, radius, middle = 0.5 }: RolledCone, x: number, w: number, q: number): number {
  const slope = q / w;
  if (w > 0 && Math.abs(slope) < small) return (x / w) * (1 - slope ** 2 / 3 + slope ** 4 / 5);
  // The sheet may go round the cone's point by more than half: angles run half around to either side of its middle.
  const angle = Math.atan2(q, w) * Math.sign(sine);
  const least = 2 * Math.PI * middle * Math.abs(sine) - Math.PI;
  const unwound = angle < least ? angle + 2 * Math.PI : angle;
  return (unwound * radius) / Math.abs(sine);
}

const sineOver = (angle: number): number => (angle === 0 ? 1 : Math.sin(angle) / angle);

/** Where a place on the wall lies on the sheet: the inverse of `rollUp`. */
export function layDown(cone: RolledCone, { turn, along }: RolledPoint): Point {
  const v = along - cone.from;
  const around = 2 * Math.PI * cone.radius * turn;
  const angle = closeness(cone) * around;
  const half = sineOver(angle / 2);
  return {
    x: (1 + closeness(cone) * v) * around * sineOver(angle),
    y: v * Math.cos(angle) - around * (angle / 2) * half * half,
  };
}

/** The motion of the sheet that carries each of its points so many turns on around the wall. */
export function onward(cone: RolledCone, turns: number): Affine {
  const around = 2 * Math.PI * cone.radius * turns;
  const angle = closeness(cone) * around;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const half = sineOver(angle / 2);
  return {
    a: cos,
    b: -sin,
    c: sin,
    d: cos,
    e: around * sineOver(angle),
    f: -around * (angle / 2) * half * half,
  };
}

/** How far to the right of the line up the wall at a turn a point lies on the sheet, mm: across, not around. */
export function rightOfTurn(cone: RolledCone, turn: number, p: Point): number {
  const back = onward(cone, -turn);
  return back.a * p.x + back.c * p.y + back.e;
}

/** The place at a height that is so far across, on the sheet, from the line up the wall at a turn. */
export function acrossFrom(cone: RolledCone, turn: number, across: number, along: number): Point {
  const slant = cone.radius / cone.sine + along - cone.from;
  const around = Number.isFinite(slant) ? slant * Math.asin(across / slant) : across;
  return layDown(cone, { turn: turn + around / girthOf(cone, along), along });
}
