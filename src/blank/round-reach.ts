// How far up and down the wall its rounded edges reach.
import { type Finding, refuseIfAny, stop } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import type { Blank } from './blank.ts';

/** The wall's radius, mm, and its lean, radians, at one of its corners. */
export interface WallEnd {
  readonly radius: number;
  readonly lean: number;
}

/**
 * How much of the wall the rounds at foot and lip take, mm along.
 *
 * A round of radius q in a corner of angle w touches both sides q / tan(w/2) from the corner. A wall that leans out by
 * a makes a corner of 90° + a with the plane of the foot and of 90° - a with that of the lip.
 *
 * @throws Refused, rule `round-too-large`, when the rounds leave no wall or need more foot or lip than there is.
 */
export function roundReach(
  foot: WallEnd,
  lip: WallEnd,
  length: number,
  { footRound, lipRound }: Pick<Blank, 'footRound' | 'lipRound'>,
): { readonly foot: number; readonly lip: number } {
  const reach = {
    foot: footRound / Math.tan(Math.PI / 4 + foot.lean / 2),
    lip: lipRound / Math.tan(Math.PI / 4 - lip.lean / 2),
  };
  const findings = [
    ...widerThanEnd('foot', footRound, reach.foot, foot.radius),
    ...widerThanEnd('lip', lipRound, reach.lip, lip.radius),
  ];
  if (findings.length === 0 && reach.foot + reach.lip >= length)
    findings.push(noBand(length, { footRound, lipRound }, reach));
  refuseIfAny(findings);
  return reach;
}

/** A round's other tangent point lies in the plane of the foot or lip, as far from the corner as the one on the wall. */
function widerThanEnd(end: 'foot' | 'lip', round: number, reach: number, radius: number): readonly Finding[] {
  if (reach <= radius) return [];
  const says =
    `${inMm(round)} needs ${inMm(reach)} of the ${end}, whose radius is only ` +
    `${inMm(radius)}; give a smaller round`;
  return [stop('round-too-large', { key: `${end}Round` }, says)];
}

function noBand(
  length: number,
  rounds: Pick<Blank, 'footRound' | 'lipRound'>,
  reach: { readonly foot: number; readonly lip: number },
): Finding {
  const key = reach.foot >= reach.lip ? 'footRound' : 'lipRound';
  const [foot, lip, all] = [reach.foot, reach.lip, length].map((mm) => inMm(mm));
  const says = `${inMm(rounds[key])} leaves no flat wall: the foot's round takes ${foot} and the lip's ${lip} of ${all}; give smaller rounds`;
  return stop('round-too-large', { key }, says);
}
