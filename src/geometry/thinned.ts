// A way with fewer places.
import type { Point } from './point.ts';

/**
 * The places of a way, both ends among them, that leave none of the rest farther than the tolerance, mm, from a new side.
 * Source: D. H. Douglas, T. K. Peucker, The Canadian Cartographer 10, 1973.
 */
export function thinned(way: readonly Point[], tolerance: number): readonly Point[] {
  const keep = new Set([0, way.length - 1]);
  const spans: [number, number][] = [[0, way.length - 1]];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [from, to] = span;
    const a = way[from];
    const b = way[to];
    if (!a || !b) continue;
    let worst = tolerance;
    let at = -1;
    for (let i = from + 1; i < to; i++) {
      const gap = gapTo(a, b, way[i] ?? a);
      if (gap > worst) {
        worst = gap;
        at = i;
      }
    }
    if (at < 0) continue;
    keep.add(at);
    spans.push([from, at], [at, to]);
  }
  return way.filter((_, i) => keep.has(i));
}

/** A closed ring with fewer corners, none of those left out farther than the tolerance, mm, from a new side. */
export function thinnedRing(ring: readonly Point[], tolerance: number): readonly Point[] {
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

/** How far a point is from the stretch between two others. */
function gapTo(a: Point, b: Point, p: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = dx * dx + dy * dy;
  const t = length > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length)) : 0;
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}
