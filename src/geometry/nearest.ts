// The nearest place on a set of curves.
import { hullBox } from './box.ts';
import { BoxIndex } from './box-index.ts';
import type { Contour, Segment } from './contour.ts';
import { distance, dot, type Point, subtract } from './point.ts';
import { derivativeAt, pointAt } from './segment.ts';

export interface NearestPlace {
  readonly segment: Segment;
  readonly t: number;
  readonly distance: number;
}

/** Stretches a segment is looked at in: even a hairpin has one nearest place in each, or none. */
const stretches = 32;

/** Halvings of a stretch: to 1e-12 of the segment. */
const halvings = 40;

/** The nearest place of one segment: the best of its stretches, in which the distance falls and then rises. */
function nearestOn(segment: Segment, p: Point): NearestPlace {
  const away = (t: number) => distance(pointAt(segment, t), p);
  const sampled = Array.from({ length: stretches + 1 }, (_, i) => away(i / stretches));
  let best = { segment, t: 0, distance: Infinity };
  sampled.forEach((here, i) => {
    const [before, after] = [sampled[i - 1] ?? Infinity, sampled[i + 1] ?? Infinity];
    if (here > before || here > after) return;
    const t = lowest(segment, p, Math.max(0, (i - 1) / stretches), Math.min(1, (i + 1) / stretches));
    const found = away(t);
    if (found < best.distance) best = { segment, t, distance: found };
  });
  return best;
}

/** Where between two parameters the curve turns from nearing p to leaving it, by halving. */
function lowest(segment: Segment, p: Point, from: number, to: number): number {
  const leaves = (t: number) => dot(subtract(pointAt(segment, t), p), derivativeAt(segment, t)) > 0;
  let [low, high] = [from, to];
  if (leaves(low)) return low;
  if (!leaves(high)) return high;
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2;
    if (leaves(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Finds the nearest place on many curves, by an index of their boxes. */
export class NearestFinder {
  readonly #segments: readonly Segment[];
  readonly #index: BoxIndex;

  constructor(contours: readonly Contour[]) {
    this.#segments = contours.flatMap(({ segments }) => segments);
    this.#index = new BoxIndex(this.#segments.length, (add) => {
      for (const segment of this.#segments) {
        const box = hullBox([{ closed: false, segments: [segment] }]);
        add(box.minX, box.minY, box.maxX, box.maxY);
      }
    });
  }

  /** The nearest place on every curve but `except` that comes within a reach of p, mm. */
  within(p: Point, reach: number, except?: Segment): NearestPlace[] {
    return this.#index.meeting(p.x - reach, p.y - reach, p.x + reach, p.y + reach).flatMap((i) => {
      const segment = this.#segments[i];
      if (!segment || segment === except) return [];
      const place = nearestOn(segment, p);
      return place.distance <= reach ? [place] : [];
    });
  }

  /** The nearest place within a reach, mm; undefined where there is none. */
  find(p: Point, reach: number): NearestPlace | undefined {
    const [first, ...others] = this.within(p, reach);
    return first && others.reduce((a, b) => (b.distance < a.distance ? b : a), first);
  }
}
