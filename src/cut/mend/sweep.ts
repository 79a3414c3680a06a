// The area that a disc of one width covers on its way along places.

import { arcAbout } from '../../geometry/arc.ts';
import { type Contour, line, type Shape } from '../../geometry/contour.ts';
import { distance, type Point, scale } from '../../geometry/point.ts';
import { thinned } from '../../geometry/thinned.ts';

/** Places that stray from a straight line by less than this are left out, mm: the rest of what `sweep` is made of. */
const straight = 0.015;

/** A disc, or what it covers between two places: two half circles and two straight sides. */
function capsule(p: Point, q: Point, radius: number): Contour {
  const apart = distance(p, q);
  const right = apart < 1e-9 ? { x: radius, y: 0 } : scale({ x: q.y - p.y, y: p.x - q.x }, radius / apart);
  const at = (middle: Point, sign: 1 | -1): Point => ({
    x: middle.x + sign * right.x,
    y: middle.y + sign * right.y,
  });
  const ends = [...arcAbout(q, at(q, 1), Math.PI), ...(apart < 1e-9 ? [] : [line(at(q, -1), at(p, -1))])];
  const rest = [...arcAbout(p, at(p, -1), Math.PI), ...(apart < 1e-9 ? [] : [line(at(p, 1), at(q, 1))])];
  const segments = [...ends, ...rest];
  const [start] = segments;
  const end = segments.at(-1);
  if (start && end) segments[segments.length - 1] = { ...end, to: start.from };
  return { closed: true, segments };
}

/** What a disc covers on its way through places in order; counter-clockwise with y up, one shape a stretch, overlapping. */
export function sweep(way: readonly Point[], radius: number): Shape[] {
  const places = thinned(way, straight);
  const [only] = places;
  if (only && places.length === 1) return [{ contours: [capsule(only, only, radius)] }];
  return places.slice(1).map((q, i) => ({ contours: [capsule(places[i] ?? q, q, radius)] }));
}
