// How tightly a line turns: its least radius.
import type { Contour, CubicSegment } from './contour.ts';
import { cross, type Point } from './point.ts';

/** Places looked at on each cubic. */
const places = 16;

/** Radius of the circle that a cubic turns on at a place (any text on curves: |d|³ / |d x d2|). */
function radiusAt({ from, c1, c2, to }: CubicSegment, t: number): number {
  const mix = (a: Point, b: Point, c: Point): Point => {
    const u = 1 - t;
    const of = (p: number, q: number, r: number) => u * u * p + 2 * u * t * q + t * t * r;
    return { x: of(a.x, b.x, c.x), y: of(a.y, b.y, c.y) };
  };
  const step = (p: Point, q: Point): Point => ({ x: 3 * (q.x - p.x), y: 3 * (q.y - p.y) });
  const [a, b, c] = [step(from, c1), step(c1, c2), step(c2, to)];
  const first = mix(a, b, c);
  const bend = (p: Point, q: Point): Point => ({ x: 2 * (q.x - p.x), y: 2 * (q.y - p.y) });
  const [e, f] = [bend(a, b), bend(b, c)];
  const second = { x: e.x + (f.x - e.x) * t, y: e.y + (f.y - e.y) * t };
  return Math.hypot(first.x, first.y) ** 3 / Math.abs(cross(first, second));
}

/** The least radius a line of cubics turns on, mm; Infinity where it is straight. Corners between segments are not looked at. */
export const tightestRadius = ({ segments }: Contour): number =>
  Math.min(
    Infinity,
    ...segments.flatMap((s) =>
      s.kind === 'cubic' ? Array.from({ length: places + 1 }, (_, i) => radiusAt(s, i / places)) : [],
    ),
  );
