// Between a place of the wall and a point in space, on the circles that the vessel is made of.
import type { WallPlace } from '../store.ts';

export interface WallRing {
  readonly along: number;
  readonly radius: number;
  readonly height: number;
}

/** mm, y up the axis, turn 0 towards +z and turn growing towards +x. */
export interface SpacePoint {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** What a chord of the drawn surface may stray from its circle, as a share of the radius; further in is the inside. */
const nearWall = 0.02;

/** The ring where `key` has a value, between the rings to either side of it; undefined past the ends. */
function ringWhere(rings: readonly WallRing[], key: 'along' | 'height', value: number): WallRing | undefined {
  const above = rings.findIndex((ring, i) => i > 0 && ring[key] >= value);
  const [low, high] = [rings[above - 1], rings[above]];
  if (!low || !high || value < low[key]) return undefined;
  const length = high[key] - low[key];
  const share = length > 0 ? (value - low[key]) / length : 0;
  const between = (name: keyof WallRing) => low[name] + share * (high[name] - low[name]);
  return { along: between('along'), radius: between('radius'), height: between('height') };
}

export function pointOf(rings: readonly WallRing[], { turn, along }: WallPlace): SpacePoint | undefined {
  const ring = ringWhere(rings, 'along', along);
  const angle = 2 * Math.PI * turn;
  return ring && { x: ring.radius * Math.sin(angle), y: ring.height, z: ring.radius * Math.cos(angle) };
}

/** Undefined off the wall: on the foot, the rim or the inside. */
export function placeOf(rings: readonly WallRing[], { x, y, z }: SpacePoint): WallPlace | undefined {
  const ring = ringWhere(rings, 'height', y);
  if (!ring || Math.hypot(x, z) < ring.radius * (1 - nearWall)) return undefined;
  const turn = Math.atan2(x, z) / (2 * Math.PI);
  return { turn: turn < 0 ? turn + 1 : turn, along: ring.along };
}
