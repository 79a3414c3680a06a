import { expect, test } from 'vitest';
import { clipApart } from '../../src/geometry/clip-apart.ts';
import { type GridRing, ringArea } from '../../src/geometry/grid-ring.ts';
import { lessOfHeap } from '../../src/geometry/heaps.ts';
import { clipPolygons } from '../../src/geometry/polygon-clip.ts';

/** Discs of 24 corners on a lattice, each over its neighbours, some left out so that holes are left. */
const disc = (x: number, y: number, r: number): GridRing =>
  Array.from({ length: 24 }, (_, k) => ({
    x: Math.round(x + r * Math.cos((k * Math.PI) / 12)),
    y: Math.round(y + r * Math.sin((k * Math.PI) / 12)),
  }));
const heap = Array.from({ length: 900 }, (_, k) => ({ i: k % 30, j: Math.floor(k / 30), k }))
  .filter(({ k }) => k % 17 !== 0)
  .map(({ i, j, k }) => disc(1000 * i + 37 * (k % 5), 1000 * j + 53 * (k % 7), 700 + 11 * (k % 13)));

const regionsOf = (rings: readonly GridRing[]) => clipPolygons('union', rings, [], 'nonzero');
const ringsOf = (rings: readonly GridRing[]) =>
  regionsOf(rings).flatMap(({ outer, holes }) => [outer, ...holes]);
const areaOf = (regions: readonly { readonly outer: GridRing; readonly holes: readonly GridRing[] }[]) =>
  regions.reduce((sum, { outer, holes }) => sum + [outer, ...holes].reduce((a, r) => a + ringArea(r), 0), 0);

test('a heap is united near by near first, to the same as all at once', () => {
  const inLots: number[] = [];
  const less = lessOfHeap(heap, (near) => {
    inLots.push(near.length);
    return ringsOf(near);
  });
  expect(Math.max(...inLots)).toBeLessThanOrEqual(64);
  expect(inLots.reduce((sum, n) => sum + n)).toBe(heap.length);
  const corners = (rings: readonly GridRing[]) => rings.reduce((sum, ring) => sum + ring.length, 0);
  expect(corners(less)).toBeLessThan(0.6 * corners(heap));
  const [once, first] = [regionsOf(heap), clipApart('union', heap, [], 'nonzero')];
  expect(first).toHaveLength(once.length);
  expect(first.map(({ holes }) => holes.length)).toEqual(once.map(({ holes }) => holes.length));
  // Where sides cross, corners go to the grid: by half a unit along a side of about 180.
  expect(Math.abs(areaOf(first) / areaOf(once) - 1)).toBeLessThan(1e-5);
});

test('what one ring takes back of another is no heap', () => {
  const none = () => {
    throw new Error('united by near');
  };
  const turned = heap.map((ring, i) => (i === 5 ? [...ring].reverse() : ring));
  expect(lessOfHeap(turned, none)).toBe(turned);
  const twice = heap.map((ring, i) => (i === 5 ? [...ring, ...ring] : ring));
  expect(lessOfHeap(twice, none)).toBe(twice);
  const few = heap.slice(0, 200);
  expect(lessOfHeap(few, none)).toBe(few);
});
