import { describe, expect, test } from 'vitest';
import { determinant } from '../../src/geometry/affine.ts';
import { boxesMeet, grow, hullBox } from '../../src/geometry/box.ts';
import { type Contour, cubic, polygon, reverseContour } from '../../src/geometry/contour.ts';
import { shapeArea, signedArea, tightBox } from '../../src/geometry/measure.ts';
import { expectAtMost, expectWithin, expectWithinPart } from '../closeness.ts';
import { blob, box, circle, motions, moved, randomFrom, sampled, sampledArea } from './drawn.ts';
import { paperPath } from './libraries.ts';

const random = randomFrom(20265);
const anyPoint = () => ({ x: 100 * random() - 50, y: 100 * random() - 50 });
const loop = (): Contour => {
  const nodes = Array.from({ length: 4 }, anyPoint);
  return {
    closed: true,
    segments: nodes.map((from, i) => cubic(from, anyPoint(), anyPoint(), nodes[(i + 1) % 4] ?? from)),
  };
};
/** Contours that cross themselves at will: signed area and box are defined all the same. */
const wild = Array.from({ length: 20 }, loop);
const tame = Array.from({ length: 10 }, () => blob(random, anyPoint(), 10 + 30 * random()));

describe('signed area', () => {
  test('is positive counter-clockwise with y up, negative the other way', () => {
    expect(signedArea(box(2, 3, 4, 5))).toBe(20);
    expect(signedArea(reverseContour(box(2, 3, 4, 5)))).toBe(-20);
  });

  test('of an arch is what integrating it by hand gives', () => {
    // Ends 60 apart, handles straight up 20: y = 60 t(1-t), x = 60(3t²-2t³), so the integral of y dx is
    // 60·360·∫t²(1-t)² dt = 21600 / 30 = 720.
    const arch = {
      closed: true,
      segments: [
        cubic({ x: 0, y: 0 }, { x: 0, y: 20 }, { x: 60, y: 20 }, { x: 60, y: 0 }),
        ...polygon([
          { x: 60, y: 0 },
          { x: 0, y: 0 },
        ]).segments.slice(0, 1),
      ],
    };
    expectWithin(signedArea(arch), -720, 1e-10);
  });

  test('of a circle of cubics is that of the circle', () => {
    // The usual four-piece circle strays outward by at most 2.7e-4 of its radius; eight pieces by 4.2e-6.
    expectWithinPart(signedArea(circle({ x: 7, y: -5 }, 12, 8)), 144 * Math.PI, 1e-5);
    expectWithinPart(signedArea(circle({ x: 7, y: -5 }, 12, 24)), 144 * Math.PI, 1e-8);
  });

  test('agrees with paper on random cubics, crossing themselves or not', () => {
    for (const contour of tame)
      expectWithinPart(Math.abs(signedArea(contour)), Math.abs(paperPath([contour]).area), 1e-9);
    for (const contour of wild) {
      const size = paperPath([contour]).bounds;
      const scale = (size.right - size.left) * (size.bottom - size.top);
      expectWithin(signedArea(contour), paperPath([contour]).area, 1e-9 * scale);
    }
  });

  test('agrees with the slow way, by shoelace over many points', () => {
    for (const contour of tame)
      expectWithinPart(signedArea(contour), sampledArea(sampled(contour, 2000)), 1e-5);
  });

  test.each(motions)('follows when $name', ({ m }) => {
    for (const contour of tame)
      for (const one of moved(m, [contour]))
        expectWithinPart(signedArea(one), determinant(m) * signedArea(contour), 1e-10);
  });

  test('changes its sign when walked the other way', () => {
    for (const contour of [...tame, ...wild])
      expectWithin(signedArea(reverseContour(contour)), -signedArea(contour), 1e-8);
  });

  test('of a shape is the outer area less the holes, whichever way they run', () => {
    const shape = { contours: [box(0, 0, 10, 10), box(1, 1, 2, 2), reverseContour(box(5, 5, 3, 3))] };
    expect(shapeArea(shape)).toBe(87);
    expect(shapeArea({ contours: [] })).toBe(0);
  });
});

describe('the tight box', () => {
  test('touches the curve on all four sides: against brute sampling', () => {
    for (const contour of [...tame, ...wild]) {
      const points = sampled(contour, 4000);
      const got = tightBox([contour]);
      const sides: readonly (readonly [number, readonly number[]])[] = [
        [got.minX, points.map(({ x }) => x)],
        [-got.maxX, points.map(({ x }) => -x)],
        [got.minY, points.map(({ y }) => y)],
        [-got.maxY, points.map(({ y }) => -y)],
      ];
      for (const [side, values] of sides) {
        const brute = Math.min(...values);
        expectAtMost(side, brute + 1e-9, 'side of the box');
        expectAtMost(brute - side, 1e-4, 'room in the box');
      }
    }
  });

  test('agrees with paper', () => {
    for (const contour of [...tame, ...wild]) {
      const got = tightBox([contour]);
      const { left, top, right, bottom } = paperPath([contour]).bounds;
      expectWithin(got.minX, left, 1e-6);
      expectWithin(got.minY, top, 1e-6);
      expectWithin(got.maxX, right, 1e-6);
      expectWithin(got.maxY, bottom, 1e-6);
    }
  });

  test.each(motions)('follows when $name', ({ m, scale }) => {
    for (const contour of tame) {
      const got = tightBox(moved(m, [contour]));
      const points = moved(m, [contour]).flatMap((one) => sampled(one, 500));
      expectWithin(got.minX, Math.min(...points.map(({ x }) => x)), 1e-2 * scale);
      expectWithin(got.maxY, Math.max(...points.map(({ y }) => y)), 1e-2 * scale);
    }
  });

  test('finds the extremes of a cubic that is a quadratic in disguise, and of one that turns back', () => {
    // A raised quadratic: the cubic term is rounding only.
    const raised = cubic({ x: 0, y: 0 }, { x: 20 / 3, y: 40 / 3 }, { x: 40 / 3, y: 40 / 3 }, { x: 20, y: 0 });
    expectWithin(tightBox([{ closed: false, segments: [raised] }]).maxY, 10, 1e-12);
    // Turns back along a line: x = 3·30 t(1-t)² + ... peaks twice.
    const back = cubic({ x: 0, y: 0 }, { x: 30, y: 0 }, { x: -30, y: 0 }, { x: 0, y: 0 });
    const box = tightBox([{ closed: false, segments: [back] }]);
    expectWithin(box.maxX, 90 * (1 / 3 / Math.sqrt(3) / 2), 1e-9);
    expectWithin(box.minX, -box.maxX, 1e-9);
  });

  test('lies inside the box of the control points', () => {
    for (const contour of wild) {
      const [tight, hull] = [tightBox([contour]), hullBox([contour])];
      expect(hull.minX).toBeLessThanOrEqual(tight.minX);
      expect(hull.maxX).toBeGreaterThanOrEqual(tight.maxX);
      expect(hull.minY).toBeLessThanOrEqual(tight.minY);
      expect(hull.maxY).toBeGreaterThanOrEqual(tight.maxY);
    }
  });
});

describe('boxes', () => {
  test('meet when they share a point, and grow on all sides', () => {
    const one = { minX: 0, minY: 0, maxX: 1, maxY: 1 };
    expect(boxesMeet(one, { minX: 1, minY: 1, maxX: 2, maxY: 2 })).toBe(true);
    expect(boxesMeet(one, { minX: 1.01, minY: 0, maxX: 2, maxY: 2 })).toBe(false);
    expect(boxesMeet(one, { minX: 0, minY: -3, maxX: 2, maxY: -0.01 })).toBe(false);
    expect(grow(one, 2)).toEqual({ minX: -2, minY: -2, maxX: 3, maxY: 3 });
  });
});
