// Polygons combined set by set against Clipper 6 (clipper-lib, BSL-1.0), which takes all at once. Rings lie in one another,
// side by side and across one another, running either way.
import { expect, test } from 'vitest';
import { clipApart } from '../../src/geometry/clip-apart.ts';
import type { GridRegion, GridRing } from '../../src/geometry/grid-ring.ts';
import type { ClipOperation, Fill } from '../../src/geometry/polygon-clip.ts';
import { setsApart } from '../../src/geometry/rings-apart.ts';
import { isPlainlySimple } from '../../src/geometry/simple-ring.ts';
import { expectWithin } from '../closeness.ts';
import { randomFrom } from './drawn.ts';
import { clipperArea } from './libraries.ts';

const units = 1e5;
const onGrid = (x: number, y: number) => ({ x: Math.round(units * x), y: Math.round(units * y) });

/** A star with `points` points, or a circle of chords where its two radii are one. */
function star(x: number, y: number, outer: number, inner: number, points: number, turned = 0): GridRing {
  return Array.from({ length: 2 * points }, (_, i) => {
    const r = i % 2 === 0 ? outer : inner;
    const a = turned + (i * Math.PI) / points;
    return onGrid(x + r * Math.cos(a), y + r * Math.sin(a));
  });
}

const reversed = (ring: GridRing): GridRing => [...ring].reverse();

const twiceArea = (ring: GridRing): number =>
  ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return sum + p.x * q.y - p.y * q.x;
  }, 0);

/** mm², holes counting as they run: clockwise ones against their region. */
const areaOf = (regions: readonly GridRegion[]): number =>
  regions.reduce(
    (sum, { outer, holes }) => sum + [outer, ...holes].reduce((own, ring) => own + twiceArea(ring), 0) / 2,
    0,
  ) /
  units ** 2;

const inMm = (rings: readonly GridRing[]) =>
  rings.map((ring) => ring.map(({ x, y }) => ({ x: x / units, y: y / units })));

/** Nests of rings in rings on a chequer, some of them leaning on their neighbours, and a large one around it all. */
function heap(seed: number): GridRing[] {
  const random = randomFrom(seed);
  const either = (ring: GridRing): GridRing => (random() < 0.5 ? ring : reversed(ring));
  const nests = Array.from({ length: 12 }, (_, i) => {
    const [x, y] = [20 * (i % 4) + 6 * random(), 20 * Math.floor(i / 4) + 6 * random()];
    const depth = 1 + Math.floor(4 * random());
    return Array.from({ length: depth }, (_, k) => {
      const r = (7 + 5 * random()) / (1 + k);
      return either(star(x, y, r, r * (0.5 + 0.5 * random()), 5 + Math.floor(8 * random()), 6 * random()));
    });
  });
  return [either(star(30, 20, 90, 80, 9)), ...nests.flat()];
}

const operations: readonly ClipOperation[] = ['union', 'intersection', 'difference'];
const fills: readonly ('nonzero' | 'evenodd')[] = ['nonzero', 'evenodd'];
const cases = operations.flatMap((operation) => fills.map((fill) => ({ operation, fill })));

test.each(cases)(
  '$operation by $fill of nests of rings has the area that Clipper 6 finds',
  ({ operation, fill }) => {
    for (let seed = 1; seed <= 8; seed++) {
      const [subject, clip] = [heap(seed), heap(1000 + seed)];
      for (const other of [clip, [star(30, 20, 60, 60, 40)], []]) {
        const got = areaOf(clipApart(operation, subject, other, fill));
        const wanted = clipperArea(operation, inMm(subject), inMm(other), fill);
        expectWithin(got, wanted, 1e-3, `area, seed ${seed}, ${other.length} to clip by`);
      }
    }
  },
);

test('a heap falls into sets, and no ring is in two', () => {
  const rings = heap(7);
  const sets = setsApart(rings);
  expect(sets.length).toBeGreaterThan(3);
  expect(sets.flat().sort((a, b) => a - b)).toEqual(rings.map((_, i) => i));
});

test('rings that touch in a corner or along a side are one set, and one that lies in another is a set of its own', () => {
  const square = (x: number, y: number, side: number): GridRing => [
    onGrid(x, y),
    onGrid(x + side, y),
    onGrid(x + side, y + side),
    onGrid(x, y + side),
  ];
  const apart = [square(50, 50, 10), square(53, 53, 4)];
  const touching = [square(0, 0, 10), square(10, 10, 5), square(10, 0, 5), square(-5, 3, 5)];
  expect(setsApart([...touching, ...apart])).toEqual([[0, 1, 2, 3], [4], [5]]);
});

test('a large ring with motifs in it: each is a hole in what is left of it, islands and all', () => {
  const sheet = star(0, 0, 100, 100, 60);
  const motifs = [star(-40, 0, 10, 5, 7), star(40, 0, 10, 10, 20), reversed(star(40, 0, 4, 4, 9))];
  const regions = clipApart('difference', [sheet], motifs, 'nonzero');
  expect(regions.map(({ holes }) => holes.length)).toEqual([2, 0]);
  expectWithin(areaOf(regions), clipperArea('difference', inMm([sheet]), inMm(motifs), 'nonzero'), 0.001);
});

test.each<[string, GridRing, boolean]>([
  ['a circle', star(0, 0, 10, 10, 20), true],
  ['a slanting needle', star(0, 0, 10, 0.4, 2, 0.7), true],
  [
    'an arch, which goes up twice',
    [onGrid(0, 0), onGrid(1, 0), onGrid(5, 8), onGrid(9, 0), onGrid(10, 0), onGrid(5, 12)],
    true,
  ],
  ['a star, which goes neither way', star(0, 0, 10, 3, 9), true],
  ['a star of more sides than are held against each other', star(0, 0, 10, 3, 200), false],
  ['a bow tie', [onGrid(0, 0), onGrid(10, 10), onGrid(10, 0), onGrid(0, 10)], false],
  [
    'sides that touch',
    [onGrid(0, 0), onGrid(5, 5), onGrid(10, 0), onGrid(10, 10), onGrid(5, 5), onGrid(0, 10)],
    false,
  ],
  [
    'a spike that goes back on itself',
    [onGrid(0, 0), onGrid(10, 0), onGrid(20, 0), onGrid(10, 0), onGrid(10, 10)],
    false,
  ],
])('%s is plainly simple: %s', (_, ring, wanted) => {
  expect(isPlainlySimple(ring)).toBe(wanted);
  expect(isPlainlySimple(reversed(ring))).toBe(wanted);
});

const fillOfAll: Fill = 'positive';
test('by the positive rule a ring that runs clockwise around others takes one from them', () => {
  const [around, twice, once] = [
    reversed(star(0, 0, 50, 50, 30)),
    star(-20, 0, 10, 10, 20),
    star(20, 0, 10, 10, 20),
  ];
  const regions = clipApart('union', [around, twice, [...twice], once], [], fillOfAll);
  expectWithin(areaOf(regions), twiceArea(twice) / 2 / units ** 2, 1e-9);
});
