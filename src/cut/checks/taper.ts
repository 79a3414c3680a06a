// How far a narrow place widens from its end: what is a point, and what is an arm of one width.
import type { RunEnd } from './narrow-runs.ts';

/** Sides that part by less than this, 1.5 degrees each from the middle, make an arm and no point. Common practice, no source. */
const leastSlope = Math.sin((1.5 * Math.PI) / 180);

/** A disc smaller than the one before it by less than this is chords, not a neck, mm. */
const noise = 0.01;

/** A taper ends where it widens by less than this share of what it did so far. */
const flattens = 0.5;

/** An end at least this wide, as a share of the limit, is that of an arm and no point. Common practice, no source. */
const bluntEnd = 0.5;

/** Unless its sides part by this much, 10 degrees each from the middle: a rounded tip. Common practice, no source. */
const tipSlope = Math.sin((10 * Math.PI) / 180);

/** So wide, as a share of the limit, what grows from a corner on has to become to be a point and no arm. Common practice, no source. */
const cuspWidens = 0.75;

/** Discs of a narrow place from its end on: how far along the edge each touches, mm, rising, and its radius, mm. */
export interface FromEnd {
  readonly kind: Exclude<RunEnd, 'open'>;
  /** Where the place ends, mm along. */
  readonly end: number;
  readonly at: readonly number[];
  readonly radii: readonly number[];
}

export interface Taper {
  /** How many discs from the end belong to it. */
  readonly count: number;
  /** How far from its end it is as wide as the limit, or stops widening, mm along the edge. */
  readonly length: number;
  /** The angle between its two sides on the whole, radians. */
  readonly angle: number;
  /** Half its width at its end, mm: 0 at a corner. */
  readonly endRadius: number;
}

export interface TaperOptions {
  /** What is narrower than this is narrow, mm. */
  readonly limit: number;
  /** Whether sides that leave their corner as one make a taper. */
  readonly cusps: boolean;
}

/** The taper at the end of a narrow place, for as long as its discs grow; undefined where they do not. */
export function taperOf(
  { kind, end, at, radii }: FromEnd,
  { limit, cusps }: TaperOptions,
): Taper | undefined {
  const endRadius = kind === 'point' ? 0 : (radii[0] ?? 0);
  const count = cusps && kind === 'point' && isCusp(radii, limit) ? radii.length : growing(at, radii, limit);
  const [last, radius] = [at[count - 1] ?? end, radii[count - 1] ?? 0];
  const reach = last - (kind === 'point' ? end : (at[0] ?? end));
  const slope = reach > 0 ? (radius - endRadius) / reach : 0;
  if (slope < (2 * endRadius >= bluntEnd * limit ? tipSlope : leastSlope)) return undefined;
  if (count < radii.length) return { count, length: last - end, angle: 2 * Math.atan(slope), endRadius };
  // Beyond its last disc it widens as it did just before: a cusp does so faster than on the whole.
  const before = at.findLastIndex((along) => along <= last - limit / 2);
  const late = before < 0 ? 0 : (radius - (radii[before] ?? 0)) / (last - (at[before] ?? 0));
  const rest = (limit / 2 - radius) / Math.max(late, slope);
  const whole = (limit / 2 - endRadius) / (reach + rest);
  return { count, length: last - end + rest, angle: 2 * Math.atan(whole), endRadius };
}

/** Sides that leave their corner as one and part from there on, as those of a crescent do, until it is as good as wide. */
const isCusp = (radii: readonly number[], limit: number): boolean =>
  radii.every((r, i) => r >= (radii[i - 1] ?? 0) - noise) && (radii.at(-1) ?? 0) >= (cuspWidens * limit) / 2;

/** How many discs grow from the first on, looked at over half the limit at a time. */
function growing(at: readonly number[], radii: readonly number[], limit: number): number {
  let most = radii[0] ?? 0;
  let anchor = 0;
  for (let i = 1; i < radii.length; i++) {
    const r = radii[i] ?? 0;
    if (r < most - noise) return i;
    most = Math.max(most, r);
    const reach = (at[i] ?? 0) - (at[anchor] ?? 0);
    if (reach < limit / 2) continue;
    const slope = (r - (radii[anchor] ?? 0)) / reach;
    const sofar =
      anchor === 0 ? 0 : ((radii[anchor] ?? 0) - (radii[0] ?? 0)) / ((at[anchor] ?? 0) - (at[0] ?? 0));
    if (slope < Math.max(leastSlope, flattens * sofar)) return anchor + 1;
    anchor = i;
  }
  return radii.length;
}
