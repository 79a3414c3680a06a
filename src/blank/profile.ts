// A wall of revolution by its profile: how far from the axis and how high it is, all the way along it.
import { type Spline, splineAt, splineThrough, straightBelow } from './spline.ts';

/** A place on the profile. `lean` is the wall's angle from upright there, radians, positive where it widens upward. */
export interface ProfilePoint {
  readonly along: number;
  readonly radius: number;
  readonly height: number;
  readonly lean: number;
}

/** Straight between corners: a cup that steps down to fit a holder. */
export interface SteppedProfile {
  readonly kind: 'stepped';
  readonly length: number;
  /** From the foot up. `lean` is that of the stretch above the corner (of the last one: below it). */
  readonly corners: readonly ProfilePoint[];
}

/** One smooth curve: a barrel, a bowl. */
export interface SmoothProfile {
  readonly kind: 'smooth';
  readonly length: number;
  /** What the curve is a function of: the height, or the distance along the wall. */
  readonly by: 'height' | 'along';
  readonly radius: Spline;
  /** Where the curve was measured up its own length: heights against distances along, at close steps. */
  readonly table: readonly ProfilePoint[];
}

export type Profile = SteppedProfile | SmoothProfile;

/** A reading's place on the profile and its radius, mm. */
export interface ProfileReading {
  readonly kind: 'height' | 'along';
  readonly at: number;
  readonly radius: number;
}

/** Closest spacing of the table of a smooth curve: its length in so many steps, each integrated by Simpson's rule. */
const tableSteps = 512;

/** A lowest reading nearer to the foot than this is at the foot, mm. */
export const atFoot = 1e-6;

/**
 * Straight from reading to reading; below the lowest the first stretch goes on down to the foot. Needs two or more,
 * from the foot up, none steeper than level.
 */
export function steppedProfile(readings: readonly ProfileReading[]): SteppedProfile {
  const corners: ProfilePoint[] = [];
  const fromFoot = takenToFoot(readings);
  fromFoot.forEach((reading, i) => {
    const below = corners.at(-1);
    const before = fromFoot[i - 1];
    if (!below || !before) {
      corners.push({ along: 0, height: 0, radius: reading.radius, lean: 0 });
      return;
    }
    const wider = reading.radius - before.radius;
    const rise = reading.kind === 'height' ? reading.at - below.height : undefined;
    const length = rise === undefined ? reading.at - below.along : Math.hypot(rise, wider);
    const lean = leanOf(wider / length);
    corners[i - 1] = { ...below, lean };
    corners.push({
      along: below.along + length,
      height: below.height + length * Math.cos(lean),
      radius: reading.radius,
      lean,
    });
  });
  return { kind: 'stepped', length: corners.at(-1)?.along ?? 0, corners };
}

/** The lean of a wall whose radius grows by so much of the way along it; what is over level counts as level. */
const leanOf = (growth: number): number => Math.asin(Math.max(-1, Math.min(1, growth)));

/** The lowest reading moved down its own stretch to the foot: that stretch stays the line it is. */
function takenToFoot(readings: readonly ProfileReading[]): readonly ProfileReading[] {
  const [first, second, ...rest] = readings;
  if (!first || !second || first.at <= atFoot) return readings;
  const slope = (second.radius - first.radius) / (second.at - first.at);
  return [{ kind: first.kind, at: 0, radius: first.radius - slope * first.at }, second, ...rest];
}

/**
 * The not-a-knot spline through the readings, all by height or all by along; below the lowest it goes straight on down
 * to the foot. Needs two or more, from the foot up.
 */
export function smoothProfile(readings: readonly ProfileReading[]): SmoothProfile {
  const by = readings[0]?.kind ?? 'height';
  const through = splineThrough(
    readings.map(({ at }) => at),
    readings.map((reading) => reading.radius),
  );
  const radius = straightBelow(through, 0);
  const top = readings.at(-1)?.at ?? 0;
  const table: ProfilePoint[] = [];
  let other = 0;
  for (let i = 0; i <= tableSteps; i++) {
    const at = (top * i) / tableSteps;
    if (i > 0) other += companion(radius, by, at - top / tableSteps, at);
    table.push(profilePoint(radius, by, at, other));
  }
  return { kind: 'smooth', by, radius, table, length: by === 'height' ? other : top };
}

/** Along for a step of height, or height for a step of along. Source: arc length, ds² = dr² + dz²; Simpson's rule. */
function companion(radius: Spline, by: 'height' | 'along', from: number, to: number): number {
  const rate = (at: number) => {
    const { first } = splineAt(radius, at);
    return by === 'height' ? Math.hypot(1, first) : Math.sqrt(Math.max(0, 1 - first * first));
  };
  return ((to - from) / 6) * (rate(from) + 4 * rate((from + to) / 2) + rate(to));
}

function profilePoint(radius: Spline, by: 'height' | 'along', at: number, other: number): ProfilePoint {
  const { value, first } = splineAt(radius, at);
  return by === 'height'
    ? { along: other, height: at, radius: value, lean: Math.atan(first) }
    : { along: at, height: other, radius: value, lean: leanOf(first) };
}

/** Places from foot to lip, as close together as the wall bends; a corner is there twice, with the lean of each side. */
export function placesOfProfile(profile: Profile): readonly ProfilePoint[] {
  if (profile.kind === 'smooth') return profile.table;
  return profile.corners.flatMap((corner, i) => {
    const below = profile.corners[i - 1];
    return below && below.lean !== corner.lean ? [{ ...corner, lean: below.lean }, corner] : [corner];
  });
}

/** The profile at a distance along the wall; past the ends the end stretches go on straight (stepped) or on their curve. */
export function profileAt(profile: Profile, along: number): ProfilePoint {
  return profile.kind === 'stepped' ? steppedAt(profile, along) : smoothAt(profile, along);
}

function steppedAt({ corners }: SteppedProfile, along: number): ProfilePoint {
  let i = 0;
  while (i < corners.length - 2 && along > (corners[i + 1]?.along ?? Infinity)) i++;
  const { along: from, height, radius, lean } = corners[i] ?? { along: 0, height: 0, radius: 0, lean: 0 };
  const on = along - from;
  return { along, lean, height: height + on * Math.cos(lean), radius: radius + on * Math.sin(lean) };
}

function smoothAt({ by, radius, table }: SmoothProfile, along: number): ProfilePoint {
  let low = 0;
  let high = table.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((table[middle]?.along ?? 0) <= along) low = middle;
    else high = middle;
  }
  const base = table[low] ?? { along: 0, height: 0, radius: 0, lean: 0 };
  if (by === 'along')
    return profilePoint(radius, by, along, base.height + companion(radius, by, base.along, along));
  // The step is short: a step by the slope, then one of Newton's on the integrated length.
  let height = base.height + (along - base.along) * Math.cos(base.lean);
  for (let i = 0; i < 3; i++) {
    const missing = along - base.along - companion(radius, by, base.height, height);
    height += missing / Math.hypot(1, splineAt(radius, height).first);
  }
  return profilePoint(radius, by, height, along);
}

/** Distance along the wall of a height on it, mm; the wall rises all the way. */
export function alongOfHeight(profile: Profile, height: number): number {
  let [low, high] = [0, profile.length];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (profileAt(profile, middle).height < height) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
