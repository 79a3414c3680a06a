// The widest band of a wall that bends which one piece of film can take.
import type { Band } from '../../blank/flat-band.ts';
import { longestBand, type Wall } from '../../blank/wall.ts';
import { inPercent } from '../../lengths/percent.ts';
import { type SheetBuild, widestOnWall } from '../../unroll/sheet-wall.ts';
import { filmGives } from '../plan/plan-findings.ts';
import type { Film } from '../typed/material.ts';

/** A band in mm along, and what it is given for: the shares by which the film stretches and gathers. */
export interface OnePiece extends Band {
  readonly stretch: number;
  readonly gather: number;
}

/** A wall that bends, the part of it between its rounds, and its flat bands. */
interface BentWall {
  readonly wall: Wall;
  readonly limits: Band;
  readonly flatBands: readonly Band[];
}

/**
 * The widest band that lies down on one piece, the lowest of equal ones; on a straight wall none, for all of it does.
 * A band that a straightedge finds flat is always taken, so it is never narrower than the longest of those.
 */
export function widestOnePiece(
  { wall, limits, flatBands }: BentWall,
  film: Pick<Film, 'thickness' | 'stretch' | 'gather'>,
  coats: number,
): OnePiece | undefined {
  if (wall.kind === 'straight') return undefined;
  const gives = { stretch: filmGives(film), gather: film.gather };
  const build: SheetBuild = { coats, film: film.thickness, gather: film.gather };
  const [flat, given] = [longestBand(flatBands), widestOnWall(wall, build, limits, gives)];
  const isMore = given && (!flat || lengthOf(given) > lengthOf(flat) + leastMore);
  const widest = isMore ? given : flat;
  return widest && { ...widest, ...gives };
}

/** A flat band is told as it is where film that gives would take hardly more, mm: what gives there is pulled over a corner. */
const leastMore = 1;

const lengthOf = ({ from, to }: Band): number => to - from;

export const onePieceInWords = (
  { from, to, stretch, gather }: OnePiece,
  shown: (mm: number) => string,
): string =>
  `one piece of film that stretches by ${inPercent(stretch)}${gather > 0 ? ` and gathers by ${inPercent(gather)}` : ''} lies down ` +
  `from ${shown(from)} to ${shown(to)} along the wall: a strip as wide as ${shown(to - from)} lies flat; wider, cut it in stacked pieces or gores`;
