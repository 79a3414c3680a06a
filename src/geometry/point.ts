// Points and directions of the plane.

/** A position or a displacement, mm. Which frame it is in is said where it is used. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export const add = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const subtract = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const scale = (a: Point, by: number): Point => ({ x: a.x * by, y: a.y * by });
/**
 * Length of a displacement, mm. `Math.hypot` leaves its last bit to the engine and takes many times as long; what it spares
 * are lengths past 1e154, and none here is.
 */
export const norm = (x: number, y: number): number => Math.sqrt(x * x + y * y);
export const distance = (a: Point, b: Point): number => norm(a.x - b.x, a.y - b.y);
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
/** Positive when b lies counter-clockwise of a in a frame with y up. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
/** The direction of length one; none where the displacement has no length. */
export const unit = (d: Point): Point => scale(d, 1 / (norm(d.x, d.y) || 1));
/** The point at fraction t of the way from a to b. */
export const between = (a: Point, b: Point, t: number): Point => ({
  x: a.x + (b.x - a.x) * t,
  y: a.y + (b.y - a.y) * t,
});
