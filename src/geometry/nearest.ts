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

/** Starts for the descent on one segment: a cubic has at most five nearest candidates to any point. */
const starts = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1];

function nearestOn(segment: Segment, p: Point): NearestPlace {
  let best = { segment, t: 0, distance: Infinity };
  const offer = (t: number) => {
    const away = distance(pointAt(segment, t), p);
    if (away < best.distance) best = { segment, t, distance: away };
  };
  for (const t of starts) offer(t);
  let t = best.t;
  for (let i = 0; i < 8; i++) {
    const d = derivativeAt(segment, t);
    const length = dot(d, d);
    if (length === 0) break;
    t = Math.max(0, Math.min(1, t + dot(subtract(p, pointAt(segment, t)), d) / length));
    offer(t);
  }
  return best;
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

  /** The nearest place within a reach, mm; undefined where there is none. */
  find(p: Point, reach: number): NearestPlace | undefined {
    const close = this.#index.meeting(p.x - reach, p.y - reach, p.x + reach, p.y + reach);
    let best: NearestPlace | undefined;
    for (const i of close) {
      const segment = this.#segments[i];
      const place = segment && nearestOn(segment, p);
      if (place && place.distance <= reach && (!best || place.distance < best.distance)) best = place;
    }
    return best;
  }
}
