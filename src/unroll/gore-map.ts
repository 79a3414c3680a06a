// A gore as a map: from a place of the wall under it to a place of its own drawing.
import { add, type Point, scale } from '../geometry/point.ts';
import { sinc } from '../geometry/sinc.ts';
import { type GoreOptions, type GoreWall, halfWidth } from './gores.ts';

/** A place on a gore: `share` is -1 at its left edge, 0 at its middle line, 1 at its right edge; `on` is mm up the wall. */
export interface GorePlace {
  readonly share: number;
  readonly on: number;
}

export type GoreFrame = Pick<GoreOptions, 'count' | 'levels'> & {
  /** Where the middle line of the gore's drawing begins, mm on. */
  readonly from: number;
};

/**
 * Where a place of the wall comes to lie in the drawing of its gore: on its own level line, as far from the middle line
 * as it is on the wall. Source: the polyconic projection, each level line an arc about the apex of its own touching
 * cone (J. P. Snyder, Map Projections: A Working Manual, 1987, p. 124); with straight levels the sinusoidal (p. 243).
 */
export function toGore(wall: GoreWall, { count, levels, from }: GoreFrame, { share, on }: GorePlace): Point {
  const { radius, slope } = wall.at(on);
  const across = share * halfWidth(radius, count);
  const turn = levels === 'arcs' ? share * halfWidth(slope, count) : 0;
  return { x: across * sinc(turn), y: from - on + (across * turn * sinc(turn / 2) ** 2) / 2 };
}

/** Step of the difference that tells how a gore's drawing changes up the wall, mm. */
const nudge = 1e-3;

/** What a small step on the wall becomes in the drawing: the derivative of `toGore`. */
export function stepOnGore(wall: GoreWall, frame: GoreFrame, place: GorePlace, by: GorePlace): Point {
  const { count, levels } = frame;
  const { radius, slope } = wall.at(place.on);
  const angle = levels === 'arcs' ? place.share * halfWidth(slope, count) : 0;
  const around = by.share * halfWidth(radius, count);
  const level = { x: around * Math.cos(angle), y: around * Math.sin(angle) };
  return add(level, scale(upward(wall, frame, place), by.on));
}

/** One mm up the wall, in the drawing. */
function upward(wall: GoreWall, frame: GoreFrame, { share, on }: GorePlace): Point {
  // Between corners the slope is the same all the way, and a step must not reach past one.
  if (frame.levels === 'straight') return { x: share * halfWidth(wall.at(on).slope, frame.count), y: -1 };
  const [low, high] = [on - nudge, on + nudge].map((at) => toGore(wall, frame, { share, on: at }));
  if (!low || !high) throw new Error('a step has two ends');
  return { x: (high.x - low.x) / (2 * nudge), y: (high.y - low.y) / (2 * nudge) };
}
