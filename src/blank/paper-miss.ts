// By how much a paper template made for one cone misses when it is wrapped around another.
import { atanc, sinc } from '../geometry/sinc.ts';

/** What a printed template missed by when it was wrapped, and what it was made from. All mm but the half angle. */
export interface PaperFit {
  /** At the foot end of the template: a gap is positive, an overlap negative. */
  readonly foot: number;
  /** The same at the lip end. */
  readonly lip: number;
  /** How far the finish's level edge stood above the start's; left out when it was not looked at. */
  readonly climb?: number;
  /** The band the template covered, along the wall. */
  readonly band: { readonly from: number; readonly to: number };
  /** Thickness of the paper. */
  readonly paper: number;
  /** Standard uncertainty of one of these readings. */
  readonly reading: number;
  /** The bare wall the template was made from: radius at the foot corner, half angle in radians. */
  readonly template: Cone;
  /** Whether it missed by more than its reading: then it stands in the place of all readings before it. */
  readonly replaces: boolean;
}

/** A straight wall: its radius at the foot corner, mm, and its half angle, radians. */
export interface Cone {
  readonly radius: number;
  readonly halfAngle: number;
}

export interface Miss {
  readonly foot: number;
  readonly lip: number;
  readonly climb: number;
}

/**
 * What a template must miss by on this cone, mm: gaps at its foot and lip ends, and the climb of its foot edge.
 *
 * Both cones are laid flat on one sheet, the start line of the template on a line up the true wall, its foot end where
 * it belongs. The template's finish then lies where its own cone puts it, and the place of its corners on the true
 * cone tells the gaps (around, at their own height) and the climb (up the wall). Exact for paper that does not stretch;
 * sized on its mid-thickness. Source: development of a cone, polar form (references of the flat wall); derived.
 */
export function paperMiss(
  { template, band, paper }: Pick<PaperFit, 'template' | 'band' | 'paper'>,
  cone: Cone,
): Miss {
  const made = radiusOfSheet(template, band.from, paper);
  const girth = 2 * Math.PI * made;
  const sweep = 2 * Math.PI * Math.sin(template.halfAngle);
  const foot = { x: girth * sinc(sweep), y: -girth * sinc(sweep / 2) * Math.sin(sweep / 2) };
  const up = band.to - band.from;
  const lip = { x: foot.x + up * Math.sin(sweep), y: foot.y + up * Math.cos(sweep) };
  const radius = radiusOfSheet(cone, band.from, paper);
  const [atFoot, atLip] = [foot, lip].map((point) => onCone(point, cone, radius, sweep));
  return { foot: atFoot?.gap ?? 0, lip: atLip?.gap ?? 0, climb: atFoot?.up ?? 0 };
}

const radiusOfSheet = ({ radius, halfAngle }: Cone, along: number, paper: number): number =>
  radius + along * Math.sin(halfAngle) + (paper / 2) * Math.cos(halfAngle);

/** A point of the sheet, x along the level line from the start, y up the start line, as a place on the cone. */
function onCone(point: { x: number; y: number }, { halfAngle }: Cone, radius: number, near: number) {
  const sine = Math.sin(halfAngle);
  const k = sine / radius;
  const [across, up] = [k * point.x, 1 + k * point.y];
  const raw = Math.atan2(across, up);
  // A sweep over half a turn comes back from the arc tangent a whole turn short.
  const angle = raw + 2 * Math.PI * Math.round((near - raw) / (2 * Math.PI));
  // Near the start line the quotient keeps every digit, however upright the cone.
  const around = Math.abs(angle) < 1 ? (point.x / up) * atanc(across / up) : angle / k;
  const above = (k * (point.x ** 2 + point.y ** 2) + 2 * point.y) / (Math.hypot(across, up) + 1);
  const here = radius + above * sine;
  return { up: above, gap: (2 * Math.PI - around / radius) * here };
}

/**
 * Standard uncertainty of a climb, mm: its reading, and that a start line laid by eye is true to no more than three
 * readings over its own length, which tilts the whole template (common practice, no source).
 */
export function climbUncertainty({ template, band, reading }: PaperFit, leastReading: number): number {
  const u = Math.max(reading, leastReading);
  const girth = 2 * Math.PI * (template.radius + ((band.from + band.to) / 2) * Math.sin(template.halfAngle));
  return u * Math.hypot(1, (3 * girth) / (band.to - band.from));
}
