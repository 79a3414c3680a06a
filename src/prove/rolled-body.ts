// The bare body of the vessel: its outline, its rim, the soft light on it.
import type { Point } from '../geometry/point.ts';
import { type Camera, inSight, seen, seenRings } from './rolled-camera.ts';
import { hull, hundredths, millimetres, picturePath } from './rolled-path.ts';
import { type Profile, profileOf, type Ring, type RolledVessel } from './rolled-vessel.ts';

/** Colours of a brushed steel vessel in a grey room; nobody's but ours. */
const steel = { wall: '#ccd1d4', foot: '#9aa1a6', shadow: '#18222b', light: '#ffffff' } as const;

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

/** Points around a circle: chords of 3 degrees, under a thousandth of the radius from it. */
const around = 120;

const wholeRings = (camera: Camera, rings: readonly Ring[]): string =>
  picturePath(hull(seenRings(camera, rings, -0.5, 0.5, around)), true);

const ends = (rings: readonly Ring[]): readonly Ring[] =>
  [rings[0], rings.at(-1)].filter((ring) => ring !== undefined);

const topOf = ({ lip }: Profile): Ring => lip.at(-1) ?? { radius: 0, height: 0 };

function ellipse(camera: Camera, { radius, height }: Ring, fill: string, down = 0): string {
  const cy = down - height * Math.cos(camera.elevation);
  const ry = radius * Math.sin(camera.elevation);
  return `<ellipse cy="${millimetres(cy)}" rx="${millimetres(radius)}" ry="${millimetres(ry)}" fill="${fill}"/>`;
}

/** What lies under the film: the shadow on the floor, the body, its wall apart from the round of the foot. */
export function bodyBelow(vessel: RolledVessel, camera: Camera): string {
  const profile = profileOf(vessel);
  const widest = Math.max(...[...profile.foot, ...profile.lip].map(({ radius }) => radius));
  const footprint = { radius: ((profile.foot[0]?.radius ?? 0) + widest) * 0.68, height: 0 };
  const wall = [profile.foot.at(-1), profile.lip[0]].filter((ring) => ring !== undefined);
  return (
    ellipse(camera, footprint, 'url(#floor)', widest * 0.02) +
    `<path fill="${steel.foot}" d="${wholeRings(camera, [...profile.foot, ...profile.lip])}"/>` +
    `<path fill="${steel.wall}" d="${wholeRings(camera, wall)}"/>`
  );
}

/** One soft edge of light or shadow: veils laid over one another, each a little narrower. */
interface Veil {
  readonly colour: string;
  readonly strength: number;
  readonly count: number;
  /** Turns off the facing one, from the wide veil to the narrow one. */
  readonly wide: readonly [number, number];
  readonly narrow: readonly [number, number];
}

const degrees = (deg: number): number => deg / 360;

function veilsFor(vessel: RolledVessel, { elevation }: Camera): readonly Veil[] {
  const edge = Math.max(0.25, inSight(vessel.profile.halfAngle, elevation));
  const shadow = { colour: steel.shadow, strength: 0.022 };
  return [
    { ...shadow, count: 26, wide: [degrees(2), edge], narrow: [degrees(84), edge] },
    { ...shadow, count: 16, wide: [-edge, degrees(-52)], narrow: [-edge, degrees(-86)] },
    {
      colour: steel.light,
      strength: 0.02,
      count: 12,
      wide: [degrees(-54), degrees(-8)],
      narrow: [degrees(-34), degrees(-28)],
    },
  ];
}

/** The light on the wall and on the film: it follows the taper, as a straight gradient would not. */
export function bodyLight(vessel: RolledVessel, camera: Camera): string {
  const profile = profileOf(vessel);
  const rings = [...profile.foot, ...ends(profile.lip).slice(0, 1)];
  return veilsFor(vessel, camera)
    .map(({ colour, strength, count, wide, narrow }) => {
      const veils = Array.from({ length: count }, (_, i) => {
        const part = i / (count - 1);
        const from = wide[0] + (narrow[0] - wide[0]) * part;
        const to = wide[1] + (narrow[1] - wide[1]) * part;
        return `<path d="${picturePath(hull(seenRings(camera, rings, from, to, 24)), true)}"/>`;
      });
      return `<g fill="${colour}" fill-opacity="${hundredths((strength * 1e4) / 100)}">${veils.join('')}</g>`;
    })
    .join('');
}

/** What lies over the film: the lip, its rim and the inside as far as it is seen from above. */
export function bodyAbove(vessel: RolledVessel, camera: Camera): string {
  const profile = profileOf(vessel);
  const top = topOf(profile);
  const reach = vessel.profile.lipRadius - top.radius;
  // How thick the vessel is was never measured: the picture gives it a round on the inside like that on the outside.
  const inner = { ...top, radius: top.radius - Math.max(reach, 0.03 * vessel.profile.lipRadius) };
  return (
    `<path fill="url(#lip)" d="${wholeRings(camera, profile.lip)}"/>` +
    ellipse(camera, top, 'url(#rim)') +
    ellipse(camera, inner, 'url(#inside)') +
    ellipse(camera, inner, 'url(#depth)')
  );
}

/** A level line as far as it is in sight. */
export function levelSeen(camera: Camera, ring: Ring, halfAngle: number): readonly Point[] {
  const half = inSight(halfAngle, camera.elevation);
  return seenRings(camera, [ring], -half, half, around / 2);
}

/** The box that the body takes, mm to either side of its axis and above and below its foot's centre. */
export function bodyReach(vessel: RolledVessel, camera: Camera): { side: number; up: number; down: number } {
  const { foot, lip } = profileOf(vessel);
  const rings = [...foot, ...lip];
  const y = (turn: number) => rings.map((ring) => seen(camera, { ...ring, turn: camera.facing + turn }).y);
  return {
    side: Math.max(...rings.map(({ radius }) => radius)),
    up: -Math.min(...y(0.5)),
    down: Math.max(...y(0)),
  };
}
