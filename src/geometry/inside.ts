// Whether a place lies in an area.
import { hullBox } from './box.ts';
import { type BoxIndex, segmentIndex } from './box-index.ts';
import type { Segment, Shape } from './contour.ts';
import type { Point } from './point.ts';
import { chordCount, pointAt } from './segment.ts';
import { chordTolerance } from './tolerance.ts';

/** How often a ray from p to the right crosses a segment, a curve taken as chords. */
function crossings(s: Segment, p: Point): number {
  const chords = chordCount(s, chordTolerance);
  let [count, from] = [0, s.from];
  for (let i = 1; i <= chords; i++) {
    const to = i === chords ? s.to : pointAt(s, i / chords);
    if (from.y > p.y !== to.y > p.y) {
      const x = from.x + ((p.y - from.y) / (to.y - from.y)) * (to.x - from.x);
      if (x > p.x) count += 1;
    }
    from = to;
  }
  return count;
}

/** Whether a shape holds a place; on its edge, to within the chords' tolerance, either answer may come. */
export function holdsPoint({ contours }: Shape, p: Point): boolean {
  const box = hullBox(contours);
  if (p.x < box.minX || p.x > box.maxX || p.y < box.minY || p.y > box.maxY) return false;
  const count = contours.reduce(
    (sum, { segments }) => segments.reduce((own, s) => own + crossings(s, p), sum),
    0,
  );
  return count % 2 === 1;
}

/** Whether any of many areas that overlap nowhere holds a place, asked of many places: as `holdsPoint` of each of them. */
export class InsideFinder {
  readonly #segments: readonly Segment[];
  readonly #index: BoxIndex;

  constructor(shapes: readonly Shape[]) {
    this.#segments = shapes.flatMap(({ contours }) => contours.flatMap(({ segments }) => segments));
    this.#index = segmentIndex(this.#segments);
  }

  holds(p: Point): boolean {
    const along = this.#index.meeting(p.x, p.y, Number.MAX_VALUE, p.y);
    const count = along.reduce((sum, i) => {
      const s = this.#segments[i];
      return s ? sum + crossings(s, p) : sum;
    }, 0);
    return count % 2 === 1;
  }
}
