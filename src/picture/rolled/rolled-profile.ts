// The outside of a vessel from foot to lip as circles: the foot's round, the wall, the lip's round.
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
  const [first, last] = [profile[0], profile.at(-1)];
  if (!first || !last) return { foot: [], wall: [], lip: [] };
  const footEnd = ringAlong(profile, tangentAt(profile, footRound, first, -1));
  const lipEnd = ringAlong(profile, tangentAt(profile, lipRound, last, 1));
  return {
    foot: roundOff(footEnd, footRound, -Math.PI / 2, -footEnd.lean),
    wall: ringsBetween(profile, footEnd.along, lipEnd.along),
    lip: roundOff(lipEnd, lipRound, -lipEnd.lean, Math.PI / 2),
  };
}

/** Halvings of the wall in looking for a tangent point: to a billionth of its length. */
const halvings = 40;

/**
 * Where a round touches the wall, mm along. Its centre is as far off the wall as off the plane of its end: the wall at
 * height h and lean a has it at h + q sin a. On a straight wall that is q / tan(w/2) from the corner of angle w.
 */
function tangentAt(profile: readonly ProfileRing[], round: number, end: ProfileRing, side: 1 | -1): number {
  const length = profile.at(-1)?.along ?? 0;
  if (round === 0) return end.along;
  let [near, far] = [end.along, length - end.along];
  for (let i = 0; i < halvings; i++) {
    const middle = (near + far) / 2;
    const { height, lean } = ringAlong(profile, middle);
    const off = side * (end.height - height - round * Math.sin(lean));
    if (off < round) near = middle;
    else far = middle;
  }
  return (near + far) / 2;
}

function roundOff(touch: ProfileRing, round: number, from: number, to: number): readonly BodyRing[] {
  if (round === 0) return [touch];
  const centre: Ring = {
    radius: touch.radius - round * Math.cos(touch.lean),
    height: touch.height + round * Math.sin(touch.lean),
  };
  return Array.from({ length: roundSteps + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / roundSteps;
    return {
      radius: centre.radius + round * Math.cos(angle),
      height: centre.height + round * Math.sin(angle),
      lean: -angle,
    };
  });
}
