import { expect, test } from 'vitest';
import { boxOfPoints } from '../../src/geometry/box.ts';
import { polygon } from '../../src/geometry/contour.ts';
import { NearestFinder } from '../../src/geometry/nearest.ts';
import type { Point } from '../../src/geometry/point.ts';
import { nestOutline, nestTolerance } from '../../src/sheet/nest-outline.ts';
import { circle } from '../geometry/drawn.ts';

const alongSides = (ring: readonly Point[], every: number): Point[] =>
  ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / every));
    return Array.from({ length: count }, (_, k) => ({
      x: a.x + ((b.x - a.x) * k) / count,
      y: a.y + ((b.y - a.y) * k) / count,
    }));
  });

const arch = polygon([
  { x: 0, y: 0 },
  { x: 80, y: 0 },
  { x: 80, y: 60 },
  { x: 60, y: 60 },
  { x: 60, y: 20 },
  { x: 20, y: 20 },
  { x: 20, y: 60 },
  { x: 0, y: 60 },
]);

test.each([
  ['a circle', circle({ x: 0, y: 0 }, 40, 8)],
  ['an arch', arch],
])('%s keeps its gap all round and has few corners', (_, contour) => {
  const gap = 1.5;
  const outline = nestOutline(contour, gap);
  const finder = new NearestFinder([contour]);
  const away = alongSides(outline, 0.5).map((p) => finder.find(p, 10)?.distance ?? Infinity);
  expect(Math.min(...away)).toBeGreaterThan(gap);
  // A mitred corner is left rounded: no farther than the gap and the three tolerances.
  expect(Math.max(...away)).toBeLessThan(gap + 3 * nestTolerance + 1e-6);
  expect(outline.length).toBeLessThan(60);
});

test('a bay whose mouth closes is within the outline, however many corners it has', () => {
  const bay = Array.from({ length: 121 }, (_, i) => {
    const a = Math.PI / 2 - 0.0025 - ((2 * Math.PI - 0.005) * i) / 120;
    return { x: 50 + 40 * Math.cos(a), y: 50 + 40 * Math.sin(a) };
  });
  const keyhole = [
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 100, y: 100 },
    { x: 50.1, y: 100 },
    ...bay,
    { x: 49.9, y: 100 },
    { x: 0, y: 100 },
  ];
  const { minX, minY, maxX, maxY } = boxOfPoints(nestOutline(polygon(keyhole), 1));
  expect(Math.max(minX, minY)).toBeLessThan(-1);
  expect(Math.min(maxX, maxY)).toBeGreaterThan(101);
});
