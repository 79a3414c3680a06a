// The outline a piece is nested by: a polygon with few corners that holds the piece and half the gap around it.
import type { Contour } from '../geometry/contour.ts';
import { ringArea } from '../geometry/grid-ring.ts';
import type { Point } from '../geometry/point.ts';
import { grownRings } from '../geometry/polygon-clip.ts';
import { chordCount, pointAt } from '../geometry/segment.ts';

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
  return simplified(points, tolerance);
}

/** A closed ring with fewer corners, none of those left out farther than the tolerance from a new side. */
function simplified(ring: readonly Point[], tolerance: number): readonly Point[] {
  const start = ring[0];
  if (!start) return ring;
  const far = ring.reduce(
    (best, p, i) => (gapTo(start, start, p) > gapTo(start, start, ring[best] ?? start) ? i : best),
    0,
  );
  const first = thinned(ring.slice(0, far + 1), tolerance);
  const second = thinned([...ring.slice(far), start], tolerance);
  return [...first.slice(0, -1), ...second.slice(0, -1)];
}

/** Source: D. H. Douglas, T. K. Peucker, The Canadian Cartographer 10, 1973. */
function thinned(run: readonly Point[], tolerance: number): readonly Point[] {
  const keep = new Set([0, run.length - 1]);
  const spans: [number, number][] = [[0, run.length - 1]];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [from, to] = span;
    const a = run[from];
    const b = run[to];
    if (!a || !b) continue;
    let worst = tolerance;
    let at = -1;
    for (let i = from + 1; i < to; i++) {
      const gap = gapTo(a, b, run[i] ?? a);
      if (gap > worst) {
        worst = gap;
        at = i;
      }
    }
    if (at < 0) continue;
    keep.add(at);
    spans.push([from, at], [at, to]);
  }
  return run.filter((_, i) => keep.has(i));
}

/** How far a point is from the stretch between two others. */
function gapTo(a: Point, b: Point, p: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = dx * dx + dy * dy;
  const t = length > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length)) : 0;
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}
