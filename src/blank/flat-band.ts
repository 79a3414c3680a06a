// The flat band of a straight wall: what the rounds at foot and lip leave for a straightedge.
import { type Finding, Refused, stop } from '../finding.ts';
import { formatLength } from '../lengths/length.ts';
import type { Blank } from './blank.ts';
import { bareRadiusAt, type StraightWall } from './straight-wall.ts';

/** A part of the wall, mm along from the foot corner. */
export interface Band {
  readonly from: number;
  readonly to: number;
}

/**
 * Where the wall is flat: from the tangent point of the foot's round to that of the lip's.
 *
 * A round of radius q in a corner of angle w touches both sides q / tan(w/2) from the corner. A wall that leans out by
 * a makes a corner of 90° + a with the plane of the foot and of 90° - a with that of the lip.
 *
 * @throws Refused, rule `round-too-large`, when the rounds leave no band or need more foot or lip than there is.
 */
export function flatBand(
  wall: StraightWall,
  { footRound, lipRound }: Pick<Blank, 'footRound' | 'lipRound'>,
): Band {
  const foot = footRound / Math.tan(Math.PI / 4 + wall.halfAngle / 2);
  const lip = lipRound / Math.tan(Math.PI / 4 - wall.halfAngle / 2);
  const findings = [
    ...widerThanEnd('foot', footRound, foot, wall.radius),
    ...widerThanEnd('lip', lipRound, lip, bareRadiusAt(wall, wall.length)),
  ];
  const band = { from: foot, to: wall.length - lip };
  if (findings.length === 0 && band.from >= band.to)
    findings.push(noBand(wall, footRound, lipRound, foot, lip));
  if (findings.length > 0) throw new Refused(findings);
  return band;
}

/** A round's other tangent point lies in the plane of the foot or lip, as far from the corner as the one on the wall. */
function widerThanEnd(end: 'foot' | 'lip', round: number, reach: number, radius: number): readonly Finding[] {
  if (reach <= radius) return [];
  const says =
    `${formatLength(round, 'mm')} needs ${formatLength(reach, 'mm')} of the ${end}, whose radius is only ` +
    `${formatLength(radius, 'mm')}; give a smaller round`;
  return [stop('round-too-large', { key: `${end}Round` }, says)];
}

function noBand(wall: StraightWall, footRound: number, lipRound: number, foot: number, lip: number): Finding {
  const [foots, lips, length] = [foot, lip, wall.length].map((mm) => formatLength(mm, 'mm'));
  const key = foot >= lip ? 'footRound' : 'lipRound';
  const round = formatLength(foot >= lip ? footRound : lipRound, 'mm');
  const says = `${round} leaves no flat wall: the foot's round takes ${foots} and the lip's ${lips} of ${length}; give smaller rounds`;
  return stop('round-too-large', { key }, says);
}
