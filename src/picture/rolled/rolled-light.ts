// The soft light on the body and its film.
import { boxOfPoints } from '../../geometry/box.ts';
import { hundredths, millimetres, picturePath } from '../rolled-path.ts';
import { type Camera, seen } from './rolled-camera.ts';
import type { RoundedProfile } from './rolled-profile.ts';
import { closeRings, type ProfileRing } from './rolled-rings.ts';
import { outlineOf, sightOf } from './rolled-sight.ts';
import type { BodyRing, Ring, RolledVessel } from './rolled-vessel.ts';

const shadow = '#141d26';

/** How dark the side away from the light is at the very edge, and how bright the light, as opacities. */
const shade = { right: 0.46, left: 0.24, light: 0.26 } as const;

/** Turned away from the eye by this, degrees, the left side begins to darken; the right side does from the middle on. */
const leftBegins = 40;

/** How dark a side is that has turned away from the eye by so many degrees. */
const darkness = (strongest: number, begins: number, awayDeg: number): number =>
  strongest * Math.max(0, (awayDeg - begins) / (90 - begins)) ** 1.25;

/** The light: how bright it is across its width, in nine places. */
const brightness = [0, 0.12, 0.42, 0.8, 1, 0.8, 0.42, 0.12, 0] as const;

/** Where the light begins off the axis, and its width, as shares of the radius. */
const light = { from: -0.86, width: 0.72 } as const;

/** Stops of a shadow that falls off from an edge of the body: with the angle its wall has turned away from the eye. */
function shadowStops(strongest: number, begins: number): string {
  const count = 12;
  return Array.from({ length: count + 1 }, (_, i) => {
    const away = (Math.asin(1 - i / count) * 180) / Math.PI;
    const opacity = darkness(strongest, begins, away);
    return `<stop offset="${millimetres(i / count)}" stop-color="${shadow}" stop-opacity="${millimetres(opacity)}"/>`;
  }).join('');
}

const lightStops = brightness
  .map(
    (part, i) =>
      `<stop offset="${i / 8}" stop-color="#fff" stop-opacity="${millimetres(part * shade.light)}"/>`,
  )
  .join('');

/** A gradient across a leaning line of the wall: from the line `share` of the radius off the axis, over `width` mm. */
function acrossWall(
  name: string,
  { wall }: RoundedProfile,
  share: number,
  width: number,
  stops: string,
): string {
  const [low, high] = [wall[0], wall.at(-1)];
  if (!low || !high) return '';
  const lean = (share * (high.radius - low.radius)) / (high.height - low.height);
  const length = Math.hypot(1, lean);
  const from = { x: (share * (low.radius + high.radius)) / 2, y: -(low.height + high.height) / 2 };
  const to = { x: from.x + width / length, y: from.y + (width * lean) / length };
  const ends = `x1="${millimetres(from.x)}" y1="${millimetres(from.y)}" x2="${millimetres(to.x)}" y2="${millimetres(to.y)}"`;
  return `<linearGradient id="${name}" gradientUnits="userSpaceOnUse" ${ends}>${stops}</linearGradient>`;
}

/** The light on a vessel: what goes to the picture's paints, and what is laid on every view. */
export interface Light {
  readonly paints: string;
  readonly laid: string;
}

/** The light on a straight wall and its film: gradients that lean with it, as one across the picture would not. */
export function straightLight(vessel: RolledVessel, profile: RoundedProfile, camera: Camera): Light {
  const mean = ((vessel.profile[0]?.radius ?? 0) + (vessel.profile.at(-1)?.radius ?? 0)) / 2;
  const data = outlineOf(camera, [...profile.foot, ...profile.lip.slice(0, 1)])
    .map((ring) => picturePath(ring, true))
    .join('');
  const laid = ['right-shade', 'left-shade', 'light'].map(
    (paint) => `<path fill="url(#${paint})" d="${data}"/>`,
  );
  return {
    paints:
      acrossWall('right-shade', profile, 1, -mean, shadowStops(shade.right, 0)) +
      acrossWall('left-shade', profile, -1, mean, shadowStops(shade.left, leftBegins)) +
      acrossWall('light', profile, light.from, light.width * mean, lightStops),
    laid: `${laid.join('')}\n`,
  };
}

/** A circle of the wall with how far around it is in sight, radians. */
interface SeenRing extends BodyRing {
  readonly half: number;
}

/** A step around the wall in which a line on it is drawn: 3 degrees, radians. */
const chord = Math.PI / 60;

/** A point on the wall: its circle, and the angle off the facing turn. */
interface Spot extends Ring {
  readonly angle: number;
}

/** Points after `a` on the way to `b`, close together around the wall; `b` is the last. */
function onTheWay(a: Spot, b: Spot): readonly Spot[] {
  const count = Math.max(1, Math.ceil(Math.abs(b.angle - a.angle) / chord));
  const mix = (from: number, to: number, i: number) => from + ((to - from) * i) / count;
  return Array.from({ length: count }, (_, i) => ({
    radius: mix(a.radius, b.radius, i + 1),
    height: mix(a.height, b.height, i + 1),
    angle: mix(a.angle, b.angle, i + 1),
  }));
}

/** Part of the wall in sight between two angles off the facing turn, as path data. */
function between(rings: readonly SeenRing[], camera: Camera, from: number, to: number): string {
  const edge = (angle: number): Spot[] =>
    rings.map(({ radius, height, half }) => ({
      radius,
      height,
      angle: Math.min(half, Math.max(-half, angle)),
    }));
  const corners = [...edge(to), ...edge(from).reverse()];
  const spots = corners.flatMap((spot, i) => onTheWay(spot, corners[(i + 1) % corners.length] ?? spot));
  return picturePath(
    spots.map(({ angle, ...ring }) => seen(camera, { ...ring, turn: camera.facing + angle / (2 * Math.PI) })),
    true,
  );
}

/** Steps in which a shadow or the light on a bent wall grows: under two shades of grey each. */
const steps = 48;

/** Layers of a mask, each over the one before and lighter, up to `total`. */
function layers(total: number, data: (part: number) => string): string {
  return Array.from({ length: steps }, (_, i) => {
    const grey = Math.round((255 * total * (i + 1)) / steps)
      .toString(16)
      .padStart(2, '0');
    return `<path fill="#${grey.repeat(3)}" d="${data((i + 0.5) / steps)}"/>`;
  }).join('');
}

/** The angle at which a shadow has reached a part of its strength: `darkness` the other way about. */
const angleOf = (part: number, begins: number): number =>
  ((begins + (90 - begins) * part ** (1 / 1.25)) * Math.PI) / 180;

/** How far from the beginning of the light to its middle it has reached a part of its strength, 0 to 1. */
function reachOf(part: number): number {
  const i = brightness.findIndex((value) => value >= part);
  const [low, high] = [brightness[i - 1] ?? 0, brightness[i] ?? 1];
  return (i - 1 + (part - low) / (high - low)) / 4;
}

/**
 * The light on a wall that bends. A gradient runs straight, so here shadow and light go through masks of thin steps, each
 * between two lines up the wall: they follow every bend of it.
 */
export function bentLight(profile: RoundedProfile, body: readonly BodyRing[], camera: Camera): Light {
  const rings = [...profile.foot, ...closeRings(profile.wall, 2)].map(
    (ring): SeenRing => ({
      ...ring,
      half: 2 * Math.PI * sightOf(ring, body, camera.elevation),
    }),
  );
  const box = boxOfPoints(
    rings.flatMap((ring) =>
      [0, 0.25, -0.25, 0.5].map((turn) => seen(camera, { ...ring, turn: camera.facing + turn })),
    ),
  );
  const place = `x="${millimetres(box.minX)}" y="${millimetres(box.minY)}" width="${millimetres(box.maxX - box.minX)}" height="${millimetres(box.maxY - box.minY)}"`;
  const mask = (name: string, data: string) =>
    `<mask id="${name}" maskUnits="userSpaceOnUse" ${place}>${data}</mask>\n`;
  const middle = light.from + light.width / 2;
  const dark =
    layers(shade.right, (part) => between(rings, camera, angleOf(part, 0), Math.PI)) +
    layers(shade.left, (part) => between(rings, camera, -Math.PI, -angleOf(part, leftBegins)));
  const bright = layers(shade.light, (part) => {
    const half = (light.width / 2) * (1 - reachOf(part));
    return between(rings, camera, Math.asin(middle - half), Math.asin(middle + half));
  });
  const sloping = slopes(profile.wall, rings, camera);
  return {
    paints: sloping.paints + mask('dark', dark) + mask('bright', bright),
    laid:
      sloping.laid +
      `<rect fill="${shadow}" mask="url(#dark)" ${place}/><rect fill="#fff" mask="url(#bright)" ${place}/>\n`,
  };
}

/** How much darker a wall is that faces straight down, and how much lighter one that faces straight up. */
const slope = { down: 0.5, up: 0.3 } as const;

const slopePaint = (lean: number): { fill: string; opacity: number } =>
  lean > 0
    ? { fill: shadow, opacity: slope.down * Math.sin(lean) ** 2 }
    : { fill: '#fff', opacity: slope.up * Math.sin(lean) ** 2 };

/** Light from above: what faces down is darker, what faces up lighter. Layers here end on level lines. */
function slopes(wall: readonly ProfileRing[], rings: readonly SeenRing[], camera: Camera): Light {
  const corners = wall.flatMap((ring, i) => (wall[i + 1]?.along === ring.along ? [i] : []));
  if (corners.length > 0 || wall.length < 8) return { paints: '', laid: flatSlopes(rings, camera) };
  const paints = wall.map((ring) => ({
    ...slopePaint(ring.lean),
    y: -ring.height * Math.cos(camera.elevation),
  }));
  const [top, bottom] = [paints.at(-1)?.y ?? 0, paints[0]?.y ?? 0];
  const stops = paints
    .filter((_, i) => i % 8 === 0 || i === paints.length - 1)
    .reverse()
    .map(
      ({ fill, opacity, y }) =>
        `<stop offset="${((y - top) / (bottom - top)).toFixed(3)}" stop-color="${fill}" stop-opacity="${opacity.toFixed(3)}"/>`,
    );
  const ends = `x1="0" y1="${millimetres(top)}" x2="0" y2="${millimetres(bottom)}"`;
  return {
    paints: `<linearGradient id="slopes" gradientUnits="userSpaceOnUse" ${ends}>${stops.join('')}</linearGradient>`,
    laid: `<path fill="url(#slopes)" d="${between(rings, camera, -Math.PI, Math.PI)}"/>\n`,
  };
}

/** Each straight stretch of a wall with corners in its own shade. */
function flatSlopes(rings: readonly SeenRing[], camera: Camera): string {
  const stretches: SeenRing[][] = [];
  for (const ring of rings) {
    const last = stretches.at(-1);
    if (last && Math.abs((last.at(-1)?.lean ?? 0) - ring.lean) < 1e-9) last.push(ring);
    else stretches.push([ring]);
  }
  return stretches
    .filter((stretch) => stretch.length > 1)
    .map((stretch) => {
      const { fill, opacity } = slopePaint(stretch[0]?.lean ?? 0);
      return `<path fill="${fill}" fill-opacity="${hundredths(100 * opacity)}" d="${between(stretch, camera, -Math.PI, Math.PI)}"/>\n`;
    })
    .join('');
}
