// The finished vessel as the picture knows it: a round body with a sheet around its wall.
import type { Point } from '../geometry/point.ts';
import { type FlatWall, radiusAt, type WallPoint } from '../unroll/flat-wall.ts';
import { type SideEdge, turnOfEdge } from '../unroll/template.ts';

/** All that the picture needs to know besides the cut file. Lengths in mm, angles in radians. */
export interface RolledVessel {
  /** The flat wall of the sheet's mid-thickness. */
  readonly wall: FlatWall;
  /** Where the flat wall's origin lies in the drawing: drawing coordinates are flat coordinates plus this. */
  readonly origin: Point;
  /** The bare blank between its sharp corners. `halfAngle` is positive when it is wider at the lip. */
  readonly profile: {
    readonly footRadius: number;
    readonly lipRadius: number;
    /** From the foot corner to the lip corner, along the wall. */
    readonly length: number;
    readonly halfAngle: number;
  };
  /** The finished band, along the wall: what is left of the sheet once the trims are cut away. */
  readonly band: { readonly from: number; readonly to: number };
  /** The finished sides of the sheet: turn 0 and turn 1, or the two sides of a handle. */
  readonly seam: { readonly start: SideEdge; readonly finish: SideEdge };
  /** How far the sheet goes on past the seam, over its own start. */
  readonly overlap: number;
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

/** A circle around the axis: a point of the profile. */
export type Ring = Omit<RoundPoint, 'turn'>;

/** How far the sheet's mid-thickness lies off the bare wall, along its normal. */
const liftOf = ({ wall, profile }: RolledVessel): number =>
  (radiusAt(wall, 0) - profile.footRadius) / Math.cos(profile.halfAngle);

/** The circle of the sheet at a height along the wall. */
export const ringAt = (vessel: RolledVessel, along: number): Ring => ({
  radius: radiusAt(vessel.wall, along),
  height: along * Math.cos(vessel.profile.halfAngle) - liftOf(vessel) * Math.sin(vessel.profile.halfAngle),
});

/** Where a place on the wall is once the sheet lies around the vessel. */
export const rolled = (vessel: RolledVessel, { turn, along }: WallPoint): RoundPoint => ({
  ...ringAt(vessel, along),
  turn,
});

/** The turns at which the finished sheet begins and ends at a height. */
export const sidesAt = ({ wall, seam }: RolledVessel, along: number): readonly [number, number] => [
  turnOfEdge(wall, seam.start, along),
  turnOfEdge(wall, seam.finish, along),
];

/** Circles that a rounded edge is drawn with. */
const roundSteps = 8;

/** The outside of the vessel from foot to lip as circles: the foot's round, the wall, the lip's round. */
export interface Profile {
  /** From the plane of the foot to the wall; one circle for a sharp foot. */
  readonly foot: readonly Ring[];
  /** From the wall to the plane of the lip; one circle for a sharp lip. */
  readonly lip: readonly Ring[];
}

/**
 * The profile of the coated vessel. A round is tangent to the wall and to the plane of its end, q / tan(w/2) from the
 * corner of angle w on either, as `blank/flat-band.ts` has it; its centre is therefore q off both.
 */
export function profileOf(vessel: RolledVessel): Profile {
  const { length, halfAngle } = vessel.profile;
  const [foot, lip] = [ringAt(vessel, 0), ringAt(vessel, length)];
  const footReach = vessel.footRound / Math.tan(Math.PI / 4 + halfAngle / 2);
  const lipReach = vessel.lipRound / Math.tan(Math.PI / 4 - halfAngle / 2);
  const footCentre = { radius: foot.radius - footReach, height: foot.height + vessel.footRound };
  const lipCentre = { radius: lip.radius - lipReach, height: lip.height - vessel.lipRound };
  return {
    foot: roundOff(footCentre, vessel.footRound, -Math.PI / 2, -halfAngle),
    lip: roundOff(lipCentre, vessel.lipRound, -halfAngle, Math.PI / 2),
  };
}

function roundOff(centre: Ring, round: number, from: number, to: number): readonly Ring[] {
  if (round === 0) return [centre];
  return Array.from({ length: roundSteps + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / roundSteps;
    return {
      radius: centre.radius + round * Math.cos(angle),
      height: centre.height + round * Math.sin(angle),
    };
  });
}
