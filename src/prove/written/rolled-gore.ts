// Rolling a gore onto its wall: the proof's own formulas, polar about the cone that touches the wall at each level.
import type { Point } from '../../geometry/point.ts';

/** The surface that the middle of the film lies on, by places up it, from the foot up. */
export interface GoreSurface {
  readonly places: readonly {
    /** mm up the surface itself from the foot corner. */
    readonly on: number;
    readonly radius: number;
    /** Sine of the lean just above; past the ends the surface goes straight on. */
    readonly slope: number;
  }[];
  /** `arcs`: level lines lie on the cone that touches the wall there; `straight`: they lie across the gore. */
  readonly levels: 'arcs' | 'straight';
  readonly count: number;
}

/** Radius and slope at a place, mm and mm a mm. */
export function surfaceAt({ places }: GoreSurface, on: number): { radius: number; slope: number } {
  let [low, high] = [0, places.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((places[middle]?.on ?? 0) <= on) low = middle;
    else high = middle;
  }
  const [a, b] = [places[low], places[high]];
  if (!a || !b) return { radius: Number.NaN, slope: Number.NaN };
  if (on <= a.on) return { radius: a.radius + (on - a.on) * a.slope, slope: a.slope };
  if (on >= b.on) return { radius: b.radius + (on - b.on) * b.slope, slope: b.slope };
  const share = (on - a.on) / (b.on - a.on);
  return {
    radius: a.radius + (b.radius - a.radius) * share,
    slope: a.slope + (b.slope - a.slope) * share,
  };
}

/** A place of a gore on its wall: mm around from its middle line, left negative, and mm up the surface. */
export interface GoreSpot {
  readonly aside: number;
  readonly on: number;
}

const rounds = 60;
const settled = 1e-12;

/** Bend of the level line through a place, per mm, once laid flat: slope over radius, about the cone's point. */
function bendAt(surface: GoreSurface, on: number): number {
  if (surface.levels === 'straight') return 0;
  const { radius, slope } = surfaceAt(surface, on);
  return slope / radius;
}

/**
 * Where a point of a gore lies on the wall: x mm to the right of its middle line, y mm up it, from the height `from`.
 * The level line through it is the circle about the point of the cone that touches the wall where the circle meets the
 * middle line; which that is settles in a few rounds.
 */
export function rollGore(surface: GoreSurface, from: number, { x, y }: Point): GoreSpot {
  let up = y;
  for (let i = 0; i < rounds; i++) {
    const fall = y - up;
    const next = y + (bendAt(surface, from + up) * (x * x + fall * fall)) / 2;
    const moved = Math.abs(next - up);
    up = next;
    if (moved < settled) break;
  }
  const bend = bendAt(surface, from + up);
  const angle = Math.atan2(bend * x, 1 + bend * (y - up));
  return { aside: Math.abs(angle) < 1e-6 ? x / (1 + bend * (y - up)) : angle / bend, on: from + up };
}

/** Where a place of the wall lies on the gore: the inverse of `rollGore`. */
export function layGore(surface: GoreSurface, from: number, { aside, on }: GoreSpot): Point {
  const bend = bendAt(surface, on);
  const angle = bend * aside;
  const chord = Math.abs(angle) < 1e-6 ? aside : Math.sin(angle) / bend;
  return { x: chord, y: on - from - chord * Math.tan(angle / 2) };
}

/** Half of a gore's share of the girth at a place, mm. */
export const halfShare = (surface: GoreSurface, on: number): number =>
  (Math.PI * surfaceAt(surface, on).radius) / surface.count;
