// Areas and tight boxes of contours, exact for cubics.
import { type Box, boxOfPoints } from './box.ts';
import { type Contour, type CubicSegment, reverseContour, type Shape } from './contour.ts';
import { cross, distance, type Point } from './point.ts';
import { pointAt } from './segment.ts';

/**
 * The signed area under a closed contour: positive when it runs counter-clockwise with y up.
 * Source: Green's theorem applied to the cubic Bernstein form; the weights are the integrals of the products.
 */
export function signedArea(contour: Contour): number {
  let twice = 0;
  for (const s of contour.segments) {
    if (s.kind === 'line') twice += cross(s.from, s.to);
    else
      twice +=
        (6 * cross(s.from, s.c1) +
          3 * cross(s.from, s.c2) +
          cross(s.from, s.to) +
          3 * cross(s.c1, s.c2) +
          3 * cross(s.c1, s.to) +
          6 * cross(s.c2, s.to)) /
        10;
  }
  return twice / 2;
}

/** The area of a shape: its outer contour less its holes, whichever way they run. */
export function shapeArea(shape: Shape): number {
  const [outer, ...holes] = shape.contours.map((c) => Math.abs(signedArea(c)));
  return (outer ?? 0) - holes.reduce((sum, hole) => sum + hole, 0);
}

/** A shape's contours, the outer one running counter-clockwise with y up and the holes clockwise, whatever it was. */
export const directed = ({ contours }: Shape): readonly Contour[] =>
  contours.map((contour, i) => (signedArea(contour) > 0 === (i === 0) ? contour : reverseContour(contour)));

/** Parameters strictly inside (0, 1) where one coordinate of a cubic is largest or smallest. */
function turningPoints(p0: number, p1: number, p2: number, p3: number): number[] {
  const a = p3 - p0 + 3 * (p1 - p2);
  const b = 2 * (p0 - 2 * p1 + p2);
  const c = p1 - p0;
  const inside = (t: number) => t > 0 && t < 1;
  if (Math.abs(a) < 1e-12 * (Math.abs(b) + Math.abs(c))) return b === 0 ? [] : [-c / b].filter(inside);
  const under = b * b - 4 * a * c;
  if (under < 0) return [];
  const q = -0.5 * (b + Math.sign(b || 1) * Math.sqrt(under));
  return [q / a, q === 0 ? -1 : c / q].filter(inside);
}

const isBetween = (value: number, a: number, b: number): boolean =>
  value >= Math.min(a, b) && value <= Math.max(a, b);

/** Where a cubic is outermost between its ends. Handles that lie between the ends leave it nowhere to go. */
function extremes(s: CubicSegment): Point[] {
  const { from, c1, c2, to } = s;
  const withinX = isBetween(c1.x, from.x, to.x) && isBetween(c2.x, from.x, to.x);
  const withinY = isBetween(c1.y, from.y, to.y) && isBetween(c2.y, from.y, to.y);
  if (withinX && withinY) return [];
  const ts = withinX ? [] : turningPoints(from.x, c1.x, c2.x, to.x);
  if (!withinY) ts.push(...turningPoints(from.y, c1.y, c2.y, to.y));
  return ts.map((t) => pointAt(s, t));
}

/** The smallest box that holds the contours. */
export function tightBox(contours: readonly Contour[]): Box {
  const points: Point[] = [];
  for (const { segments } of contours)
    for (const s of segments) {
      points.push(s.from, s.to);
      if (s.kind === 'cubic') points.push(...extremes(s));
    }
  return boxOfPoints(points);
}

/** The length of a contour taken from node to node: of curves a little less than their own. */
export const spanOf = (contour: Contour): number =>
  contour.segments.reduce((sum, s) => sum + distance(s.from, s.to), 0);
