// Where film meets film in a point alone: corner on corner, or corner on edge. No disc fits there, however small.
import type { Contour, Segment, Shape } from '../geometry/contour.ts';
import { NearestFinder } from '../geometry/nearest.ts';
import { cross, distance, dot, type Point, unit } from '../geometry/point.ts';
import { directionAt } from '../geometry/segment.ts';
import { precision } from '../geometry/tolerance.ts';

/** Edges closer than this touch, mm: a tenth of what is cut to. */
const touching = precision / 10;

/** A contour that turns by less than this at a node has no corner there, radians. */
const straightOn = 0.02;

/** The corners of a contour, each with the two segments that meet in it. */
function cornersOf({ segments, closed }: Contour): { at: Point; own: readonly Segment[] }[] {
  return segments.flatMap((after, i) => {
    const before = segments[i - 1] ?? (closed ? segments.at(-1) : undefined);
    if (!before) return [];
    const [arriving, leaving] = [unit(directionAt(before, 1)), unit(directionAt(after, 0))];
    const turn = Math.abs(Math.atan2(cross(arriving, leaving), dot(arriving, leaving)));
    return turn < straightOn ? [] : [{ at: after.from, own: [before, after] }];
  });
}

/** The places where edges of areas that overlap nowhere touch in a corner, each once. mm. */
export function pointContacts(shapes: readonly Shape[]): Point[] {
  const contours = shapes.flatMap((shape) => shape.contours);
  const corners = contours.flatMap(cornersOf);
  if (corners.length === 0) return [];
  const edges = new NearestFinder(contours);
  const places: Point[] = [];
  for (const { at, own } of corners) {
    const others = edges.within(at, touching).filter(({ segment }) => !own.includes(segment));
    // What goes on from a step shorter than that is the same corner still.
    const isApart = others.some(({ segment }) => !own.some((one) => isNext(one, segment)));
    if (isApart && places.every((place) => distance(place, at) > touching)) places.push(at);
  }
  return places;
}

const isShort = ({ from, to }: Segment): boolean => distance(from, to) < 2 * touching;

const isNext = (a: Segment, b: Segment): boolean =>
  (isShort(a) || isShort(b)) && (distance(a.to, b.from) === 0 || distance(b.to, a.from) === 0);
