// Shapes to test with, and a seeded source of random ones.
import { type Affine, moveContour } from '../../src/geometry/affine.ts';
import { boxCorners } from '../../src/geometry/box.ts';
import { chorded } from '../../src/geometry/chords.ts';
import { type Contour, cubic, polygon, type Segment } from '../../src/geometry/contour.ts';
import type { Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';

/** Numbers from 0 to 1, the same for the same seed. */
export { seededRandom as randomFrom } from '../../src/sheet/random.ts';

export const box = (x: number, y: number, width: number, height: number): Contour =>
  polygon(boxCorners({ minX: x, minY: y, maxX: x + width, maxY: y + height }));

/** The corners of the chords that stand in for a contour, each end of a segment once. */
export function chordPoints(contour: Contour, tolerance: number): Point[] {
  const { x, y } = chorded(contour, tolerance);
  return Array.from(x, (at, i) => ({ x: at, y: y[i] ?? Number.NaN }));
}

/** A circle as `pieces` cubics, counter-clockwise with y up. Its radius is right to 3e-4 of it with 4, 4e-6 with 8. */
export function circle(centre: Point, radius: number, pieces = 4): Contour {
  const step = (2 * Math.PI) / pieces;
  const handle = (4 / 3) * Math.tan(step / 4) * radius;
  const on = (i: number): Point => {
    const a = (i % pieces) * step;
    return { x: centre.x + radius * Math.cos(a), y: centre.y + radius * Math.sin(a) };
  };
  const along = (i: number): Point => {
    const a = (i % pieces) * step;
    return { x: -Math.sin(a) * handle, y: Math.cos(a) * handle };
  };
  const segments = Array.from({ length: pieces }, (_, i) => {
    const [p, q, d, e] = [on(i), on(i + 1), along(i), along(i + 1)];
    return cubic(p, { x: p.x + d.x, y: p.y + d.y }, { x: q.x - e.x, y: q.y - e.y }, q);
  });
  return { closed: true, segments };
}

/** A smooth closed blob around a centre, star-shaped so that it never crosses itself: random radii, tangent handles. */
export function blob(random: () => number, centre: Point, radius: number, nodes = 7): Contour {
  const step = (2 * Math.PI) / nodes;
  const radii = Array.from({ length: nodes }, () => radius * (0.6 + 0.4 * random()));
  const node = (i: number): { p: Point; d: Point } => {
    const r = radii[i % nodes] ?? radius;
    const a = (i % nodes) * step;
    const handle = (4 / 3) * Math.tan(step / 4) * r;
    return {
      p: { x: centre.x + r * Math.cos(a), y: centre.y + r * Math.sin(a) },
      d: { x: -Math.sin(a) * handle, y: Math.cos(a) * handle },
    };
  };
  const segments = Array.from({ length: nodes }, (_, i) => {
    const [one, next] = [node(i), node(i + 1)];
    return cubic(
      one.p,
      { x: one.p.x + one.d.x, y: one.p.y + one.d.y },
      { x: next.p.x - next.d.x, y: next.p.y - next.d.y },
      next.p,
    );
  });
  return { closed: true, segments };
}

/** Points at equal steps of every segment's parameter, its start included. */
export const sampled = (contour: Contour, each: number): Point[] =>
  contour.segments.flatMap((s) => Array.from({ length: each }, (_, i) => pointAt(s, i / each)));

/** Shoelace over sampled points: the slow way to an area. */
export function sampledArea(points: readonly Point[]): number {
  const [origin = { x: 0, y: 0 }] = points;
  let twice = 0;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    twice += (p.x - origin.x) * (q.y - origin.y) - (p.y - origin.y) * (q.x - origin.x);
  });
  return twice / 2;
}

/** Every segment, by its control points, so that two contours can be compared wherever they start. */
export const segmentKey = (s: Segment): string =>
  JSON.stringify(s.kind === 'line' ? [s.from, s.to] : [s.from, s.c1, s.c2, s.to]);

export const segmentKeys = (contours: readonly Contour[]): string[] =>
  contours.flatMap((contour) => contour.segments.map(segmentKey)).sort();

/** The ways every fixture is also held: the answer must follow. `scale` is the length scale of the motion. */
export const motions: readonly { readonly name: string; readonly scale: number; readonly m: Affine }[] = [
  { name: 'as drawn', scale: 1, m: { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 } },
  { name: 'turned a quarter', scale: 1, m: { a: 0, b: 1, c: -1, d: 0, e: 0, f: 0 } },
  { name: 'mirrored', scale: 1, m: { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 } },
  { name: 'a thousandth of the size', scale: 1e-3, m: { a: 1e-3, b: 0, c: 0, d: 1e-3, e: 0, f: 0 } },
  { name: 'a thousand times the size', scale: 1e3, m: { a: 1e3, b: 0, c: 0, d: 1e3, e: 0, f: 0 } },
];

export const moved = (m: Affine, contours: readonly Contour[]): Contour[] =>
  contours.map((contour) => moveContour(m, contour));
