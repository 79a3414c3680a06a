import { describe, test } from 'vitest';
import { moveContour, translation } from '../../../src/geometry/affine.ts';
import { cubic, line, polygon, reverseContour } from '../../../src/geometry/contour.ts';
import { signedArea } from '../../../src/geometry/measure.ts';
import { coverOf } from '../../../src/prove/written/centre.ts';
import { expectPointWithin, expectWithin } from '../../closeness.ts';
import { blob, box, randomFrom } from '../../geometry/drawn.ts';

const origin = { x: 0, y: 0 };

describe('what shapes cover', () => {
  test('is that of a right triangle: half the box, its middle a third of the way', () => {
    const triangle = polygon([origin, { x: 6, y: 0 }, { x: 0, y: 3 }]);
    const { area, middle } = coverOf([[triangle]], origin);
    expectWithin(area, 9, 1e-12);
    expectPointWithin(middle, { x: 2, y: 1 }, 1e-12);
  });

  test('is that under a parabola: two thirds of the box, its middle two fifths up', () => {
    // y = 4 x (1 - x) on 0 to 1 as a cubic; area 2/3, centroid height 2/5 (any handbook of centroids).
    const arch = cubic(origin, { x: 1 / 3, y: 4 / 3 }, { x: 2 / 3, y: 4 / 3 }, { x: 1, y: 0 });
    const { area, middle } = coverOf(
      [[{ closed: true, segments: [arch, line({ x: 1, y: 0 }, origin)] }]],
      origin,
    );
    expectWithin(area, 2 / 3, 1e-12);
    expectPointWithin(middle, { x: 0.5, y: 0.4 }, 1e-12);
  });

  test('leaves out a hole, whichever way it runs', () => {
    const outer = box(0, 0, 10, 10);
    const hole = box(6, 0, 4, 10);
    for (const inner of [hole, reverseContour(hole)])
      for (const around of [outer, reverseContour(outer)]) {
        const { area, middle } = coverOf([[around, inner]], origin);
        expectWithin(area, 60, 1e-9);
        expectPointWithin(middle, { x: 3, y: 5 }, 1e-9);
      }
  });

  test('goes along when shapes are moved, seen from anywhere', () => {
    const random = randomFrom(5);
    const shapes = Array.from({ length: 8 }, () => [blob(random, { x: 90 * random(), y: 90 * random() }, 9)]);
    const moved = shapes.map((contours) => contours.map((c) => moveContour(translation(300, -40), c)));
    const [here, there] = [coverOf(shapes, origin), coverOf(moved, { x: 50, y: 50 })];
    const areas = shapes.flat().reduce((sum, contour) => sum + Math.abs(signedArea(contour)), 0);
    expectWithin(here.area, areas, 1e-9);
    expectWithin(there.area, areas, 1e-9);
    expectPointWithin(there.middle, { x: here.middle.x + 300, y: here.middle.y - 40 }, 1e-9);
  });
});
