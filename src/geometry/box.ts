// Bounding boxes.
import type { Contour, Segment } from './contour.ts';
import type { Point } from './point.ts';

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function boxOfPoints(points: readonly Point[]): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const { x, y } of points) {
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** A box that holds the contours: the box of their control points, so never too small, sometimes larger. */
export function hullBox(contours: Iterable<Contour>): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const { segments } of contours)
    for (const s of segments) {
      const c1 = s.kind === 'line' ? s.from : s.c1;
      const c2 = s.kind === 'line' ? s.to : s.c2;
      minX = Math.min(minX, s.from.x, c1.x, c2.x, s.to.x);
      maxX = Math.max(maxX, s.from.x, c1.x, c2.x, s.to.x);
      minY = Math.min(minY, s.from.y, c1.y, c2.y, s.to.y);
      maxY = Math.max(maxY, s.from.y, c1.y, c2.y, s.to.y);
    }
  return { minX, minY, maxX, maxY };
}

export const boxOfSegment = (segment: Segment): Box => hullBox([{ closed: false, segments: [segment] }]);

/** The corners of a box in order, from its least x and y along its least y. */
export const boxCorners = ({ minX, minY, maxX, maxY }: Box): Point[] => [
  { x: minX, y: minY },
  { x: maxX, y: minY },
  { x: maxX, y: maxY },
  { x: minX, y: maxY },
];

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

/** Whether one box lies in another, its edges counted. */
export const liesIn = (inner: Box, outer: Box): boolean =>
  outer.minX <= inner.minX &&
  outer.minY <= inner.minY &&
  outer.maxX >= inner.maxX &&
  outer.maxY >= inner.maxY;

export const grow = (box: Box, by: number): Box => ({
  minX: box.minX - by,
  minY: box.minY - by,
  maxX: box.maxX + by,
  maxY: box.maxY + by,
});

/** The box around boxes; empty (minima above maxima) around none. */
export function boxAround(boxes: readonly Box[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const box of boxes) {
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}

/** A box moved by a step. */
export const movedBox = ({ minX, minY, maxX, maxY }: Box, { x, y }: Point): Box => ({
  minX: minX + x,
  minY: minY + y,
  maxX: maxX + x,
  maxY: maxY + y,
});
