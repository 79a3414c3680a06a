// Areas and tight boxes of contours, exact for cubics.
import type { Box } from './box.ts';
import { type Contour, reverseContour, type Shape } from './contour.ts';
import { cross, distance, type Point } from './point.ts';
import { xAt, yAt } from './segment.ts';
import { areaRounding } from './tolerance.ts';

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

/** Whether an area is smaller than the least that is asked for by more than rounding. */
export const isUnder = (area: number, least: number): boolean => area < (1 - areaRounding) * least;

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

/** The smallest box that holds the contours. A cubic whose handles lie in the box of what was seen can't leave it. */
export function tightBox(contours: readonly Contour[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { segments } of contours)
    for (const { from, to } of segments) {
      minX = Math.min(minX, from.x, to.x);
      maxX = Math.max(maxX, from.x, to.x);
      minY = Math.min(minY, from.y, to.y);
      maxY = Math.max(maxY, from.y, to.y);
    }
  for (const { segments } of contours)
    for (const s of segments) {
      if (s.kind === 'line') continue;
      const { from, c1, c2, to } = s;
      if (Math.min(c1.x, c2.x) < minX || Math.max(c1.x, c2.x) > maxX)
        for (const t of turningPoints(from.x, c1.x, c2.x, to.x)) {
          const x = xAt(s, t);
          minX = Math.min(minX, x);
          maxX = Math.max(maxX, x);
        }
      if (Math.min(c1.y, c2.y) < minY || Math.max(c1.y, c2.y) > maxY)
        for (const t of turningPoints(from.y, c1.y, c2.y, to.y)) {
          const y = yAt(s, t);
          minY = Math.min(minY, y);
          maxY = Math.max(maxY, y);
        }
    }
  return { minX, minY, maxX, maxY };
}

/** How far a contour reaches along a direction: its least and its greatest place along it, exact for cubics. */
export function extentAlong({ segments }: Contour, { x, y }: Point): readonly [number, number] {
  let [least, most] = [Infinity, -Infinity];
  const take = (at: number): void => {
    if (at < least) least = at;
    if (at > most) most = at;
  };
  for (const { from, to } of segments) {
    take(from.x * x + from.y * y);
    take(to.x * x + to.y * y);
  }
  for (const s of segments) {
    if (s.kind === 'line') continue;
    const [one, two] = [s.c1.x * x + s.c1.y * y, s.c2.x * x + s.c2.y * y];
    if (Math.min(one, two) >= least && Math.max(one, two) <= most) continue;
    for (const t of turningPoints(s.from.x * x + s.from.y * y, one, two, s.to.x * x + s.to.y * y))
      take(xAt(s, t) * x + yAt(s, t) * y);
  }
  return [least, most];
}

/** The length of a contour taken from node to node: of curves a little less than their own. */
export const spanOf = (contour: Contour): number =>
  contour.segments.reduce((sum, s) => sum + distance(s.from, s.to), 0);
