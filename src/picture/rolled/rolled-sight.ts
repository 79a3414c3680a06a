// How much of a round body is in sight, and what it looks like from outside.
import { hull } from '../../geometry/convex-chains.ts';
import { type GridRing, ringsIn } from '../../geometry/grid-ring.ts';
import type { Point } from '../../geometry/point.ts';
import { clipPolygons } from '../../geometry/polygon-clip.ts';
import { type Camera, seenRings } from './rolled-camera.ts';
import { closeRings, type ProfileRing } from './rolled-rings.ts';
import type { BodyRing, Ring } from './rolled-vessel.ts';

/**
 * How far around from the facing turn a circle of the body stays in sight, as a turn: 0 to 0.5. `body` is all that may
 * stand in its way, from the foot up.
 *
 * The body is cut by the level at a height s tan e above the circle (radius r, lean a), where its radius is R; the
 * line of sight from the circle's point at the angle p from the facing turn passes there at r sin p beside the axis and
 * r cos p + s before it, and is free where that is outside R: where cos p >= (R² - r² - s²) / 2rs. For s near 0 this is
 * the wall's own turning away, cos p >= tan a tan e, and for a convex body nothing else. Only what is higher can hide,
 * since the eye is above the level; each limit is one of cos p, so what is in sight is one stretch about the facing turn.
 */
export function sightOf(
  { radius, height, lean }: BodyRing,
  body: readonly Ring[],
  elevation: number,
): number {
  const tan = Math.tan(elevation);
  let limit = Math.tan(lean) * tan;
  const hide = (s: number, R: number) => {
    if (s > 0) limit = Math.max(limit, (R * R - radius * radius - s * s) / (2 * radius * s));
  };
  body.forEach((above, i) => {
    const s = (above.height - height) / tan;
    hide(s, above.radius);
    const next = body[i + 1];
    const end = next === undefined ? s : (next.height - height) / tan;
    if (next === undefined || end <= Math.max(s, 0)) return;
    // Between two circles R is k s + b, and the limit is largest inside where s² = (b² - r²) / (k² - 1).
    const k = (next.radius - above.radius) / (end - s);
    const b = above.radius - k * s;
    // A side that begins at the circle itself hides it by turning away: a ledge, what lies on it.
    if (s <= 0 && Math.abs(b - radius) < 1e-9 * radius) limit = Math.max(limit, k);
    const inside = Math.sqrt((b * b - radius * radius) / (k * k - 1));
    if (k * k < 1 && inside > s && inside < end) hide(inside, b + k * inside);
  });
  return Math.acos(Math.min(1, Math.max(-1, limit))) / (2 * Math.PI);
}

/** How far around a circle of the wall is in sight from the facing turn, as a turn. */
export interface Sight {
  readonly along: number;
  readonly half: number;
}

/** What is in sight of a stretch of wall, at its rings and at more between them so that none are further apart than `step`. */
export const sightsOf = (
  stretch: readonly ProfileRing[],
  step: number,
  body: readonly Ring[],
  elevation: number,
): readonly Sight[] =>
  closeRings(stretch, step).map((ring) => ({ along: ring.along, half: sightOf(ring, body, elevation) }));

/** Points around a circle: chords of 3 degrees, under a thousandth of the radius from it. */
const around = 120;

/** The fewest of the circles, both ends among them, that the rest stay within a tolerance of, mm. */
function fewerRings(rings: readonly Ring[], tolerance: number): readonly Ring[] {
  const kept: Ring[] = [];
  let last = 0;
  rings.forEach((ring, i) => {
    const [a, b] = [rings[last], rings[i + 1]];
    const spared = i > 0 && a && b && rings.slice(last + 1, i + 1).every((p) => beside(a, p, b) <= tolerance);
    if (spared) return;
    kept.push(ring);
    last = i;
  });
  return kept;
}

/** How far a point of the profile lies off the line through two others. */
function beside(a: Ring, p: Ring, b: Ring): number {
  const [dr, dh] = [b.radius - a.radius, b.height - a.height];
  const length = Math.hypot(dr, dh);
  const off = dr * (p.height - a.height) - dh * (p.radius - a.radius);
  return length === 0 ? Math.hypot(p.radius - a.radius, p.height - a.height) : Math.abs(off) / length;
}

/** How far the outline may stray, mm: what the picture is written to. */
const outlineTolerance = 0.01;

/** Grid units per mm for the outline of a body: finer than the picture's hundredths. */
const units = 1024;

/**
 * The outline of the solid between circles, as it is seen. Between neighbours the solid is part of a cone, which is
 * convex and shows as the hull of its two ends; the whole shows as all of these together, which need not be convex.
 */
export function outlineOf(camera: Camera, rings: readonly Ring[]): readonly (readonly Point[])[] {
  const part = (two: readonly Ring[]) => hull(seenRings(camera, two, -0.5, 0.5, around));
  const few = fewerRings(rings, outlineTolerance);
  if (few.length <= 2) return [part(few)];
  const parts = few.slice(1).map(
    (ring, i): GridRing =>
      part([few[i] ?? ring, ring]).map(({ x, y }) => ({
        x: Math.round(x * units),
        y: Math.round(y * units),
      })),
  );
  return ringsIn(clipPolygons('union', parts, [], 'nonzero')).map((ring) =>
    ring.map(({ x, y }) => ({ x: x / units, y: y / units })),
  );
}
