// How far a flat rectangle reaches on the wall it is laid on: up and down it, and around it, exactly.
import { type FlatWall, girthAt, radiusAt, sweep } from './flat-wall.ts';

/** A rectangle of film, mm, laid upright: its middle line runs up the wall. */
export interface Footprint {
  readonly across: number;
  readonly up: number;
}

/** A stretch of the wall, mm along. */
export interface Reach {
  readonly from: number;
  readonly to: number;
}

/**
 * Below this sine the wall is a cylinder to a rectangle: one as wide as the widest girth, 10 m, would sag a level line
 * by 10 m x pi sine / 4, under a thousandth of a mm.
 */
const levelSine = 1e-7;

const isLevel = (wall: FlatWall): boolean => Math.abs(wall.sine) < levelSine;

/** Distance of a place on the wall from the apex of its cone, mm. Film laid flat keeps it. Needs a cone. */
const fromApex = (wall: FlatWall, along: number): number => radiusAt(wall, along) / Math.abs(wall.sine);

/** What the corners away from the apex reach past the middle of their edge: hypot(half, side) - side, without loss. */
const cornerRise = (half: number, side: number): number => (half * half) / (Math.hypot(half, side) + side);

/** Whether a rectangle about this place stays clear of the apex of the cone; else it can't lie there at all. */
export const clearOfApex = (wall: FlatWall, { up }: Footprint, along: number): boolean =>
  radiusAt(wall, along) > 0 && (isLevel(wall) || fromApex(wall, along) > up / 2);

/** The stretch of wall a rectangle about a place covers: on a taper its outer corners lie further than its middle. */
export function reachAt(wall: FlatWall, { across, up }: Footprint, along: number): Reach {
  const half = up / 2;
  const rise = isLevel(wall) ? 0 : cornerRise(across / 2, fromApex(wall, along) + half);
  return wall.sine < 0
    ? { from: along - half - rise, to: along + half }
    : { from: along - half, to: along + half + rise };
}

/** Where the middle must be for the rectangle to begin at `from`; NaN where it is too wide to begin there. */
export function middleBeginning(wall: FlatWall, size: Footprint, from: number): number {
  return from + size.up / 2 + (wall.sine < 0 ? riseTo(wall, size, from) : 0);
}

/** Where the middle must be for the rectangle to end at `to`; NaN where it is too wide to end there. */
export function middleEnding(wall: FlatWall, size: Footprint, to: number): number {
  return to - size.up / 2 - (wall.sine < 0 ? 0 : riseTo(wall, size, to));
}

/** What the corners that lie at a place reach past the middle of their edge. */
function riseTo(wall: FlatWall, { across }: Footprint, along: number): number {
  if (isLevel(wall)) return 0;
  const corner = fromApex(wall, along);
  const half = across / 2;
  return (half * half) / (corner + Math.sqrt(corner * corner - half * half));
}

/** Angle at the apex between the middle line and the point at this distance whose upright part is `side`, radians. */
const angleOf = (distance: number, side: number): number =>
  Math.atan2(Math.sqrt(Math.max(0, (distance - side) * (distance + side))), side);

/** Less of a shared stretch than this is a touch, mm. */
const touch = 1e-9;

/**
 * How far around the rectangle reaches within a stretch of the wall, in turns from its middle line either way: it
 * covers the wall between `inner` and `outer` on both sides. `inner` is more than 0 only where the stretch meets no
 * more than its two outer corners. Undefined where it does not reach into the stretch, or only touches it.
 *
 * At distance rho from the apex a level arc lies in the rectangle where rho sin(angle) is at most half its width and
 * rho cos(angle) between its two level edges.
 */
export function turnsWithin(
  wall: FlatWall,
  size: Footprint,
  along: number,
  stretch: Reach,
): { readonly inner: number; readonly outer: number } | undefined {
  const reach = reachAt(wall, size, along);
  const from = Math.max(reach.from, stretch.from);
  const to = Math.min(reach.to, stretch.to);
  if (!(to - from > touch)) return undefined;
  if (isLevel(wall)) return { inner: 0, outer: size.across / 2 / girthAt(wall, along) };
  const [nearest, furthest] = wall.sine < 0 ? [to, from] : [from, to];
  const [low, high] = [fromApex(wall, nearest), fromApex(wall, furthest)];
  const middle = fromApex(wall, along);
  const [near, far] = [middle - size.up / 2, middle + size.up / 2];
  const half = size.across / 2;
  const widest = Math.min(high, Math.max(low, Math.hypot(half, near)));
  const outer = Math.min(Math.asin(Math.min(1, half / widest)), angleOf(widest, near));
  const inner = low > far ? angleOf(low, far) : 0;
  const turn = Math.abs(sweep(wall));
  return { inner: inner / turn, outer: outer / turn };
}

/**
 * How many turns the middle must be from a line up the wall for the rectangle to stay `offset` mm beside that line,
 * measured square to it; 1 where there is no such place.
 */
export function turnsBeside(wall: FlatWall, size: Footprint, along: number, offset: number): number {
  const half = size.across / 2;
  if (isLevel(wall)) return (half + offset) / girthAt(wall, along);
  const near = fromApex(wall, along) - size.up / 2;
  const corner = Math.hypot(half, near);
  if (offset > corner) return 1;
  return (Math.atan2(half, near) + Math.asin(offset / corner)) / Math.abs(sweep(wall));
}

/** How far the rectangle reaches past the line that runs `offset` mm beside a line up the wall so many turns away, mm. */
export function pastLine(
  wall: FlatWall,
  size: Footprint,
  along: number,
  turns: number,
  offset: number,
): number {
  const half = size.across / 2;
  if (isLevel(wall)) return half + offset - turns * girthAt(wall, along);
  const near = fromApex(wall, along) - size.up / 2;
  // Past a right angle from its own nearest corner the line has gone behind the apex.
  const angle = Math.min(turns * Math.abs(sweep(wall)), Math.atan2(half, near) + Math.PI / 2);
  return offset - (near * Math.sin(angle) - half * Math.cos(angle));
}
