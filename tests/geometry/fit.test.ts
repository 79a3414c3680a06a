import { describe, expect, test } from 'vitest';
import { cubic, line, type Segment } from '../../src/geometry/contour.ts';
import { mapSegment, type SmoothMap } from '../../src/geometry/fit.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { derivativeAt, pointAt } from '../../src/geometry/segment.ts';
import { fitTolerance, straightTolerance } from '../../src/geometry/tolerance.ts';
import { conformalLay, evenLay, type Lay, stepOnSheet, toSheet } from '../../src/pattern/lay/lay.ts';
import { flatWall } from '../../src/unroll/flat-wall.ts';
import { expectAtMost, expectPointWithin } from '../closeness.ts';
import { blob, circle, randomFrom } from './drawn.ts';

const mapOf = (lay: Lay): SmoothMap => ({
  point: (p) => toSheet(lay, p),
  displacement: (at, by) => stepOnSheet(lay, at, by),
});

const degrees = Math.PI / 180;
const cone = (halfAngleDeg: number) => flatWall(40, Math.sin(halfAngleDeg * degrees), 60);
const laid: readonly { readonly name: string; readonly map: SmoothMap }[] = [
  { name: 'even on a cylinder', map: mapOf(evenLay(cone(0), 0)) },
  { name: 'even on 5 degrees', map: mapOf(evenLay(cone(5), 0)) },
  { name: 'conformal on 5 degrees', map: mapOf(conformalLay(cone(5), 0)) },
  { name: 'even on 20 degrees, wider at the foot', map: mapOf(evenLay(cone(-20), 0)) },
  { name: 'conformal on 40 degrees', map: mapOf(conformalLay(cone(40), 0)) },
];

const random = randomFrom(20266);
const anyPoint = (): Point => ({ x: 240 * random(), y: 110 * random() });
const sources: readonly Segment[] = [
  ...Array.from({ length: 6 }, () => line(anyPoint(), anyPoint())),
  ...Array.from({ length: 12 }, () => cubic(anyPoint(), anyPoint(), anyPoint(), anyPoint())),
  ...Array.from({ length: 4 }, () => blob(random, anyPoint(), 12).segments).flat(),
];

/** Distance of a point from a chain of segments: by samples, refined by thirds around every one nearer than its neighbours. */
function distanceTo(segments: readonly Segment[], p: Point): number {
  const steps = 48;
  let best = Infinity;
  for (const s of segments) {
    const at = (t: number) => distance(p, pointAt(s, t));
    const ds = Array.from({ length: steps + 1 }, (_, i) => at(i / steps));
    ds.forEach((d, i) => {
      if (d > (ds[i - 1] ?? Infinity) || d > (ds[i + 1] ?? Infinity)) return;
      let [low, high] = [Math.max(0, i - 1) / steps, Math.min(steps, i + 1) / steps];
      for (let round = 0; round < 44; round++) {
        const third = (high - low) / 3;
        if (at(low + third) < at(high - third)) high -= third;
        else low += third;
      }
      best = Math.min(best, d, at((low + high) / 2));
    });
  }
  return best;
}

describe.each(laid)('a curve carried over, $name', ({ map }) => {
  test('stays within the tolerance of its exact image, by dense samples, and within the error it states', () => {
    for (const tolerance of [fitTolerance, 0.0005])
      for (const source of sources) {
        const { segments, error } = mapSegment(map, source, tolerance);
        expectAtMost(error, tolerance, 'stated error');
        let worst = 0;
        for (let i = 0; i <= 24; i++)
          worst = Math.max(worst, distanceTo(segments, map.point(pointAt(source, i / 24))));
        // A point measured between two probes may lie a little past the largest of them.
        expectAtMost(worst, 1.1 * error + 1e-6, 'measured error');
      }
  });

  test('begins and ends at the exact image, and its pieces join exactly', () => {
    for (const source of sources) {
      const { segments } = mapSegment(map, source, fitTolerance);
      expect(segments[0]?.from).toEqual(map.point(pointAt(source, 0)));
      expect(segments.at(-1)?.to).toEqual(map.point(pointAt(source, 1)));
      segments.slice(1).forEach((s, i) => {
        expect(s.from).toEqual(segments[i]?.to);
      });
    }
  });

  test('leaves and arrives in the exact direction', () => {
    for (const source of sources) {
      const { segments } = mapSegment(map, source, fitTolerance);
      const [first, last] = [segments[0], segments.at(-1)];
      if (first?.kind !== 'cubic' || last?.kind !== 'cubic') continue;
      for (const [s, t] of [
        [first, 0],
        [last, 1],
      ] as const) {
        const by = derivativeAt(source, t);
        const wanted = map.displacement(pointAt(source, t), by);
        const got = derivativeAt(s, t);
        const off =
          Math.abs(got.x * wanted.y - got.y * wanted.x) /
          (Math.hypot(got.x, got.y) * Math.hypot(wanted.x, wanted.y));
        expectAtMost(off, 1e-9, 'sine of the angle between');
      }
    }
  });

  test('spends at most 1.5 segments for each of a drawing whose features are up to a tenth of the radius', () => {
    const features = Array.from({ length: 30 }, () => circle(anyPoint(), 1 + 3 * random()).segments).flat();
    const spent = features.reduce((sum, s) => sum + mapSegment(map, s, fitTolerance).segments.length, 0);
    expectAtMost(spent / features.length, 1.5, 'segments for each');
  });
});

describe('a straight line', () => {
  test('stays a line on a cylinder, however long', () => {
    const { map } = laid[0] ?? { map: mapOf(evenLay(cone(0), 0)) };
    for (const source of sources.filter(({ kind }) => kind === 'line')) {
      const { segments } = mapSegment(map, source, fitTolerance);
      expect(segments.map(({ kind }) => kind)).toEqual(['line']);
    }
  });

  test('up the wall stays a line on any cone, within a thousandth', () => {
    for (const { map } of laid) {
      const { segments } = mapSegment(map, line({ x: 77, y: 0 }, { x: 77, y: 110 }), fitTolerance);
      expect(segments.map(({ kind }) => kind)).toEqual(['line']);
    }
  });

  test('that bends by more than a thousandth on the sheet becomes curves, and by less stays a line', () => {
    const map = mapOf(evenLay(cone(5), 0));
    // Laid level at the reference height it is an arc of radius 1 / curvature: sag of a chord c is c² curvature / 8.
    const curvature = Math.sin(5 * degrees) / 40;
    const longest = Math.sqrt((8 * straightTolerance) / curvature);
    const level = (length: number) => line({ x: 100, y: 60 }, { x: 100 + length, y: 60 });
    const kinds = (length: number) =>
      mapSegment(map, level(length), fitTolerance).segments.map(({ kind }) => kind);
    expect(kinds(0.95 * longest)).toEqual(['line']);
    expect(kinds(1.1 * longest)).toEqual(['cubic']);
  });
});

describe('a map that is affine', () => {
  test('carries a cubic onto the cubic of its moved control points, in one piece', () => {
    const turn: SmoothMap = {
      point: ({ x, y }) => ({ x: 2 * x - y + 5, y: x + 3 * y - 7 }),
      displacement: (_, { x, y }) => ({ x: 2 * x - y, y: x + 3 * y }),
    };
    for (const source of sources) {
      if (source.kind === 'line') continue;
      const { segments } = mapSegment(turn, source, 1e-9);
      expect(segments).toHaveLength(1);
      const [s] = segments;
      if (s?.kind !== 'cubic') throw new Error('not a cubic');
      expectPointWithin(s.c1, turn.point(source.c1), 1e-10);
      expectPointWithin(s.c2, turn.point(source.c2), 1e-10);
    }
  });
});
