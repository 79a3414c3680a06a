// How much shapes cover and where the middle of it is: what tells that a layer is whole and in its place.

import type { Contour, Segment } from '../../geometry/contour.ts';
import { most } from '../../geometry/extremes.ts';
import type { Point } from '../../geometry/point.ts';
import { xAt, xSlopeAt, yAt, ySlopeAt } from '../../geometry/segment.ts';

export interface Cover {
  /** mm² */
  readonly area: number;
  readonly middle: Point;
}

/**
 * Places and weights of Gauss-Legendre quadrature of five points on 0 to 1: exact up to degree 9, and the moments of a
 * cubic are of degree 8. Source: Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4.
 */
const places = [0.906179845938664, 0.538469310105683, 0, -0.538469310105683, -0.906179845938664].map(
  (at) => (1 + at) / 2,
);
const weights = [
  0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189,
].map((weight) => weight / 2);

interface Moments {
  readonly area: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Green's theorem: area is the integral of x dy, its moments those of x²/2 dy and -y²/2 dx. About `from`. All art is measured so,
 * layer by layer: no points are made.
 */
function momentsOf(segments: readonly Segment[], from: Point): Moments {
  let [area, x, y] = [0, 0, 0];
  for (const s of segments) {
    for (let i = 0; i < places.length; i++) {
      const t = places[i] ?? 0;
      const weight = weights[i] ?? 0;
      const px = xAt(s, t) - from.x;
      const py = yAt(s, t) - from.y;
      const dx = xSlopeAt(s, t);
      const dy = ySlopeAt(s, t);
      area += weight * px * dy;
      x += (weight * px * px * dy) / 2;
      y -= (weight * py * py * dx) / 2;
    }
  }
  return { area, x, y };
}

/** What shapes cover together, each an outer contour with its holes in any order. `from`: a point near them. */
export function coverOf(shapes: readonly (readonly Contour[])[], from: Point): Cover {
  let [area, x, y] = [0, 0, 0];
  for (const shape of shapes) {
    const all = shape.map(({ segments }) => momentsOf(segments, from));
    const outer = most(all.map((moments) => Math.abs(moments.area)));
    for (const moments of all) {
      // An outer contour adds and a hole takes away, whichever way either runs.
      const sign = (moments.area < 0 ? -1 : 1) * (Math.abs(moments.area) === outer ? 1 : -1);
      area += sign * moments.area;
      x += sign * moments.x;
      y += sign * moments.y;
    }
  }
  return { area, middle: area === 0 ? from : { x: from.x + x / area, y: from.y + y / area } };
}
