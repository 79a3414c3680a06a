// Turns around the wall that are closed to something, and the least shift out of them; distances on the wall.
import { type FlatWall, toFlat, type WallPoint } from './flat-wall.ts';

/** A run of turns without its two ends; `to` is not below `from`, and either may lie outside 0 to 1. */
export interface OpenTurns {
  readonly from: number;
  readonly to: number;
}

/** Two turns nearer to each other than this are one: a millionth of a mm on any girth that is read. */
const rounding = 1e-10;

const fraction = (turn: number): number => turn - Math.floor(turn);

function isInside(turn: number, { from, to }: OpenTurns): boolean {
  if (to - from > 1 + rounding) return true;
  const past = fraction(turn - from);
  return past > rounding && past < to - from - rounding && past < 1 - rounding;
}

/** From `turn`, the shift of the least size, either way around, out of all closed runs; undefined where none is open. */
export function leastShift(closed: readonly OpenTurns[], turn: number): number | undefined {
  const open = (shift: number) => !closed.some((run) => isInside(turn + shift, run));
  if (open(0)) return 0;
  const ends = closed.flatMap(({ from, to }) => (to - from > 1 + rounding ? [] : [from, to]));
  const shifts = ends.flatMap((end) => {
    const forward = fraction(end - turn);
    return [forward, forward - 1];
  });
  const fit = shifts.filter(open);
  return fit.length === 0 ? undefined : fit.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
}

/** Distance between two places, mm, measured on the wall the shorter way around: straight, once it is laid flat. */
export function wallDistance(wall: FlatWall, from: WallPoint, to: WallPoint): number {
  const around = to.turn - from.turn;
  const shorter = around - Math.round(around);
  const a = toFlat(wall, { turn: 0.5, along: from.along });
  const b = toFlat(wall, { turn: 0.5 + shorter, along: to.along });
  return Math.hypot(b.x - a.x, b.y - a.y);
}
