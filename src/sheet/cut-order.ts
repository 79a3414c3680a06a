// The order in which a blade takes the lines of a sheet: what lies inside first, then whatever is near.

import type { DrawnPath } from '../drawing/drawing.ts';
import { type Box, hullBox, liesIn } from '../geometry/box.ts';
import { BoxIndex } from '../geometry/box-index.ts';
import type { Contour, Segment } from '../geometry/contour.ts';
import { lineCrossings } from '../geometry/crossings.ts';
import { most } from '../geometry/extremes.ts';
import { endOf, startOf } from '../geometry/kept-contour.ts';
import { leastFirst } from '../geometry/least-first.ts';
import { signedArea } from '../geometry/measure.ts';
import { distance, type Point } from '../geometry/point.ts';
import { pointAt } from '../geometry/segment.ts';
import { NearestStart } from './nearest-start.ts';

/** What a blade does besides cutting, for an order of its lines. */
export interface Travel {
  /** Way from the end of each line to the start of the next, mm. */
  readonly length: number;
  readonly lifts: number;
}

/** A path as it waits its turn. */
interface Waiting {
  readonly path: DrawnPath;
  readonly box: Box;
  /** Area of the box, mm². */
  readonly size: number;
  /** Paths that lie inside it and are not cut yet. */
  inside: number;
  /** The path it lies in, by index; -1 for none. */
  around: number;
}

/** A path's holes first, on a short way to the outer one. */
function holesFirst(path: DrawnPath): DrawnPath {
  const { contours } = path;
  if (contours.length < 2) return path;
  const sizes = contours.map((contour) => Math.abs(signedArea(contour)));
  const outer = contours[sizes.indexOf(most(sizes))];
  const holes = contours.filter((contour) => contour !== outer);
  const starts = holes.map(firstOf);
  const near = new NearestStart(starts);
  for (const i of holes.keys()) near.offer(i);
  const away: Contour[] = [];
  // From the outer line inwards, and back the other way.
  let at = outer ? firstOf(outer) : home;
  for (let next = near.take(at); next !== undefined; next = near.take(at)) {
    const hole = holes[next];
    if (hole) away.push(hole);
    at = starts[next] ?? at;
  }
  // Turned round at once: put before the others one by one, a sieve of 400,000 holes took minutes.
  away.reverse();
  return { ...path, contours: outer ? [...away, outer] : away };
}

const home: Point = { x: 0, y: 0 };

const firstOf = (contour: Contour): Point => startOf(contour) ?? home;

/** Tells whether points lie inside closed contours, by the even-odd rule; of each only what is on its level is looked at. */
export function insideOf(contours: readonly Contour[]): (p: Point) => boolean {
  const segments = contours.flatMap((contour) => contour.segments);
  const index = new BoxIndex(segments.length, (add) => {
    for (const segment of segments) {
      const { minX, minY, maxX, maxY } = hullBox([{ closed: false, segments: [segment] }]);
      add(minX, minY, maxX, maxY);
    }
  });
  return (p) => {
    let crossings = 0;
    for (const i of index.meeting(p.x, p.y, Infinity, p.y)) {
      const segment = segments[i];
      if (segment) crossings += crossingsRight(segment, p);
    }
    return crossings % 2 === 1;
  };
}

/** How often a segment crosses the level line through a point, to the right of it; a node counts for one side only. */
function crossingsRight(segment: Segment, { x, y }: Point): number {
  return lineCrossings(segment, { x, y }, { x: 1, y: 0 }).filter((t) => pointAt(segment, t).x > x).length;
}

/** Which path each lies in: the smallest that holds its start, if any. */
function nested(waiting: readonly Waiting[]): void {
  const index = new BoxIndex(waiting.length, (add) => {
    for (const { box } of waiting) add(box.minX, box.minY, box.maxX, box.maxY);
  });
  const lines = new Map<number, (p: Point) => boolean>();
  const holds = (k: number, p: Point): boolean => {
    const line = lines.get(k) ?? insideOf(outermost(waiting[k]?.path));
    lines.set(k, line);
    return line(p);
  };
  for (const [i, inner] of waiting.entries()) {
    // A hair off any node, so that no crossing falls on one.
    const start = inner.path.contours.at(-1)?.segments[0];
    if (!start) continue;
    const p = pointAt(start, 0.382);
    const outer = index.meeting(p.x, p.y, p.x, p.y).filter((k) => {
      const other = waiting[k];
      return k !== i && other !== undefined && other.size > inner.size && liesIn(inner.box, other.box);
    });
    // What lies in a hole is inside too: only its outermost line counts.
    for (const k of leastFirst(outer, (one) => waiting[one]?.size ?? 0)) {
      if (!holds(k, p)) continue;
      inner.around = k;
      const holder = waiting[k];
      if (holder) holder.inside++;
      break;
    }
  }
}

const outermost = (path: DrawnPath | undefined): readonly Contour[] => path?.contours.slice(-1) ?? [];

const pathStart = ({ contours: [first] }: DrawnPath): Point => (first ? firstOf(first) : home);

const pathEnd = ({ contours }: DrawnPath): Point => {
  const last = contours.at(-1);
  return (last && (last.closed ? startOf(last) : endOf(last))) ?? home;
};

/**
 * Paths in the order they are cut, from a place of the blade on: a path's holes before its outer line, what lies inside
 * another before that, and of those that may be next the nearest. Same paths, same order.
 */
export function inCutOrder(paths: readonly DrawnPath[], from: Point): readonly DrawnPath[] {
  const waiting = paths.map((path): Waiting => {
    const ordered = holesFirst(path);
    const box = hullBox(ordered.contours);
    return { path: ordered, box, size: (box.maxX - box.minX) * (box.maxY - box.minY), inside: 0, around: -1 };
  });
  nested(waiting);
  const near = new NearestStart(waiting.map(({ path }) => pathStart(path)));
  for (const [i, { inside }] of waiting.entries()) if (inside === 0) near.offer(i);
  const order: DrawnPath[] = [];
  let at = from;
  for (let next = near.take(at); next !== undefined; next = near.take(at)) {
    const taken = waiting[next];
    if (!taken) break;
    order.push(taken.path);
    at = pathEnd(taken.path);
    const holder = waiting[taken.around];
    if (holder && --holder.inside === 0) near.offer(taken.around);
  }
  return order;
}

/** What a blade travels over paths cut in this order, each contour from its start and closed ones back to it. */
export function travelOf(paths: readonly DrawnPath[], from: Point): Travel {
  let [at, length, lifts] = [from, 0, 0];
  for (const contour of paths.flatMap(({ contours }) => contours)) {
    const [start, end] = [startOf(contour), endOf(contour)];
    if (!start || !end) continue;
    length += distance(at, start);
    lifts++;
    at = contour.closed ? start : end;
  }
  return { length, lifts };
}
