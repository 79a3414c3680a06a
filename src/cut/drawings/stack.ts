// Pieces stacked up a sheet, arcs close into one another.
import type { Contour } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { pointAt } from '../../geometry/segment.ts';

/** How finely outlines are looked at, mm. */
const spacing = 1;

/** Highest and lowest point of pieces in each upright stripe of the sheet. */
type Reach = Map<number, { top: number; bottom: number }>;

function reachOf(contour: Contour, gap: number): Reach {
  const reach: Reach = new Map();
  for (const s of contour.segments) {
    const length = Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y);
    const steps = Math.max(1, Math.ceil((2 * length) / spacing));
    for (let i = 0; i <= steps; i++) {
      const { x, y } = pointAt(s, i / steps);
      // A point counts for every stripe nearer than the gap, so that pieces keep it sideways too; `gap` 0 leaves it at its own.
      for (
        let stripe = Math.floor((x - gap) / spacing);
        stripe <= Math.floor((x + gap) / spacing);
        stripe++
      ) {
        const there = reach.get(stripe);
        reach.set(stripe, {
          top: Math.min(y, there?.top ?? y),
          bottom: Math.max(y, there?.bottom ?? y),
        });
      }
    }
  }
  return reach;
}

/**
 * Shifts, one an outline, that stack outlines upwards in their order, each as low as it can lie straight above those
 * before it with `gap` mm between them or a little more. The first stays where it is.
 */
export function stacked(outlines: readonly Contour[], gap: number): Point[] {
  const taken: Reach = new Map();
  return outlines.map((contour) => {
    const reach = reachOf(contour, gap);
    let shift = taken.size === 0 ? 0 : Number.POSITIVE_INFINITY;
    for (const [stripe, { bottom }] of reach) {
      const there = taken.get(stripe);
      if (there) shift = Math.min(shift, there.top - gap - bottom);
    }
    if (shift === Number.POSITIVE_INFINITY) shift = 0;
    for (const [stripe, { top, bottom }] of reachOf(contour, 0)) {
      const there = taken.get(stripe);
      taken.set(stripe, {
        top: Math.min(top + shift, there?.top ?? top + shift),
        bottom: Math.max(bottom + shift, there?.bottom ?? bottom + shift),
      });
    }
    return { x: 0, y: shift };
  });
}
