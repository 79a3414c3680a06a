// Where film meets film in a point alone: corner on corner, or corner on edge. No disc fits there, however small.
import { BoxIndex } from '../../geometry/box-index.ts';
import type { Contour, Segment, Shape } from '../../geometry/contour.ts';
import { atHand } from '../../geometry/kept-contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { cross, distance, dot, type Point, unit } from '../../geometry/point.ts';
import { directionAt } from '../../geometry/segment.ts';
import { precision } from '../../geometry/tolerance.ts';

/** Edges closer than this touch, mm: a tenth of what is cut to. */
const touching = precision / 10;

/** A contour that turns by less than this at a node has no corner there, radians. */
const straightOn = 0.02;

/** Steps of an edge that together are shorter than this are one corner, mm. */
const oneCorner = 4 * touching;

/** The corners of a contour, each with the segments that meet in it, those past short steps among them. */
function cornersOf({ segments, closed }: Contour): { at: Point; own: ReadonlySet<Segment> }[] {
  const count = segments.length;
  const ahead = (i: number, step: 1 | -1): Segment[] => {
    const met: Segment[] = [];
    for (let k = i, gone = 0; met.length < count && gone < oneCorner; k += step) {
      const segment = segments[closed ? (k + count) % count : k];
      if (!segment) break;
      met.push(segment);
      gone += distance(segment.from, segment.to);
    }
    return met;
  };
  return segments.flatMap((after, i) => {
    const before = segments[i - 1] ?? (closed ? segments.at(-1) : undefined);
    if (!before) return [];
    const [arriving, leaving] = [unit(directionAt(before, 1)), unit(directionAt(after, 0))];
    const turn = Math.abs(Math.atan2(cross(arriving, leaving), dot(arriving, leaving)));
    if (turn < straightOn) return [];
    return [{ at: after.from, own: new Set([...ahead(i, 1), ...ahead(i - 1, -1)]) }];
  });
}

/** The places where edges of areas that overlap nowhere touch in a corner, each once. mm. */
export function pointContacts(shapes: readonly Shape[]): Point[] {
  // A corner's own segments are told from others by which objects they are.
  const contours = shapes.flatMap((shape) => shape.contours.map(atHand));
  const corners = contours.flatMap(cornersOf);
  if (corners.length === 0) return [];
  const edges = new NearestFinder(contours);
  const met = corners
    .filter(({ at, own }) => edges.within(at, touching).some(({ segment }) => !own.has(segment)))
    .map(({ at }) => at);
  const index = new BoxIndex(met.length, (add) => {
    for (const { x, y } of met) add(x - touching, y - touching, x + touching, y + touching);
  });
  // Both corners of a contact are met: the first of them stands for it.
  return met.filter(({ x, y }, i) => index.meeting(x, y, x, y).every((other) => other >= i));
}
