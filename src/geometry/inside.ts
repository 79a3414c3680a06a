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

/** A contour of fewer segments is gone through. */
const leastIndexed = 16;

/**
 * Whether any of many areas that overlap nowhere holds a place, asked of many places: as `holdsPoint` of each of them. No contour is
 * asked but those in whose boxes the place lies: a ray to the right meets whole rows of letters.
 */
export class InsideFinder {
  readonly #contours: readonly (readonly Segment[])[];
  readonly #boxes: BoxIndex;
  readonly #segments = new Map<number, BoxIndex>();

  constructor(shapes: readonly Shape[]) {
    const contours = shapes.flatMap((shape) => shape.contours);
    this.#contours = contours.map(({ segments }) => segments);
    this.#boxes = new BoxIndex(contours.length, (add) => {
      for (const contour of contours) {
        const { minX, minY, maxX, maxY } = hullBox([contour]);
        add(minX, minY, maxX, maxY);
      }
    });
  }

  holds(p: Point): boolean {
    let count = 0;
    for (const i of this.#boxes.meeting(p.x, p.y, p.x, p.y)) count += this.#crossingsOf(i, p);
    return count % 2 === 1;
  }

  #crossingsOf(contour: number, p: Point): number {
    const segments = this.#contours[contour] ?? [];
    if (segments.length < leastIndexed) return segments.reduce((sum, s) => sum + crossings(s, p), 0);
    return this.#indexOf(contour, segments)
      .meeting(p.x, p.y, Number.MAX_VALUE, p.y)
      .reduce((sum, i) => {
        const s = segments[i];
        return s ? sum + crossings(s, p) : sum;
      }, 0);
  }

  #indexOf(contour: number, segments: readonly Segment[]): BoxIndex {
    const known = this.#segments.get(contour);
    if (known) return known;
    const index = segmentIndex(segments);
    this.#segments.set(contour, index);
    return index;
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
