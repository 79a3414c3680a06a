// The order of cuts: what lies inside comes first, outlines are kept, little is travelled, and every line stays the same line.
import { describe, expect, test } from 'vitest';
import type { DrawnPath } from '../../src/drawing/drawing.ts';
import { moveContour, rotation } from '../../src/geometry/affine.ts';
import { contourLength } from '../../src/geometry/arc-length.ts';
import { type Contour, polygon, reverseContour } from '../../src/geometry/contour.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { inCutOrder, insideOf, travelOf } from '../../src/sheet/cut-order.ts';
import { startedWell } from '../../src/sheet/cut-start.ts';
import { expectPointWithin, expectWithin } from '../closeness.ts';
import { circle, randomFrom } from '../geometry/drawn.ts';
import { paperArea, paperPath } from '../geometry/libraries.ts';

const square = (x: number, y: number, side: number): Contour =>
  polygon([
    { x, y },
    { x: x + side, y },
    { x: x + side, y: y + side },
    { x, y: y + side },
  ]);
const named = (id: string, ...contours: Contour[]): DrawnPath => ({ id, contours });
const home = { x: 0, y: 0 };
const idsOf = (paths: readonly DrawnPath[]) => paths.map(({ id }) => id);

describe('the order of cuts', () => {
  test('takes what lies inside a line before it, however deep, and holes before their outer line', () => {
    const ring = named('ring', square(10, 10, 80), square(20, 20, 60));
    const dot = named('dot', square(40, 40, 20), square(45, 45, 8));
    const pip = named('pip', square(47, 47, 3));
    const apart = named('apart', square(200, 10, 20));
    const order = inCutOrder([ring, apart, dot, pip], home);
    const ids = idsOf(order);
    expect(ids.indexOf('pip')).toBeLessThan(ids.indexOf('dot'));
    expect(ids.indexOf('dot')).toBeLessThan(ids.indexOf('ring'));
    expect(new Set(ids).size).toBe(4);
    for (const { contours } of order) {
      const areas = contours.map((contour) => Math.abs(paperPath([contour]).area));
      expect(areas.at(-1)).toBe(Math.max(...areas));
    }
  });

  test('travels little: close to the shortest way there is, where all ways can be tried', () => {
    const random = randomFrom(5);
    let [ours, best] = [0, 0];
    for (let round = 0; round < 20; round++) {
      const paths = Array.from({ length: 7 }, (_, i) =>
        named(String(i), square(300 * random(), 300 * random(), 5)),
      );
      ours += travelOf(inCutOrder(paths, home), home).length;
      best += shortest(paths.map(({ contours }) => startOf(contours[0])));
    }
    // Nearest first is a quarter longer than the best on the plane (D. S. Johnson, L. A. McGeoch 1997, from memory).
    expect(ours).toBeLessThan(1.3 * best);
    expect(ours).toBeGreaterThanOrEqual(best - 1e-9);
  });

  test('of thousands travels a fraction of the order they were drawn in', () => {
    const random = randomFrom(9);
    const paths = Array.from({ length: 5000 }, (_, i) =>
      named(String(i), square(600 * random(), 400 * random(), 1)),
    );
    const order = inCutOrder(paths, home);
    expect(new Set(idsOf(order)).size).toBe(5000);
    expect(travelOf(order, home).length).toBeLessThan(0.05 * travelOf(paths, home).length);
    // On the plane the shortest way through n places of an area A tends to 0.7124 sqrt(n A) (J. Beardwood, J. H. Halton,
    // J. M. Hammersley 1959; the constant by Johnson and McGeoch, from memory).
    expect(travelOf(order, home).length).toBeLessThan(1.4 * 0.7124 * Math.sqrt(5000 * 600 * 400));
  });

  test('is the same for the same paths', () => {
    const paths = [
      named('a', square(30, 0, 10)),
      named('b', square(0, 30, 10)),
      named('c', square(30, 30, 10)),
    ];
    expect(inCutOrder(paths, home)).toEqual(inCutOrder(paths, home));
    expect(inCutOrder([], home)).toEqual([]);
  });
});

const startOf = (contour: Contour | undefined): Point =>
  (contour && startedWell(contour).segments[0]?.from) ?? home;

/** The shortest way from home through all places, by trying all. */
function shortest(places: readonly Point[], from: Point = home): number {
  if (places.length === 0) return 0;
  return Math.min(
    ...places.map(
      (place, i) =>
        distance(from, place) +
        shortest(
          places.filter((_, k) => k !== i),
          place,
        ),
    ),
  );
}

describe('where a line begins', () => {
  test('is the middle of its longest straight run', () => {
    const house = polygon([home, { x: 30, y: 0 }, { x: 30, y: 10 }, { x: 15, y: 20 }, { x: 0, y: 10 }]);
    expectPointWithin(startOf(house), { x: 15, y: 0 }, 1e-12);
    expectPointWithin(startOf(reverseContour(house)), { x: 15, y: 0 }, 1e-12);
  });

  test('of a line all curved is inside a curve, never in its corner', () => {
    const leaf: Contour = {
      closed: true,
      segments: [
        { kind: 'cubic', from: home, c1: { x: 5, y: -8 }, c2: { x: 15, y: -8 }, to: { x: 20, y: 0 } },
        { kind: 'cubic', from: { x: 20, y: 0 }, c1: { x: 15, y: 6 }, c2: { x: 5, y: 6 }, to: home },
      ],
    };
    for (const corner of [home, { x: 20, y: 0 }]) expect(distance(startOf(leaf), corner)).toBeGreaterThan(5);
  });

  test('turns with the line, and leaves the line what it was', () => {
    const shapes = [square(3, 4, 17), circle({ x: 5, y: 5 }, 8, 4), circle({ x: 0, y: 0 }, 0.4, 4)];
    for (const shape of shapes) {
      const begun = startedWell(shape);
      expect(begun.closed).toBe(true);
      begun.segments.forEach(({ from }, i) => {
        expect(begun.segments.at(i - 1)?.to).toEqual(from);
      });
      expectWithin(contourLength(begun), contourLength(shape), 1e-9);
      const area = Math.abs(paperPath([shape]).area);
      expectWithin(paperArea('intersection', [begun], [shape]), area, 1e-3);
      const turn = rotation(1);
      const [there, then] = [moveContour(turn, begun), startedWell(moveContour(turn, shape))];
      expectPointWithin(startOf(there), startOf(then), 1e-9);
    }
  });

  test('of an open line is where it was', () => {
    const open: Contour = { closed: false, segments: square(0, 0, 9).segments.slice(0, 3) };
    expect(startedWell(open)).toBe(open);
  });
});

test('a point is inside by the even-odd rule, curves and all', () => {
  const random = randomFrom(3);
  const ring = [circle({ x: 0, y: 0 }, 10, 8), circle({ x: 2, y: 1 }, 5, 8)];
  for (let i = 0; i < 500; i++) {
    const p = { x: 24 * random() - 12, y: 24 * random() - 12 };
    const [outer, inner] = [Math.hypot(p.x, p.y), Math.hypot(p.x - 2, p.y - 1)];
    if (Math.abs(outer - 10) < 0.02 || Math.abs(inner - 5) < 0.02) continue;
    expect(insideOf(ring)(p)).toBe(outer < 10 && inner > 5);
  }
});
