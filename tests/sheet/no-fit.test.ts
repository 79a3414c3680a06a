import { expect, test } from 'vitest';
import { triangulate } from '../../src/geometry/polygon-clip.ts';
import { convexParts } from '../../src/sheet/convex-parts.ts';
import { convexSum, noFit, partsOf } from '../../src/sheet/no-fit.ts';
import { depthAt, escapeFrom } from '../../src/sheet/overlap-depth.ts';

const ring = (...corners: readonly (readonly [number, number])[]) => corners.map(([x, y]) => ({ x, y }));

const area = (points: readonly { readonly x: number; readonly y: number }[]): number =>
  points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    return sum + (p.x * q.y - p.y * q.x) / 2;
  }, 0);

const square = ring([0, 0], [10, 0], [10, 10], [0, 10]);
const corner = ring([0, 0], [30, 0], [30, 10], [10, 10], [10, 30], [0, 30]);
const bay = ring([0, 0], [40, 0], [40, 30], [25, 30], [25, 10], [15, 10], [15, 30], [0, 30]);

test('an outline is cut into convex parts that fill it', () => {
  for (const outline of [square, corner, bay, [...bay].reverse()]) {
    const parts = convexParts(outline);
    const sum = parts.reduce((total, part) => total + area(part), 0);
    expect(sum).toBeCloseTo(Math.abs(area(outline)), 9);
    for (const part of parts)
      part.forEach((b, i) => {
        const a = part[(i + part.length - 1) % part.length] ?? b;
        const c = part[(i + 1) % part.length] ?? b;
        expect((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x)).toBeGreaterThanOrEqual(0);
      });
  }
  expect(convexParts(square)).toHaveLength(1);
  expect(convexParts(corner)).toHaveLength(2);
  expect(convexParts(bay)).toHaveLength(3);
});

test('an outline that the library leaves without triangles is filled all the same', () => {
  // A mask's, its one edge a foot's arc and its other a wave; in thousandths of a mm.
  const wave = ring(
    [-13947, -32556],
    [-26894, -37717],
    [-30214, -38781],
    [-36011, -40037],
    [-43123, -40218],
    [-52360, -38326],
    [-57310, -38175],
    [-63218, -39019],
    [-79164, -43195],
    [-82586, -43862],
    [-88492, -44427],
    [-95576, -43771],
    [-104523, -40806],
    [-109421, -40073],
    [-115387, -40217],
    [-131719, -42489],
    [-135194, -42748],
    [-141126, -42615],
    [-148082, -41131],
    [-156616, -37134],
    [-161391, -35832],
    [-167334, -35273],
    [-186098, -35531],
    [-186790, -35709],
    [-187396, -36524],
    [-189102, -44384],
    [-188102, -45256],
    [-162999, -49501],
    [-137639, -52346],
    [-112226, -53766],
    [-99474, -53945],
    [-73948, -53232],
    [-61236, -52343],
    [-35948, -49506],
    [-10809, -45256],
    [-10169, -44939],
    [-9781, -43671],
    [-12254, -33477],
    [-12607, -32855],
  );
  expect(triangulate(wave)).toEqual([]);
  const sum = convexParts(wave).reduce((total, part) => total + area(part), 0);
  expect(sum).toBeCloseTo(Math.abs(area(wave)), 3);
});

// Mixed area of convex bodies: area(A + B) = area(A) + 2 V(A, B) + area(B); for a square of side s and a triangle of
// width w and height h standing on its side, 2 V = s (w + h). H. Minkowski; R. Schneider, Convex Bodies, from memory.
test('the sum of a square and a triangle has the area the mixed volume gives', () => {
  const triangle = ring([0, 0], [6, 0], [2, 8]);
  const sum = convexSum(square, triangle);
  expect(area(sum)).toBeCloseTo(100 + 24 + 10 * (6 + 8), 9);
});

test('two squares may not be closer than side by side', () => {
  const region = noFit(partsOf(square), partsOf(square), 1);
  expect(region).toMatchObject({ minX: -10, minY: -10, maxX: 10, maxY: 10 });
  expect(depthAt(region, 10, 0)).toBe(0);
  expect(depthAt(region, 9, 0)).toBeCloseTo(1, 12);
  expect(depthAt(region, 3, -4)).toBeCloseTo(6, 12);
  expect(escapeFrom(region, 9, 2)).toEqual({ x: 1, y: 0 });
});

test('a piece as wide as a bay less a hair fits into it, one a hair wider does not', () => {
  const narrow = ring([0, 0], [9, 0], [9, 30], [0, 30]);
  const wide = ring([0, 0], [11, 0], [11, 30], [0, 30]);
  expect(depthAt(noFit(partsOf(bay), partsOf(narrow), 1), 15.5, 10.5)).toBe(0);
  expect(depthAt(noFit(partsOf(bay), partsOf(narrow), 1), 15.5, 9.5)).toBeCloseTo(0.5, 12);
  expect(depthAt(noFit(partsOf(bay), partsOf(wide), 1), 14.5, 10.5)).toBeGreaterThan(0.4);
});

test('a corner on the level of the point asked about never turns inside out', () => {
  const region = noFit(partsOf(square), partsOf(ring([0, 9], [0, 0], [14, 9])), 1);
  for (const dx of [-1e-15, 0, 1e-15])
    for (const dy of [-1e-15, 0, 1e-15]) expect(depthAt(region, dx, dy)).toBeGreaterThan(5);
});
