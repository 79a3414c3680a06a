// What a canvas is given to draw: chords in place of curves, none further away than asked, shape by shape.
import { expect, test } from 'vitest';
import { cubic } from '../../src/geometry/contour.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { inkOf } from '../../src/job/view/ink.ts';
import { drawInk } from '../../src/page/board/ink-path.ts';

/** What a pen is asked to draw. */
function drawn(data: string, within: number) {
  const points: Point[] = [];
  const asked: string[] = [];
  const note = (x: number, y: number) => void points.push({ x, y });
  const pen = {
    beginPath: () => void asked.push('begin'),
    moveTo: note,
    lineTo: note,
    bezierCurveTo: (...numbers: number[]) => void asked.push(`curve ${numbers.join(' ')}`),
    fill: (rule: unknown) => void asked.push(`fill ${String(rule)}`),
    stroke: () => void asked.push('stroke'),
  };
  drawInk(pen, inkOf(data), { filled: true, stroked: true, within });
  return { points, asked };
}

/** How far a point is from a stretch of a line. */
function off(p: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = ((p.x - from.x) * dx + (p.y - from.y) * dy) / (dx * dx + dy * dy);
  const t = Math.min(1, Math.max(0, along));
  return distance(p, { x: from.x + t * dx, y: from.y + t * dy });
}

test.each([3, 2, 1])('no place of a curve is further than %d from the chords', (within) => {
  const at = (x: number, y: number): Point => ({ x, y });
  const curve = cubic(at(0, 0), at(30, 2), at(-12, 19), at(21, 20));
  const { points } = drawn('M0 0C30 2 -12 19 21 20', within);
  const places = Array.from({ length: 401 }, (_, i) => pointAt(curve, i / 400));
  const furthest = Math.max(
    ...places.map((place) => Math.min(...points.slice(1).map((to, i) => off(place, points[i] ?? place, to)))),
  );
  expect(furthest).toBeLessThan(within);
  // And no more of them than that asks for: a third as many would be too few.
  expect(furthest).toBeGreaterThan(within / 12);
});

test('where many chords would be asked for, the curve is drawn itself', () => {
  const { points, asked } = drawn('M0 0C30 2 -12 19 21 20L5 5', 0.001);
  expect(asked).toContain('curve 30 2 -12 19 21 20');
  expect(points).toEqual([
    { x: 0, y: 0 },
    { x: 5, y: 5 },
  ]);
});

test('lines stay as they are, and a closed path goes back to where it began', () => {
  expect(drawn('M1 2L3 4L5 0ZM7 7L8 8', 0.1).points).toEqual([
    { x: 1, y: 2 },
    { x: 3, y: 4 },
    { x: 5, y: 0 },
    { x: 1, y: 2 },
    { x: 7, y: 7 },
    { x: 8, y: 8 },
  ]);
});

test('each shape is filled by itself, its holes left out, and stroked', () => {
  const { asked } = drawn('M0 0L9 0L9 9ZM6 2L7 2L7 3Z\nM20 0L29 0L29 9Z', 0.1);
  expect(asked).toEqual(['begin', 'fill evenodd', 'stroke', 'begin', 'fill evenodd', 'stroke']);
});
