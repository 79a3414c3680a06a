// Where around the wall a seam through a pattern goes past single motifs: by whole repeats from where the pattern has it.
import type { Point } from '../../geometry/point.ts';
import { type FlatWall, girthAt, toWall } from '../../unroll/flat-wall.ts';
import { type Winding, windingTurn } from '../../unroll/winding.ts';

/** The room a motif takes on the wall: so far around its place to either side, in turns, and from here to there along, mm. */
export interface MotifRoom {
  readonly turn: number;
  readonly before: number;
  readonly after: number;
  readonly from: number;
  readonly to: number;
}

/** A difference of turns, -0.5 to 0.5. */
const wrapped = (turn: number): number => turn - Math.round(turn);

/** The room that points of a motif about a turn of the wall take, `clear` mm more on all sides. */
export function motifRoomOf(
  wall: FlatWall,
  turn: number,
  points: readonly Point[],
  clear: number,
): MotifRoom {
  let [before, after, from, to] = [0, 0, Infinity, -Infinity];
  for (const point of points) {
    const place = toWall(wall, point);
    const aside = wrapped(place.turn - turn);
    const more = clear / girthAt(wall, place.along);
    before = Math.max(before, more - aside);
    after = Math.max(after, more + aside);
    from = Math.min(from, place.along - clear);
    to = Math.max(to, place.along + clear);
  }
  return { turn, before, after, from, to };
}

/** Steps in which a line is held against rooms, mm up the wall. */
const looked = 0.25;

/** Whether a seam, and what its finish goes on by, stays out of a room. */
function passesBy(winding: Winding, { turn, before, after, from, to }: MotifRoom): boolean {
  for (let along = from; along <= to; along += looked) {
    const start = wrapped(windingTurn(winding, along) - turn);
    if (start < after && start + winding.lap > -before) return false;
    // The finish may reach a room that begins half a turn on.
    if (start - 1 + winding.lap > -before) return false;
  }
  return true;
}

const movedBy = (winding: Winding, turn: number): Winding =>
  turn === 0 ? winding : { ...winding, turns: winding.turns.map((at) => at + turn) };

/** Further from turn 0 a seam is not moved by itself: it would come to the front. */
const furthest = 0.25;

/**
 * The seam of a pattern that is the same `parts` times around, moved by as few repeats as bring it past all rooms; undefined where
 * every repeat within a quarter turn has one in the way.
 */
export function windingPast(
  winding: Winding,
  parts: number,
  rooms: readonly MotifRoom[],
): Winding | undefined {
  const steps = Array.from({ length: parts }, (_, i) => (i % 2 === 0 ? -i / 2 : (i + 1) / 2));
  return steps
    .filter((step) => Math.abs(step) / parts <= furthest)
    .map((step) => movedBy(winding, step / parts))
    .find((moved) => rooms.every((room) => passesBy(moved, room)));
}
