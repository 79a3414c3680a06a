// The bare body of the vessel: its outline, its rim, the soft light on it.
import type { Point } from '../geometry/point.ts';
import { type Camera, inSight, seen, seenRings } from './rolled-camera.ts';
import { hull, millimetres, picturePath } from './rolled-path.ts';
import { type Profile, profileOf, type Ring, type RolledVessel } from './rolled-vessel.ts';

/** Colours of a brushed steel vessel in a grey room; nobody's but ours. */
const steel = { wall: '#ccd1d4', foot: '#9aa1a6', shadow: '#141d26' } as const;

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
  const footprint = { radius: ((profile.foot[0]?.radius ?? 0) + widest) * 0.6, height: 0 };
  const wall = [profile.foot.at(-1), profile.lip[0]].filter((ring) => ring !== undefined);
  return (
    ellipse(camera, footprint, 'url(#floor)', widest * 0.02) +
    `<path fill="${steel.foot}" d="${wholeRings(camera, [...profile.foot, ...profile.lip])}"/>` +
    `<path fill="${steel.wall}" d="${wholeRings(camera, wall)}"/>`
  );
}

/** How dark the side away from the light is at the very edge, and how bright the light, as opacities. */
const shade = { right: 0.46, left: 0.24, light: 0.26 } as const;

/** Stops of a shadow that falls off from an edge of the body: with the angle its wall has turned away from the eye. */
function shadowStops(strongest: number, beginsDeg: number): string {
  const count = 12;
  return Array.from({ length: count + 1 }, (_, i) => {
    const away = (Math.asin(1 - i / count) * 180) / Math.PI;
    const opacity = strongest * Math.max(0, (away - beginsDeg) / (90 - beginsDeg)) ** 1.25;
    return `<stop offset="${millimetres(i / count)}" stop-color="${steel.shadow}" stop-opacity="${millimetres(opacity)}"/>`;
  }).join('');
}

const lightStops = [0, 0.12, 0.42, 0.8, 1, 0.8, 0.42, 0.12, 0]
  .map(
    (part, i) =>
      `<stop offset="${i / 8}" stop-color="#fff" stop-opacity="${millimetres(part * shade.light)}"/>`,
  )
  .join('');

/** A gradient across a leaning line of the wall: from the line `share` of the radius off the axis, over `width` mm. */
function acrossWall(name: string, vessel: RolledVessel, share: number, width: number, stops: string): string {
  const { foot, lip } = profileOf(vessel);
  const [low, high] = [foot.at(-1), lip[0]];
  if (!low || !high) return '';
  const lean = (share * (high.radius - low.radius)) / (high.height - low.height);
  const length = Math.hypot(1, lean);
  const from = { x: (share * (low.radius + high.radius)) / 2, y: -(low.height + high.height) / 2 };
  const to = { x: from.x + width / length, y: from.y + (width * lean) / length };
  const ends = `x1="${millimetres(from.x)}" y1="${millimetres(from.y)}" x2="${millimetres(to.x)}" y2="${millimetres(to.y)}"`;
  return `<linearGradient id="${name}" gradientUnits="userSpaceOnUse" ${ends}>${stops}</linearGradient>`;
}

/** Paints of the light on this vessel: they lean with its wall, as a gradient across the picture would not. */
export function lightPaints(vessel: RolledVessel): string {
  const { footRadius, lipRadius } = vessel.profile;
  const mean = (footRadius + lipRadius) / 2;
  return (
    acrossWall('right-shade', vessel, 1, -mean, shadowStops(shade.right, 0)) +
    acrossWall('left-shade', vessel, -1, mean, shadowStops(shade.left, 40)) +
    acrossWall('light', vessel, -0.86, 0.72 * mean, lightStops)
  );
}

/** The light on the wall and on the film. */
export function bodyLight(vessel: RolledVessel, camera: Camera): string {
  const profile = profileOf(vessel);
  const data = wholeRings(camera, [...profile.foot, ...profile.lip.slice(0, 1)]);
  return ['right-shade', 'left-shade', 'light']
    .map((paint) => `<path fill="url(#${paint})" d="${data}"/>`)
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
