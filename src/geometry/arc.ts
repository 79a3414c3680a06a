// Circular arcs as cubics.
import { type CubicSegment, cubic } from './contour.ts';
import { add, type Point, scale, subtract } from './point.ts';

/** An arc piece spans at most this, so that its cubic strays by less than 5e-6 of the radius: 45 degrees. */
const arcSpan = Math.PI / 4;

/** The arc from a point about a middle, through an angle, radians, counter-clockwise with y up. */
export function arcAbout(middle: Point, from: Point, angle: number): CubicSegment[] {
  const count = Math.max(1, Math.ceil(Math.abs(angle) / arcSpan - 1e-9));
  const step = angle / count;
  // (4/3) tan(A/4) radii, the standard handle of a cubic for an arc of angle A.
  const handle = (4 / 3) * Math.tan(step / 4);
  const start = subtract(from, middle);
  const spoke = (i: number): Point => {
    const [cos, sin] = [Math.cos(i * step), Math.sin(i * step)];
    return { x: start.x * cos - start.y * sin, y: start.x * sin + start.y * cos };
  };
  return Array.from({ length: count }, (_, i) => {
    const [a, b] = [spoke(i), spoke(i + 1)];
    const leaving = add(a, scale({ x: -a.y, y: a.x }, handle));
    const arriving = add(b, scale({ x: -b.y, y: b.x }, -handle));
    return cubic(add(middle, a), add(middle, leaving), add(middle, arriving), add(middle, b));
  });
}
