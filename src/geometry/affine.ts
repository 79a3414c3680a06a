// Affine maps of the plane: the only maps that carry a cubic onto a cubic exactly.
import type { Contour, Segment } from './contour.ts';
import type { Point } from './point.ts';

/** x' = a x + c y + e, y' = b x + d y + f: the six numbers in the order of SVG's `matrix()`. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const translation = (x: number, y: number): Affine => ({ a: 1, b: 0, c: 0, d: 1, e: x, f: y });

/** Turn about the origin by an angle in radians, x towards y. */
export const rotation = (angle: number): Affine => {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 };
};

/** The map that does `second` after `first`. */
export const compose = (first: Affine, second: Affine): Affine => ({
  a: second.a * first.a + second.c * first.b,
  b: second.b * first.a + second.d * first.b,
  c: second.a * first.c + second.c * first.d,
  d: second.b * first.c + second.d * first.d,
  e: second.a * first.e + second.c * first.f + second.e,
  f: second.b * first.e + second.d * first.f + second.f,
});

/** Area scale; negative when the map mirrors. */
export const determinant = (m: Affine): number => m.a * m.d - m.b * m.c;

/** The most that the map stretches any length: its largest singular value. */
export function stretchOf({ a, b, c, d }: Affine): number {
  const [sum, size] = [a * a + b * b + c * c + d * d, a * d - b * c];
  return Math.sqrt((sum + Math.sqrt(Math.max(0, sum * sum - 4 * size * size))) / 2);
}

/** The map back. Needs a determinant other than 0. */
export function inverse(m: Affine): Affine {
  const size = determinant(m);
  const [a, b, c, d] = [m.d / size, -m.b / size, -m.c / size, m.a / size];
  return { a, b, c, d, e: -(a * m.e + c * m.f), f: -(b * m.e + d * m.f) };
}

export const movePoint = (m: Affine, p: Point): Point => ({
  x: m.a * p.x + m.c * p.y + m.e,
  y: m.b * p.x + m.d * p.y + m.f,
});

/** Moves points that stand as x and y one after the other, where they stand. */
export function moveAll({ a, b, c, d, e, f }: Affine, points: Float64Array): void {
  for (let i = 0; i < points.length; i += 2) {
    const x = points[i] ?? 0;
    const y = points[i + 1] ?? 0;
    points[i] = a * x + c * y + e;
    points[i + 1] = b * x + d * y + f;
  }
}

export function moveSegment(m: Affine, s: Segment): Segment {
  const from = movePoint(m, s.from);
  const to = movePoint(m, s.to);
  if (s.kind === 'line') return { kind: 'line', from, to };
  return { kind: 'cubic', from, c1: movePoint(m, s.c1), c2: movePoint(m, s.c2), to };
}

export const moveContour = (m: Affine, contour: Contour): Contour => ({
  closed: contour.closed,
  segments: contour.segments.map((s) => moveSegment(m, s)),
});

/** Contours moved by a step. */
export const shifted = (contours: readonly Contour[], { x, y }: Point): Contour[] =>
  contours.map((contour) => moveContour(translation(x, y), contour));
