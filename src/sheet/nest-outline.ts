// The outline a piece is nested by: a polygon with few corners that holds the piece and half the gap around it.
import type { Contour } from '../geometry/contour.ts';
import { ringArea } from '../geometry/grid-ring.ts';
import type { Point } from '../geometry/point.ts';
import { grownRings } from '../geometry/polygon-clip.ts';
import { chordCount, pointAt } from '../geometry/segment.ts';
import { thinnedRing } from '../geometry/thinned.ts';

/** Grid units a mm while an outline is grown. */
const gridPerMm = 1e4;

/** How much a nesting outline may stand off the true one, mm: a hair against film's width, and few corners. */
export const nestTolerance = 0.2;

/**
 * A polygon around a closed contour that is at least `gap` away from it everywhere and at most `gap` + 3 `tolerance`.
 * mm; pieces nested by such outlines are twice the gap apart.
 */
export function nestOutline(
  contour: Contour,
  gap: number,
  tolerance: number = nestTolerance,
): readonly Point[] {
  const ring = contour.segments.flatMap((segment) => {
    const count = chordCount(segment, tolerance / 4);
    return Array.from({ length: count }, (_, i) => pointAt(segment, i / count));
  });
  const grid = ring.map(({ x, y }) => ({ x: Math.round(x * gridPerMm), y: Math.round(y * gridPerMm) }));
  // A quarter covers the chords, and one more than the tolerance what simplifying may cut off a corner.
  const by = (gap + tolerance * 1.5) * gridPerMm;
  // Where the mouth of a bay closes, the bay is a ring of its own, of as many corners as it likes: the outer one is the largest.
  const [grown = grid] = [...grownRings([grid], by, (tolerance / 4) * gridPerMm)].sort(
    (a, b) => Math.abs(ringArea(b)) - Math.abs(ringArea(a)),
  );
  const points = grown.map(({ x, y }) => ({ x: x / gridPerMm, y: y / gridPerMm }));
  return thinnedRing(points, tolerance);
}
