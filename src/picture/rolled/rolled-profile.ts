// The outside of a vessel from foot to lip as circles: the foot's round, the wall, the lip's round.
import { type RoundTouch, roundTouch } from '../../blank/round-reach.ts';
import { type ProfileRing, ringAlong, ringsBetween } from './rolled-rings.ts';
import type { BodyRing, Ring, RolledVessel } from './rolled-vessel.ts';

/** Circles that a rounded edge is drawn with. */
const roundSteps = 8;

export interface RoundedProfile {
  /** From the plane of the foot to the wall; one circle for a sharp foot. */
  readonly foot: readonly BodyRing[];
  /** The wall between the rounds, both ends included. */
  readonly wall: readonly ProfileRing[];
  /** From the wall to the plane of the lip; one circle for a sharp lip. */
  readonly lip: readonly BodyRing[];
}

/** The profile with its rounded edges. */
export function profileOf({
  profile,
  footRound,
  lipRound,
}: Pick<RolledVessel, 'profile' | 'footRound' | 'lipRound'>): RoundedProfile {
  if (profile.length === 0) return { foot: [], wall: [], lip: [] };
  const wall = { places: profile, at: (along: number) => ringAlong(profile, along) };
  const touching = ({ along, lean }: RoundTouch) => ({ ...ringAlong(profile, along), lean });
  const footEnd = touching(roundTouch(wall, footRound, 'foot'));
  const lipEnd = touching(roundTouch(wall, lipRound, 'lip'));
  return {
    foot: roundOff(footEnd, footRound, -Math.PI / 2).toReversed(),
    wall: ringsBetween(profile, footEnd.along, lipEnd.along),
    lip: roundOff(lipEnd, lipRound, Math.PI / 2),
  };
}

/** A round from where it touches the wall to the plane of its end, which it touches at the angle `level`. */
function roundOff(touch: ProfileRing, round: number, level: number): readonly BodyRing[] {
  if (round === 0) return [touch];
  const centre: Ring = {
    radius: touch.radius - round * Math.cos(touch.lean),
    height: touch.height + round * Math.sin(touch.lean),
  };
  const beyond = Array.from({ length: roundSteps }, (_, i) => {
    const angle = -touch.lean + ((level + touch.lean) * (i + 1)) / roundSteps;
    return {
      radius: centre.radius + round * Math.cos(angle),
      height: centre.height + round * Math.sin(angle),
      lean: -angle,
    };
  });
  return [touch, ...beyond];
}
