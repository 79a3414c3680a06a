// What a canvas is given while a drawing follows typing: chords in place of curves, none further away than asked.
import { afterEach, expect, test, vi } from 'vitest';
import { cubic } from '../../src/geometry/contour.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { inkOf } from '../../src/job/ink.ts';
import { inkPaths } from '../../src/page/board/ink-path.ts';

afterEach(() => void vi.unstubAllGlobals());

/** The points a path is led through. */
function drawn(data: string, within: number): readonly Point[] {
  const points: Point[] = [];
  const note = (x: number, y: number) => void points.push({ x, y });
  vi.stubGlobal('Path2D', function pathOfPoints() {
    return { moveTo: note, lineTo: note, addPath: () => undefined };
  });
  inkPaths(inkOf(data), within);
  return points;
}

/** How far a point is from a stretch of a line. */
function off(p: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = ((p.x - from.x) * dx + (p.y - from.y) * dy) / (dx * dx + dy * dy);
  const t = Math.min(1, Math.max(0, along));
  return distance(p, { x: from.x + t * dx, y: from.y + t * dy });
}

test.each([0.5, 0.05, 0.005])('no place of a curve is further than %d from the chords', (within) => {
  const at = (x: number, y: number): Point => ({ x, y });
  const curve = cubic(at(0, 0), at(30, 2), at(-12, 19), at(21, 20));
  const points = drawn('M0 0C30 2 -12 19 21 20', within);
  const places = Array.from({ length: 401 }, (_, i) => pointAt(curve, i / 400));
  const furthest = Math.max(
    ...places.map((place) => Math.min(...points.slice(1).map((to, i) => off(place, points[i] ?? place, to)))),
  );
  expect(furthest).toBeLessThan(within);
  // And no more of them than that asks for: a third as many would be too few.
  expect(furthest).toBeGreaterThan(within / 12);
});

test('lines stay as they are, and a closed path goes back to where it began', () => {
  expect(drawn('M1 2L3 4L5 0ZM7 7L8 8', 0.1)).toEqual([
    { x: 1, y: 2 },
    { x: 3, y: 4 },
    { x: 5, y: 0 },
    { x: 1, y: 2 },
    { x: 7, y: 7 },
    { x: 8, y: 8 },
  ]);
});
