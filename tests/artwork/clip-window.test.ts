// Which shapes lie whole within what clips them, or beyond it, beside Clipper 6, which cuts all of them.
import { expect, test } from 'vitest';
import { ClipWindow } from '../../src/artwork/clip-window.ts';
import { polygon, type Shape } from '../../src/geometry/contour.ts';
import { shapeArea } from '../../src/geometry/measure.ts';
import type { Point } from '../../src/geometry/point.ts';
import { expectWithin } from '../closeness.ts';
import { chordPoints, circle, randomFrom } from '../geometry/drawn.ts';
import { clipperArea } from '../geometry/libraries.ts';

const random = randomFrom(7);

/** A triangle of some mm somewhere in a square of 100 mm. */
function triangle(): Point[] {
  const [x, y] = [100 * random(), 100 * random()];
  return [0, 2, 4].map((turn) => {
    const angle = turn + random();
    return { x: x + 4 * Math.cos(angle), y: y + 4 * Math.sin(angle) };
  });
}

const middle = { x: 50, y: 50 };
const ring = [circle(middle, 45, 8), circle(middle, 20, 8)];

test('of triangles strewn over a ring, those told to lie in it or beyond it do', () => {
  const window = new ClipWindow([{ contours: ring }]);
  const rings = ring.map((contour) => chordPoints(contour, 0.001));
  const counts = { all: 0, part: 0, none: 0 };
  for (let i = 0; i < 400; i++) {
    const points = triangle();
    const shape: Shape = { contours: [polygon(points)] };
    const leaves = window.leavesOf(shape);
    counts[leaves] += 1;
    if (leaves === 'part') continue;
    const left = clipperArea('intersection', [points], rings, 'evenodd');
    expectWithin(left, leaves === 'all' ? shapeArea(shape) : 0, 1e-3);
  }
  expect(Math.min(...Object.values(counts))).toBeGreaterThan(40);
});

// Cut by areas, a shape that only touches its frame took as long as one that goes past it.
test('of shapes in a turned frame, those told to lie in it or beyond it do, and one that fills it lies in it', () => {
  const corners = [0, 1, 2, 3].map((i) => ({
    x: 50 + 40 * Math.cos(0.3 + (i * Math.PI) / 2),
    y: 50 + 40 * Math.sin(0.3 + (i * Math.PI) / 2),
  }));
  for (const frame of [corners, corners.toReversed()]) {
    const window = new ClipWindow([{ contours: [polygon(frame)] }]);
    expect(window.leavesOf({ contours: [polygon(frame)] })).toBe('all');
    const counts = { all: 0, part: 0, none: 0 };
    for (let i = 0; i < 200; i++) {
      const points = triangle();
      const shape: Shape = { contours: [polygon(points)] };
      const leaves = window.leavesOf(shape);
      counts[leaves] += 1;
      const left = clipperArea('intersection', [points], [frame], 'evenodd');
      if (leaves === 'part') expect(left).toBeLessThan(shapeArea(shape));
      else expectWithin(left, leaves === 'all' ? shapeArea(shape) : 0, 1e-3);
    }
    expect(Math.min(...Object.values(counts))).toBeGreaterThan(20);
  }
});

test('of a window of several areas, or of none', () => {
  const shape: Shape = { contours: [polygon(triangle())] };
  const areas = ring.map((contour) => ({ contours: [contour] }));
  expect(new ClipWindow(areas).leavesOf(shape)).toBe('part');
  expect(new ClipWindow([]).leavesOf(shape)).toBe('none');
});
