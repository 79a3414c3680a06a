// The finished vessel as the picture knows it: a round body with a sheet around its wall.
import type { Point } from '../../geometry/point.ts';
import type { FlatWall, WallPoint } from '../../unroll/flat-wall.ts';
import { type SideEdge, turnOfEdge } from '../../unroll/template.ts';
import { type Winding, windingTurn } from '../../unroll/winding.ts';
import { type ProfileRing, ringAlong } from './rolled-rings.ts';

/** All that the picture needs to know besides the cut file. Lengths in mm, angles in radians. */
export interface RolledVessel {
  /** The flat wall of the sheet's mid-thickness. */
  readonly wall: FlatWall;
  /** Where the flat wall's origin lies in the drawing: drawing coordinates are flat coordinates plus this. */
  readonly origin: Point;
  /** The true wall between its sharp corners, as large as the sheet's mid-thickness, from the foot up. */
  readonly profile: readonly ProfileRing[];
  /** The finished band, along the wall: what is left of the sheet once the trims are cut away. */
  readonly band: { readonly from: number; readonly to: number };
  /** The finished sides of the sheet: turn 0 and turn 1, or the two sides of a handle. */
  readonly seam: { readonly start: SideEdge; readonly finish: SideEdge };
  /** The line that both ends follow, where it is not straight. */
  readonly winding?: Winding;
  /** How far the sheet goes on past the seam, over its own start, or under it. */
  readonly overlap: number;
  /** The end that lies on top of an overlap; `finish` where it is left out. */
  readonly top?: 'finish' | 'start';
  /** Whether it is shown upside down, standing on its lip. */
  readonly standsOnLip?: boolean;
  /** Width of a cover strip over the seam, if there is one. */
  readonly strip?: number;
  /** Cover strips on borders of the pattern, over the others: a width in mm, turns, heights along the wall. */
  readonly covers?: {
    readonly width: number;
    readonly turns: readonly number[];
    readonly along: readonly number[];
  };
  /** Radii of the rounded edges; 0 for a sharp one. */
  readonly footRound: number;
  readonly lipRound: number;
  /** Width of a handle at turn 0, along the girth. Without it none is drawn. */
  readonly handleSpan?: number;
}

/** A point of a body of revolution: distance from the axis, height above the foot, position around. */
export interface RoundPoint {
  readonly radius: number;
  readonly height: number;
  readonly turn: number;
}

/** A circle around the axis. */
export type Ring = Omit<RoundPoint, 'turn'>;

/** A circle of the outside of the body, with the lean of its side there. */
export type BodyRing = Ring & { readonly lean: number };

/** Whether the wall is one straight line. */
export const isStraight = ({ profile }: Pick<RolledVessel, 'profile'>): boolean => profile.length === 2;

/** The circle of the sheet at a height along the wall. */
export const ringAt = ({ profile }: Pick<RolledVessel, 'profile'>, along: number): ProfileRing =>
  ringAlong(profile, along);

/** Where a place on the wall is once the sheet lies around the vessel: on the true wall, whatever the sheet's own is. */
export const rolled = (vessel: RolledVessel, { turn, along }: WallPoint): RoundPoint => {
  const { radius, height } = ringAt(vessel, along);
  return { radius, height, turn };
};

/** The turns at which the finished sheet begins and ends at a height. */
export function sidesAt({ wall, seam, winding }: RolledVessel, along: number): readonly [number, number] {
  if (!winding) return [turnOfEdge(wall, seam.start, along), turnOfEdge(wall, seam.finish, along)];
  const turn = windingTurn(winding, along);
  return [turn, turn + 1];
}

/** Lean of the line from one end of the band to the other: that of a straight wall. */
export function bandLean({ profile, band }: RolledVessel): number {
  const [from, to] = [ringAlong(profile, band.from), ringAlong(profile, band.to)];
  return Math.atan2(to.radius - from.radius, to.height - from.height);
}
