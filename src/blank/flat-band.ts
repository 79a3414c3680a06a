// The flat band of a straight wall: what the rounds at foot and lip leave for a straightedge.
import type { Blank } from './blank.ts';
import type { ProfilePoint } from './profile.ts';
import { type RoundedWall, roundReach } from './round-reach.ts';
import { bareRadiusAt, heightAt, type StraightWall } from './straight-wall.ts';

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
  const { foot, lip } = roundReach(roundedStraight(wall), blank);
  return { from: foot, to: wall.length - lip };
}

/** A straight wall as rounds ask for it. */
export function roundedStraight(wall: StraightWall): RoundedWall {
  const at = (along: number): ProfilePoint => ({
    along,
    radius: bareRadiusAt(wall, along),
    height: heightAt(wall, along),
    lean: wall.halfAngle,
  });
  return { places: [at(0), at(wall.length)], at };
}
