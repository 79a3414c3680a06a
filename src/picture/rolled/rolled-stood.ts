// A vessel turned over, so that it stands on its lip: its body as one that has its foot there.
import type { Camera } from './rolled-camera.ts';
import { type ProfileRing, ringsBetween } from './rolled-rings.ts';
import type { RolledVessel } from './rolled-vessel.ts';

/** How high the lip corner is, mm. */
const lipHeight = ({ profile }: RolledVessel): number => profile.at(-1)?.height ?? 0;

/** The body as it stands, from what it stands on upwards; only its shape and its rounds are turned over. */
export function bodyAsStood(vessel: RolledVessel): RolledVessel {
  if (!vessel.standsOnLip) return vessel;
  const { profile, footRound, lipRound } = vessel;
  const length = profile.at(-1)?.along ?? 0;
  const turned = [...profile]
    .reverse()
    .map((ring) => ({ ...turnedOver(ring, lipHeight(vessel)), along: length - ring.along }));
  return { ...vessel, profile: turned, footRound: lipRound, lipRound: footRound };
}

const turnedOver = (ring: ProfileRing, lip: number): ProfileRing => ({
  ...ring,
  height: lip - ring.height,
  lean: -ring.lean,
});

/** A stretch of wall where it is as the vessel stands, its heights still told along from the foot. */
export function stretchAsStood(vessel: RolledVessel, from: number, to: number): readonly ProfileRing[] {
  const rings = ringsBetween(vessel.profile, from, to);
  return vessel.standsOnLip ? rings.map((ring) => turnedOver(ring, lipHeight(vessel))) : rings;
}

/** The cameras of one view: of the body as it stands, and of what is told from the foot up. */
export function camerasOf(
  vessel: RolledVessel,
  { facing, elevation }: Camera,
): { readonly body: Camera; readonly wall: Camera } {
  if (!vessel.standsOnLip) return { body: { facing, elevation }, wall: { facing, elevation } };
  return { body: { facing: -facing, elevation }, wall: { facing, elevation, onLip: lipHeight(vessel) } };
}
