// The flat band of a straight wall: what the rounds at foot and lip leave for a straightedge.
import type { Blank } from './blank.ts';
import { roundReach } from './round-reach.ts';
import { bareRadiusAt, type StraightWall } from './straight-wall.ts';

/** A part of the wall, mm along from the foot corner. */
export interface Band {
  readonly from: number;
  readonly to: number;
}

/**
 * Where a straight wall is flat: from the tangent point of the foot's round to that of the lip's.
 * @throws Refused, rule `round-too-large`, when the rounds leave no band or need more foot or lip than there is.
 */
export function flatBand(wall: StraightWall, blank: Pick<Blank, 'footRound' | 'lipRound'>): Band {
  const { radius, halfAngle: lean, length } = wall;
  const { foot, lip } = roundReach(
    { radius, lean },
    { radius: bareRadiusAt(wall, length), lean },
    length,
    blank,
  );
  return { from: foot, to: length - lip };
}
