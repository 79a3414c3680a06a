// The bare body of the vessel: its outline, its rim, the edges of its wall.
import type { Point } from '../../geometry/point.ts';
import { millimetres, picturePath } from '../rolled-path.ts';
import { type Camera, seen, seenRings } from './rolled-camera.ts';
import type { RoundedProfile } from './rolled-profile.ts';
import { cornersOf, ringAlong } from './rolled-rings.ts';
import { outlineOf, sightOf } from './rolled-sight.ts';
import { type BodyRing, isStraight, type Ring, type RolledVessel } from './rolled-vessel.ts';

/** Colours of a brushed steel vessel in a grey room; nobody's but ours. */
const steel = { wall: '#ccd1d4', foot: '#9aa1a6', edge: '#1d252b' } as const;

/** Shared paints: the shadow on the floor, the metal of the lip, the inside. */
export const bodyPaints =
  '<radialGradient id="floor"><stop offset="0" stop-color="#3a4044" stop-opacity=".5"/>' +
  '<stop offset=".7" stop-color="#3a4044" stop-opacity=".3"/><stop offset="1" stop-color="#3a4044" stop-opacity="0"/></radialGradient>' +
  '<linearGradient id="lip"><stop offset="0" stop-color="#8d959a"/><stop offset=".24" stop-color="#f6f8f8"/>' +
  '<stop offset=".6" stop-color="#c3c9cc"/><stop offset="1" stop-color="#737c82"/></linearGradient>' +
  '<linearGradient id="rim"><stop offset="0" stop-color="#d5dadc"/><stop offset=".3" stop-color="#fbfcfc"/>' +
  '<stop offset="1" stop-color="#aab1b5"/></linearGradient>' +
  '<linearGradient id="inside"><stop offset="0" stop-color="#4f585e"/><stop offset=".7" stop-color="#a4acb0"/>' +
  '<stop offset="1" stop-color="#7b848a"/></linearGradient>' +
  '<linearGradient id="depth" x2="0" y2="1"><stop offset="0" stop-color="#1d252b" stop-opacity=".05"/>' +
  '<stop offset="1" stop-color="#1d252b" stop-opacity=".5"/></linearGradient>';

/** Points along half a circle: chords of 3 degrees, under a thousandth of the radius from it. */
const around = 60;

/** All circles of the outside, from the foot up. */
export const ringsOf = ({ foot, wall, lip }: RoundedProfile): readonly BodyRing[] => [
  ...foot,
  ...wall,
  ...lip,
];

/** Path data of the outline of a solid between circles. */
const outlineData = (camera: Camera, rings: readonly Ring[]): string =>
  outlineOf(camera, rings)
    .map((ring) => picturePath(ring, true))
    .join('');

function ellipse(camera: Camera, { radius, height }: Ring, fill: string, down = 0): string {
  const cy = down - height * Math.cos(camera.elevation);
  const ry = radius * Math.sin(camera.elevation);
  return `<ellipse cy="${millimetres(cy)}" rx="${millimetres(radius)}" ry="${millimetres(ry)}" fill="${fill}"/>`;
}

const widestOf = (rings: readonly Ring[]): number => Math.max(...rings.map(({ radius }) => radius));

/** What lies under the film: the shadow on the floor, the body, its wall apart from the round of the foot. */
export function bodyBelow(profile: RoundedProfile, camera: Camera): string {
  const rings = ringsOf(profile);
  const widest = widestOf(rings);
  const footprint = { radius: ((profile.foot[0]?.radius ?? 0) + widest) * 0.6, height: 0 };
  return (
    ellipse(camera, footprint, 'url(#floor)', widest * 0.02) +
    `<path fill="${steel.foot}" d="${outlineData(camera, rings)}"/>` +
    `<path fill="${steel.wall}" d="${outlineData(camera, profile.wall)}"/>`
  );
}

/** What lies over the film: the lip, its rim and the inside as far as it is seen from above; on its lip, the foot. */
export function bodyAbove(vessel: RolledVessel, profile: RoundedProfile, camera: Camera): string {
  const top = profile.lip.at(-1) ?? { radius: 0, height: 0 };
  if (vessel.standsOnLip)
    return `<path fill="url(#lip)" d="${outlineData(camera, profile.lip)}"/>${ellipse(camera, top, steel.foot)}`;
  const corner = vessel.profile.at(-1)?.radius ?? 0;
  // How thick the vessel is was never measured: the picture gives it a round on the inside like that on the outside.
  const inner = { ...top, radius: top.radius - Math.max(corner - top.radius, 0.03 * corner) };
  return (
    `<path fill="url(#lip)" d="${outlineData(camera, profile.lip)}"/>` +
    ellipse(camera, top, 'url(#rim)') +
    ellipse(camera, inner, 'url(#inside)') +
    ellipse(camera, inner, 'url(#depth)')
  );
}

/** A level line as far as it is in sight: `half` a turn to either side. */
export const levelSeen = (camera: Camera, ring: Ring, half: number): readonly Point[] =>
  seenRings(camera, [ring], -half, half, around);

/** The sharp edges of a wall with corners, as far as either side of them is in sight. */
export function edgesSeen(vessel: RolledVessel, profile: RoundedProfile, camera: Camera): string {
  if (isStraight(vessel)) return '';
  const body = ringsOf(profile);
  const lines = cornersOf(profile.wall).map((along) => {
    const ring = ringAlong(vessel.profile, along);
    const sides = profile.wall.filter((side) => side.along === along);
    const half = Math.max(...sides.map((side) => sightOf(side, body, camera.elevation)));
    return `<path d="${picturePath(levelSeen(camera, ring, half), false)}"/>`;
  });
  if (lines.length === 0) return '';
  return `<g data-role="edge" fill="none" stroke="${steel.edge}" stroke-opacity=".28" stroke-width=".3">${lines.join('')}</g>\n`;
}

/** The box that the body takes, mm to either side of its axis and above and below its foot's centre. */
export function bodyReach(
  profile: RoundedProfile,
  camera: Camera,
): { side: number; up: number; down: number } {
  const rings = ringsOf(profile);
  const y = (turn: number) => rings.map((ring) => seen(camera, { ...ring, turn: camera.facing + turn }).y);
  return { side: widestOf(rings), up: -Math.min(...y(0.5)), down: Math.max(...y(0)) };
}
