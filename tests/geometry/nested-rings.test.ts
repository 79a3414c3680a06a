// Which ring lies in which, where that is known because the rings were drawn so: squares and stars in one another, on the grid.
import { expect, test } from 'vitest';
import type { GridRegion, GridRing } from '../../src/geometry/grid-ring.ts';
import { regionsOfRings } from '../../src/geometry/nested-rings.ts';
import { RingsAround } from '../../src/geometry/rings-around.ts';
import { randomFrom } from './drawn.ts';

const reversed = (ring: GridRing): GridRing => [...ring].reverse();

/** A ring of many corners about a place, counter-clockwise; its corners lie between 0.8 of the radius and all of it. */
const ragged = (x: number, y: number, radius: number, corners: number, random: () => number): GridRing =>
  Array.from({ length: corners }, (_, i) => {
    const [r, a] = [radius * (0.8 + 0.2 * random()), (2 * Math.PI * i) / corners];
    return { x: Math.round(x + r * Math.cos(a)), y: Math.round(y + r * Math.sin(a)) };
  });

const square = (x: number, y: number, side: number): GridRing => [
  { x, y },
  { x: x + side, y },
  { x: x + side, y: y + side },
  { x, y: y + side },
];

/** Rings in rings, four to each, down to a depth; and the regions that they are. */
function family(depth: number, random: () => number): { rings: GridRing[]; regions: GridRegion[] } {
  const rings: GridRing[] = [];
  const regions: GridRegion[] = [];
  const draw = (x: number, y: number, radius: number, level: number): GridRing => {
    const ring = ragged(x, y, radius, 8 + Math.floor(100 * random()), random);
    const own = level % 2 === 0 ? ring : reversed(ring);
    rings.push(own);
    const inside =
      level === depth
        ? []
        : [0, 1, 2, 3].map((k) => {
            const [r, a] = [radius / 2.2, Math.PI * (k / 2 + 0.1)];
            return draw(x + r * Math.cos(a), y + r * Math.sin(a), radius / 5, level + 1);
          });
    if (level % 2 === 0) regions.push({ outer: own, holes: inside });
    return own;
  };
  for (const x of [0, 2.1e6]) draw(x, 0, 1e6, 0);
  return { rings, regions };
}

const shuffled = <T>(items: readonly T[], random: () => number): T[] =>
  items
    .map((item) => ({ item, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);

test('islands in holes in islands: every hole is in its own ring, in whatever order they come', () => {
  for (let seed = 1; seed <= 2; seed++) {
    const random = randomFrom(seed);
    const { rings, regions } = family(4, random);
    const got = regionsOfRings(shuffled(rings, random));
    const byOuter = new Map(got.map(({ outer, holes }) => [outer, new Set(holes)]));
    expect(got).toHaveLength(regions.length);
    for (const { outer, holes } of regions) {
      const found = byOuter.get(outer);
      expect([found?.size, holes.every((hole) => found?.has(hole))]).toEqual([holes.length, true]);
    }
  }
});

test('a hole in a bay of one ring, among the boxes of many, is in the ring around both', () => {
  const sheet = square(0, 0, 1000);
  const hole = reversed(square(100, 100, 800));
  // A C that stands in the hole; what lies in its bay lies in the hole too, not in it.
  const bay: GridRing = [
    { x: 200, y: 200 },
    { x: 800, y: 200 },
    { x: 800, y: 300 },
    { x: 300, y: 300 },
    { x: 300, y: 700 },
    { x: 800, y: 700 },
    { x: 800, y: 800 },
    { x: 200, y: 800 },
  ];
  const island = square(400, 400, 200);
  const eye = reversed(square(450, 450, 50));
  expect(regionsOfRings([eye, island, bay, hole, sheet])).toEqual([
    { outer: sheet, holes: [hole] },
    { outer: island, holes: [eye] },
    { outer: bay, holes: [] },
  ]);
});

test('rings that touch in corners and along sides are told apart by what they enclose', () => {
  const sheet = square(0, 0, 100);
  // From corner to corner of the sheet, and the island fills it from corner to corner again.
  const hole: GridRing = reversed([
    { x: 50, y: 0 },
    { x: 100, y: 50 },
    { x: 50, y: 100 },
    { x: 0, y: 50 },
  ]);
  const island = square(25, 25, 50);
  const beside = square(100, 0, 100);
  const eye = reversed(square(100, 25, 50));
  expect(regionsOfRings([island, hole, eye, beside, sheet])).toEqual([
    { outer: beside, holes: [eye] },
    { outer: sheet, holes: [hole] },
    { outer: island, holes: [] },
  ]);
});

test('of a ring of many sides only those on a level with a place are looked at', () => {
  let looked = 0;
  const ring = new Proxy(ragged(0, 0, 1e6, 20_000, randomFrom(3)), {
    get: (target, key) => {
      if (typeof key === 'string' && /^\d/.test(key)) looked++;
      return Reflect.get(target, key) as unknown;
    },
  });
  const around = new RingsAround([ring]);
  expect(around.turnsOf(0, { x: 0, y: 1 })).toBe(1);
  looked = 0;
  const random = randomFrom(4);
  const places = Array.from({ length: 500 }, () => ({ x: 2.4e6 * random() - 1.2e6, y: 1.6e6 * random() }));
  for (const place of places) {
    const from = Math.hypot(place.x, place.y);
    if (from < 0.79e6 || from > 1e6) expect(around.turnsOf(0, place)).toBe(from < 1e6 ? 1 : 0);
  }
  // Going through all of it for each would read twenty million corners.
  expect(looked).toBeLessThan(500 * 200);
});
