import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convexChains, leastSummit } from '../../src/geometry/convex-chains.ts';
import type { Point } from '../../src/geometry/point.ts';

const profiles = fc
  .array(fc.record({ dx: fc.integer({ min: 1, max: 9 }), y: fc.integer({ min: -20, max: 20 }) }), {
    minLength: 2,
    maxLength: 40,
  })
  .map((steps) => {
    let x = 0;
    return steps.map(({ dx, y }): Point => {
      x += dx;
      return { x, y };
    });
  });

/** Left of a to b is positive. */
const side = (a: Point, b: Point, p: Point): number => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);

const edgesOf = (chain: readonly Point[]) => chain.slice(1).map((b, i) => ({ a: chain[i] ?? b, b }));

describe('the sides of a hull', () => {
  test('have all points between them, and run from the first to the last', () => {
    fc.assert(
      fc.property(profiles, (points) => {
        const { above, below } = convexChains(points);
        for (const chain of [above, below])
          expect([chain[0], chain.at(-1)]).toEqual([points[0], points.at(-1)]);
        for (const p of points) {
          for (const { a, b } of edgesOf(above)) expect(side(a, b, p)).toBeLessThanOrEqual(0);
          for (const { a, b } of edgesOf(below)) expect(side(a, b, p)).toBeGreaterThanOrEqual(0);
        }
      }),
      { seed: 41, numRuns: 500 },
    );
  });

  test('have no point within a straight run', () => {
    const line = [0, 1, 2, 3].map((x) => ({ x, y: 2 * x }));
    expect(convexChains(line)).toEqual({ above: [line[0], line[3]], below: [line[0], line[3]] });
  });
});

test('of sides of five hundred edges each vertex is measured a few times, not from every edge', () => {
  const arc = (way: 1 | -1): Point[] =>
    Array.from({ length: 501 }, (_, i) => ({ x: i, y: way * 300 * Math.sin((Math.PI * i) / 500) }));
  let measured = 0;
  leastSummit(arc(-1), arc(1), (a, b, p) => {
    measured++;
    return side(a, b, p) / Math.hypot(b.x - a.x, b.y - a.y);
  });
  expect(measured).toBeLessThan(5 * 500);
});

test('the edge with the least summit is the one that looking at all of them finds', () => {
  fc.assert(
    fc.property(profiles, (points) => {
      const { above, below } = convexChains(points);
      const value = (a: Point, b: Point, p: Point) => side(a, b, p) / Math.hypot(b.x - a.x, b.y - a.y);
      const all = edgesOf(below).map(({ a, b }) => Math.max(...points.map((p) => value(a, b, p))));
      expect(leastSummit(below, above, value)?.summit).toBe(Math.min(...all));
    }),
    { seed: 42, numRuns: 1000 },
  );
  expect(leastSummit([{ x: 0, y: 0 }], [{ x: 0, y: 0 }], () => 1)).toBeUndefined();
});
