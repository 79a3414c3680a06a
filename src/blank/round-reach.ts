// How far up and down the wall its rounded edges reach.
import { type Finding, refuseIfAny, stop } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import type { Blank } from './blank.ts';
import type { ProfilePoint } from './profile.ts';

/** A wall as rounds ask for it: mm, and `lean` in radians from upright. */
export interface RoundedWall {
  /** From foot to lip, as close together as the wall bends; a sharp corner is there twice, with the lean of each side. */
  readonly places: readonly ProfilePoint[];
  /** The wall between them. */
  readonly at: (along: number) => ProfilePoint;
}

type End = 'foot' | 'lip';

/** Where a round touches the wall. */
export interface RoundTouch {
  /** mm from the foot corner. */
  readonly along: number;
  /** Of the round there, which is the wall's but at a corner, radians. */
  readonly lean: number;
}

/** Halvings of a stretch in looking for a touching point: to far less than any wall is read to. */
const halvings = 48;

/**
 * Where a round of radius `round` at an end touches the wall: the first place from that end where it does; the wall's
 * other end where it touches nowhere.
 *
 * Its centre is as far inside the wall as inside the plane of its end. A wall of lean a, whose place lies d from the plane
 * of the foot, has that centre at d + q sin a: so d = q (1 - sin a), and d = q (1 + sin a) at the lip. On a straight
 * wall that is q / tan(w/2) from the corner of angle w. Where the wall juts in, the round touches the corner itself.
 */
export function roundTouch({ places, at }: RoundedWall, round: number, end: End): RoundTouch {
  const side = end === 'foot' ? 1 : -1;
  const fromEnd = side === 1 ? places : [...places].reverse();
  const [corner, far] = [fromEnd[0], fromEnd.at(-1)];
  if (!corner || !far) return { along: 0, lean: 0 };
  if (round === 0) return corner;
  const off = ({ height }: ProfilePoint) => Math.abs(height - corner.height);
  const isPast = (place: ProfilePoint) => off(place) >= round * (1 - side * Math.sin(place.lean));
  const past = fromEnd.findIndex(isPast);
  const [before, after] = [fromEnd[past - 1], fromEnd[past]];
  if (!before || !after) return far;
  if (before.along === after.along)
    return { along: after.along, lean: side * Math.asin(1 - off(after) / round) };
  let [near, beyond] = [before.along, after.along];
  for (let i = 0; i < halvings; i++) {
    const middle = (near + beyond) / 2;
    if (isPast(at(middle))) beyond = middle;
    else near = middle;
  }
  return at((near + beyond) / 2);
}

/**
 * How much of the wall the rounds at foot and lip take, mm along.
 * @throws Refused, rule `round-too-large`, when the rounds leave no wall or need more foot or lip than there is.
 */
export function roundReach(
  wall: RoundedWall,
  { footRound, lipRound }: Pick<Blank, 'footRound' | 'lipRound'>,
): { readonly foot: number; readonly lip: number } {
  const length = wall.places.at(-1)?.along ?? 0;
  const [foot, lip] = [roundTouch(wall, footRound, 'foot'), roundTouch(wall, lipRound, 'lip')];
  const reach = { foot: foot.along, lip: length - lip.along };
  const findings = [
    ...widerThanEnd(wall, 'foot', footRound, foot),
    ...widerThanEnd(wall, 'lip', lipRound, lip),
  ];
  if (findings.length === 0 && reach.foot + reach.lip >= length)
    findings.push(noBand(length, { footRound, lipRound }, reach));
  refuseIfAny(findings);
  return reach;
}

/** A round's other touching point lies in the plane of the foot or lip, straight below or above its centre. */
function widerThanEnd(wall: RoundedWall, end: End, round: number, touch: RoundTouch): readonly Finding[] {
  const radius = wall.places.at(end === 'foot' ? 0 : -1)?.radius ?? 0;
  const centre = wall.at(touch.along).radius - round * Math.cos(touch.lean);
  if (centre >= 0) return [];
  const says =
    `${inMm(round)} needs ${inMm(radius - centre)} of the ${end}, whose radius is only ` +
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
