// Found steps that were drawn level, upright or half a drop, but for what files round.
import type { Point } from '../../geometry/point.ts';
import type { FoundRepeat } from '../repeat/true-repeat.ts';

/** Steps this near to level, upright or half a drop were drawn so: files are rounded, and eyes see a slow climb, mm. */
export const drawnSo = 0.01;

/** A found lattice made level, upright, half-dropped or bricked where it is so but for rounding. */
export function levelled({ a, b, ...sure }: FoundRepeat, drawnSo: number): FoundRepeat {
  const near = (value: number, to: number) => (Math.abs(value - to) <= drawnSo ? to : value);
  const snapped = (value: number, whole: number) => near(near(near(value, 0), whole / 2), -whole / 2);
  const [ay, bx] = [snapped(a.y, near(b.x, 0) === 0 ? b.y : 0), snapped(b.x, near(a.y, 0) === 0 ? a.x : 0)];
  // Of a half-drop told by two steps that climb alike, each as far as the other.
  const [x, y] = [(Math.abs(a.x) + Math.abs(b.x)) / 2, (Math.abs(a.y) + Math.abs(b.y)) / 2];
  const isAlike = [a, b].every(
    (p) => near(Math.abs(p.x), x) === x && near(Math.abs(p.y), y) === y && Math.min(x, y) > drawnSo,
  );
  const alike = (p: Point): Point => ({ x: Math.sign(p.x) * x, y: Math.sign(p.y) * y });
  return isAlike
    ? { a: alike(a), b: alike(b), ...sure }
    : { a: { x: a.x, y: ay }, b: { x: bx, y: b.y }, ...sure };
}
