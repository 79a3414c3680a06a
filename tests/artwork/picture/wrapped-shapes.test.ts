// Fine stripes that go on for ever: their film by its area, and how much is handed to the polygon engine for it.
import { Clipper64 } from 'clipper2-ts';
import { expect, test, vi } from 'vitest';
import { type TracedEdge, wrappedShapes } from '../../../src/artwork/picture/wrapped-shapes.ts';
import { cubic } from '../../../src/geometry/contour.ts';
import { shapeArea, tightBox } from '../../../src/geometry/measure.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { expectWithin } from '../../closeness.ts';

const [width, height] = [40, 30];

/** One edge that waves up the tile at x, whichever way it is walked; it leans by so many tiles to the height of one. */
function edgeAt(x: number, lean: number, isDown: boolean): TracedEdge {
  const points: Point[] = [0, 1 / 3, 2 / 3, 1].map((t) => {
    const wave = t === 1 / 3 ? 2 : t === 2 / 3 ? -2 : 0;
    return { x: x + lean * width * t + wave, y: height * t };
  });
  const [a, b, c, d] = isDown ? points.toReversed() : points;
  const segments = a && b && c && d ? [cubic(a, b, c, d)] : [];
  return { contour: { closed: false, segments }, by: isDown ? { i: -lean, j: -1 } : { i: lean, j: 1 } };
}

/** Bands of 0.1 mm, 0.3 mm from one to the next. */
const bands = 120;
const edgesOf = (count: number, lean: number) =>
  Array.from({ length: 2 * count }, (_, i) =>
    edgeAt(1 / 6 + (width / count) * (i >> 1) + (i % 2 === 0 ? 0 : 0.1), lean, i % 2 === 1),
  );
const sure = { at: { x: 1 / 6 + 0.05, y: 0 }, isFilm: true };

test.each([0, 1])('bands that lean by %i tiles are as large as they were drawn, all in the tile', (lean) => {
  const shapes = wrappedShapes(edgesOf(bands, lean), { width, height, sure });
  const box = tightBox(shapes.flatMap(({ contours }) => contours));
  expectWithin(box.maxX - box.minX, width, 0.5);
  expectWithin(box.maxY - box.minY, height, 1e-3);
  const area = shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);
  expectWithin(area, bands * 0.1 * height, 0.5);
});

// Each edge was closed by itself around all the others: of 1,000 that took two thirds of a minute.
test('they are closed two by two, with no way around the tile', () => {
  const given = vi.spyOn(Clipper64.prototype, 'addPath');
  wrappedShapes(edgesOf(bands, 0), { width, height, sure });
  const across = given.mock.calls.flatMap(([path]) => path.map(({ x }) => Number(x)));
  given.mockRestore();
  const reach = Math.max(...across) - Math.min(...across);
  expect(across.length).toBeGreaterThan(2 * bands);
  expect(reach).toBeLessThan(1.5 * width * 2 ** 15);
});
