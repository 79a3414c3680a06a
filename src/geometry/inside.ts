// Whether a place lies in an area.
import { hullBox } from './box.ts';
import { BoxIndex, segmentIndex } from './box-index.ts';
import type { Segment, Shape } from './contour.ts';
import type { Point } from './point.ts';
import { chordCount, pointAt } from './segment.ts';
import { chordTolerance } from './tolerance.ts';

/** Goes along the chords of a segment. */
function eachChord(s: Segment, visit: (from: Point, to: Point) => void): void {
  const chords = chordCount(s, chordTolerance);
  let from = s.from;
  for (let i = 1; i <= chords; i++) {
    const to = i === chords ? s.to : pointAt(s, i / chords);
    visit(from, to);
    from = to;
  }
}

/** Whether a ray from p to the right crosses a chord. */
const crosses = (from: Point, to: Point, p: Point): boolean =>
  from.y > p.y !== to.y > p.y && from.x + ((p.y - from.y) / (to.y - from.y)) * (to.x - from.x) > p.x;

/** How often a ray from p to the right crosses a segment, a curve taken as chords. */
function crossings(s: Segment, p: Point): number {
  let count = 0;
  eachChord(s, (from, to) => {
    if (crosses(from, to, p)) count += 1;
  });
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

/**
 * Which of many areas hold a place, by their numbers, asked of many places. It looks up chords and not areas: where these are long and
 * thin and lie around one another, as gaps between rings do, each of their boxes holds nearly all places.
 */
export class HolderFinder {
  readonly #from: Point[] = [];
  readonly #to: Point[] = [];
  readonly #shapeOf: number[] = [];
  readonly #index: BoxIndex;

  constructor(shapes: readonly Shape[]) {
    shapes.forEach(({ contours }, shape) => {
      for (const { segments } of contours)
        for (const s of segments)
          eachChord(s, (from, to) => {
            this.#from.push(from);
            this.#to.push(to);
            this.#shapeOf.push(shape);
          });
    });
    this.#index = new BoxIndex(this.#from.length, (add) => {
      this.#from.forEach((p, k) => {
        const q = this.#to[k] ?? p;
        add(Math.min(p.x, q.x), Math.min(p.y, q.y), Math.max(p.x, q.x), Math.max(p.y, q.y));
      });
    });
  }

  holdersOf(p: Point): readonly number[] {
    const holders = new Set<number>();
    for (const k of this.#index.meeting(p.x, p.y, Number.MAX_VALUE, p.y)) {
      const [from, to, shape] = [this.#from[k] ?? p, this.#to[k] ?? p, this.#shapeOf[k] ?? 0];
      // Crossed an odd number of times an area holds the place.
      if (crosses(from, to, p) && !holders.delete(shape)) holders.add(shape);
    }
    return [...holders];
  }
}
