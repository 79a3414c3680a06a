// Sums of outlines by their convolution, against the mixed areas of convex bodies and the polygon engine's own sums, swept strip by strip.
import { areaPaths, FillRule, minkowskiSum, type Path64, union } from 'clipper2-ts';
import { expect, test } from 'vitest';
import { type GridRing, ringArea } from '../../src/geometry/grid-ring.ts';
import { convolution, cornersOf } from '../../src/sheet/convolution.ts';
import { type NoFit, noFit } from '../../src/sheet/no-fit.ts';
import { randomFrom } from '../hostile/mutate.ts';

const ring = (...corners: readonly (readonly [number, number])[]): GridRing =>
  corners.map(([x, y]) => ({ x, y }));

const square = ring([0, 0], [10, 0], [10, 10], [0, 10]);

const areaOf = ({ x0, y0, x1, y1 }: NoFit): number =>
  x0.reduce((sum, x, k) => sum + x * (y1[k] ?? 0) - (x1[k] ?? 0) * (y0[k] ?? 0), 0) / 2;

const opposite = (outline: GridRing): GridRing => outline.map(({ x, y }) => ({ x: -x, y: -y }));
const leftHanded = (path: Path64): Path64 => (areaPaths([path]) < 0 ? [...path].reverse() : path);

/** What the library's sweeps of one outline along the other fill, with the two themselves at each other's first corner. */
function sweptArea(a: GridRing, b: GridRing): number {
  const [p, q] = [a[0] ?? { x: 0, y: 0 }, b[0] ?? { x: 0, y: 0 }];
  const moved = (path: GridRing, by: { x: number; y: number }) =>
    path.map(({ x, y }) => ({ x: x + by.x, y: y + by.y }));
  const strips = minkowskiSum(a as Path64, b as Path64, true);
  const all = [...strips, moved(b, p), moved(a, q)].map((path) => leftHanded(path as Path64));
  return areaPaths(union(all, [], FillRule.NonZero));
}

/** A star with points of any length, its middle inside it; the corners lie on a grid, so that sides of two of them often go one way. */
function star(random: () => number, size: number, grid: number): GridRing {
  const corners = 5 + Math.floor(random() * 20);
  return Array.from({ length: corners }, (_, k) => {
    const angle = (2 * Math.PI * k) / corners;
    const reach = (size * (0.4 + 0.6 * random())) / grid;
    return { x: grid * Math.round(reach * Math.cos(angle)), y: grid * Math.round(reach * Math.sin(angle)) };
  });
}

// Mixed area of convex bodies: area(A + B) = area(A) + 2 V(A, B) + area(B); for a square of side s and a triangle of
// width w and height h standing on its side, 2 V = s (w + h). H. Minkowski; R. Schneider, Convex Bodies, from memory.
test('the sum of a square and a triangle has the area the mixed volume gives', () => {
  const triangle = ring([0, 0], [6, 0], [2, 8]);
  const [way = [], ...others] = convolution(cornersOf(square), cornersOf(triangle));
  expect(others).toEqual([]);
  expect(ringArea(way)).toBeCloseTo(100 + 24 + 10 * (6 + 8), 9);
});

test('outlines that turn both ways have the sums that the library sweeps', () => {
  const random = randomFrom(20);
  for (let k = 0; k < 40; k++) {
    const [a, b] = [star(random, 40_000, 4_000), star(random, 24_000, k % 2 ? 4_000 : 1)];
    const ours = areaOf(noFit(cornersOf(a), cornersOf(k % 3 ? b : [...b].reverse()), 1));
    const swept = sweptArea(a, opposite(b));
    expect(Math.abs(ours - swept) / swept, `${k}`).toBeLessThan(1e-4);
  }
});

// The polygon engine fills 64 square units between these level sides that are empty.
test('level sides that lie on each other leave empty what is empty', () => {
  const a = ring(
    [26, 0],
    [19, 14],
    [4, 14],
    [-12, 36],
    [-18, 13],
    [-32, 0],
    [-37, -27],
    [-6, -19],
    [5, -15],
    [19, -14],
  );
  const b = ring([19, 0], [9, 12], [-3, 12], [-9, 5], [-11, -5], [-2, -8], [3, -4]);
  const fine = (outline: GridRing) => outline.map(({ x, y }) => ({ x: 1000 * x, y: 1000 * y }));
  const region = noFit(cornersOf(fine(a)), cornersOf(opposite(fine(b))), 1e-3);
  const swept = sweptArea(fine(a), fine(b)) / 1e6;
  expect(areaOf(region)).toBeCloseTo(swept, 3);
});

test('corners that stand twice, do not turn or turn straight back add nothing', () => {
  const plain = cornersOf(square);
  const spiked = ring([0, 0], [0, 0], [4, 0], [10, 0], [10, 4], [17, 4], [10, 4], [10, 10], [0, 10]);
  expect(cornersOf(spiked)).toEqual(plain);
  expect(cornersOf([...square].reverse())).toHaveLength(4);
});
