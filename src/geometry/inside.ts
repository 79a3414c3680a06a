// Whether a place lies in an area.
import { hullBox } from './box.ts';
import type { Contour, Shape } from './contour.ts';
import type { Point } from './point.ts';
import { chordCount, pointAt } from './segment.ts';
import { chordTolerance } from './tolerance.ts';

/** How often a ray from p to the right crosses a contour, its curves taken as chords. */
function crossings({ segments }: Contour, p: Point): number {
  let count = 0;
  for (const s of segments) {
    const chords = chordCount(s, chordTolerance);
    let from = s.from;
    for (let i = 1; i <= chords; i++) {
      const to = i === chords ? s.to : pointAt(s, i / chords);
      if (from.y > p.y !== to.y > p.y) {
        const x = from.x + ((p.y - from.y) / (to.y - from.y)) * (to.x - from.x);
        if (x > p.x) count += 1;
      }
      from = to;
    }
  }
  return count;
}

/** Whether a shape holds a place; on its edge, to within the chords' tolerance, either answer may come. */
export function holdsPoint({ contours }: Shape, p: Point): boolean {
  const box = hullBox(contours);
  if (p.x < box.minX || p.x > box.maxX || p.y < box.minY || p.y > box.maxY) return false;
  return contours.reduce((sum, contour) => sum + crossings(contour, p), 0) % 2 === 1;
}
