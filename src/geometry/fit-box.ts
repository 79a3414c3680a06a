// How far an outline has to be turned so that it fits an upright rectangle.
import { moveContour, rotation } from './affine.ts';
import type { Contour } from './contour.ts';
import { tightBox } from './measure.ts';

/** Room for an outline, mm; `up` may be endless. */
export interface Room {
  readonly across: number;
  readonly up: number;
}

/** Turns tried apart from those found in between, radians: a quarter of a degree. */
const step = Math.PI / 720;

/** Halvings between a turn that fits and one that does not: to a thousandth of a step and less. */
const halvings = 12;

/** A box larger than its room by less than this is as large as it, mm. */
const rounding = 1e-6;

/** By how much the outline, turned by so much, is larger than the room, the worse of both ways, mm. */
function over(outline: Contour, { across, up }: Room, turn: number): number {
  const { minX, minY, maxX, maxY } = tightBox([turn === 0 ? outline : moveContour(rotation(turn), outline)]);
  return Math.max(maxX - minX - across, maxY - minY - up);
}

/** Turns at which a straight side of the outline lies level or upright: there a tight fit is tightest. */
function flushTurns({ segments }: Contour): number[] {
  return segments.flatMap(({ kind, from, to }) => {
    if (kind !== 'line') return [];
    const lean = Math.atan2(to.y - from.y, to.x - from.x);
    return [0, 1, 2, 3].map((quarter) => {
      const turn = (quarter * Math.PI) / 2 - lean;
      return turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
    });
  });
}

/**
 * The smallest turn, radians, x towards y, at which an outline's box fits the room; 0 where it fits as it is, undefined
 * where it fits at none. A turn of more than a right angle is never needed. Found to about 1e-6 radians.
 */
export function turnToFit(outline: Contour, room: Room): number | undefined {
  const fits = (turn: number) => over(outline, room, turn) <= rounding;
  if (fits(0)) return 0;
  const count = Math.round(Math.PI / 2 / step);
  const even = Array.from({ length: count }, (_, i) => (i + 1) * step).flatMap((turn) => [turn, -turn]);
  const turns = [...even, ...flushTurns(outline).filter((turn) => Math.abs(turn) <= Math.PI / 2 + 1e-9)];
  const found = turns.sort((a, b) => Math.abs(a) - Math.abs(b) || b - a).find(fits);
  if (found === undefined) return undefined;
  // Where the fit begins between two turns that were tried, it is found by halving.
  let [fails, best] = [found - Math.sign(found) * step, found];
  for (let i = 0; i < halvings; i++) {
    const middle = (fails + best) / 2;
    if (fits(middle)) best = middle;
    else fails = middle;
  }
  return best;
}
