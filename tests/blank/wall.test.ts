import { describe, expect, test } from 'vitest';
import { alongOfHeight } from '../../src/blank/profile.ts';
import {
  closePlaces,
  flatBandsOfWall,
  longestBand,
  meanLean,
  roundLimits,
  type Wall,
  wallAt,
  wallForm,
  wallGirthAt,
  wallLength,
  wallOf,
  wallUncertaintyAt,
  wallWithin,
} from '../../src/blank/wall.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';
import { aBlank, refusalsOf } from './a-blank.ts';

const straight = [
  { height: 0, across: 62 },
  { height: 60, across: 70 },
  { height: 150, across: 82 },
];
const stepped = [
  { height: 0, across: 62 },
  { height: 60, across: 66 },
  { height: 72, across: 76 },
  { height: 150, across: 86 },
];

const wallBy = (stations: typeof straight, rest: Parameters<typeof aBlank>[1] = {}): Wall =>
  wallOf(aBlank(stations, rest)).wall;

describe('a straight wall read as stepped or smooth', () => {
  const walls = (['straight', 'stepped', 'smooth'] as const).map((wall) => wallBy(straight, { wall }));

  test('is the same wall', () => {
    const [first, ...others] = walls;
    for (const other of others)
      for (const along of [0, 20, 75, 150]) {
        if (!first) continue;
        const [a, b] = [wallAt(first, along), wallAt(other, along)];
        expectWithin(b.radius, a.radius, 1e-9);
        expectWithin(b.height, a.height, 1e-9);
        expectWithin(b.lean, a.lean, 1e-9);
        expectWithin(wallLength(other), wallLength(first), 1e-9);
        expectWithin(meanLean(other), meanLean(first), 1e-9);
        expectWithin(wallGirthAt(other, along), wallGirthAt(first, along), 1e-8);
      }
  });

  test('is flat between its rounds, of whichever kind it is', () => {
    const rounds = { footRound: 6, lipRound: 1.5, flatGap: 0.15 };
    const bands = walls.map((wall) => flatBandsOfWall(wall, rounds));
    const [first] = bands[0] ?? [];
    for (const found of bands) {
      expect(found).toHaveLength(1);
      expectWithin(found[0]?.from ?? Number.NaN, first?.from ?? 0, 1e-9);
      expectWithin(found[0]?.to ?? Number.NaN, first?.to ?? 0, 1e-9);
    }
  });

  test('keeps the name of what it was read as', () => {
    expect(walls.map(wallForm)).toEqual(['frustum', 'stepped', 'curved']);
    expect(wallForm(wallBy(straight.map((s) => ({ ...s, across: 70 }))))).toBe('cylinder');
  });

  test('is less sure of a place between stations where nothing else holds it', () => {
    const [fitted, through] = walls;
    if (!fitted || !through) throw new Error('no walls');
    expectWithin(wallUncertaintyAt(through, 0), Math.PI * 0.5, 2e-2);
    expectAtMost(wallUncertaintyAt(fitted, 75), wallUncertaintyAt(through, 75));
  });
});

describe('a stepped cup', () => {
  const wall = wallBy(stepped, { wall: 'stepped' });
  const corners =
    wall.kind === 'curved'
      ? [0, 60, 72, 150].map((height) => alongOfHeight(wall.curved.profile, height))
      : [];

  test('has a band to each step, ending at its corners, not past them', () => {
    const bands = flatBandsOfWall(wall, { footRound: 0, lipRound: 0, flatGap: 0.15 });
    expect(bands).toHaveLength(3);
    bands.forEach((band, i) => {
      expectWithin(band.from, corners[i] ?? Number.NaN, 1e-9);
      expectWithin(band.to, corners[i + 1] ?? Number.NaN, 1e-9);
    });
    const longest = longestBand(bands);
    expect(longest).toBe(bands[2]);
  });

  test('leans at the foot of a band as the stretch that the band is on, not as the one below its corner', () => {
    const [, , corner = 0] = corners;
    const above = Math.atan2(5, 78);
    for (const from of [corner, corner - 0.01, corner + 0.01])
      expectWithin(wallWithin(wall, from, { from }).lean, above, 1e-9);
    expectWithin(wallWithin(wall, corner, { from: 10 }).lean, Math.atan2(5, 12), 1e-9);
  });

  test('has all its corners among the places looked at', () => {
    const places = closePlaces(wall, { from: 3, to: 140 });
    for (const corner of corners.slice(1, 3))
      expect(places.some((p) => Math.abs(p - corner) < 1e-12)).toBe(true);
    expect([places[0], places.at(-1)]).toEqual([3, 140]);
    places.slice(1).forEach((place, i) => {
      expectAtMost(place - (places[i] ?? 0), 0.25 + 1e-9);
    });
  });

  // The tangent point of a round q in a corner of angle w is q / tan(w/2) from it (flat-band.test.ts, plane geometry).
  test('has its outer bands ended by its rounds, each on the lean of its own end', () => {
    const [foot, lip] = [Math.atan2(2, 60), Math.atan2(5, 78)];
    const limits = roundLimits(wall, { footRound: 6, lipRound: 2 });
    expectWithin(limits.from, 6 / Math.tan((Math.PI / 2 + foot) / 2), 1e-9);
    expectWithin(wallLength(wall) - limits.to, 2 / Math.tan((Math.PI / 2 - lip) / 2), 1e-9);
    const bands = flatBandsOfWall(wall, { footRound: 6, lipRound: 2, flatGap: 0.15 });
    expect([bands[0]?.from, bands.at(-1)?.to]).toEqual([limits.from, limits.to]);
  });

  // The circle is found by the plane alone: its centre over the foot's plane by its radius, moved in until the nearest of
  // many points of the wall is as far; no leans, no tangents.
  test.each([
    {
      wall: 'stepped',
      stations: [
        [0, 60],
        [3, 66],
        [100, 66],
      ],
      footRound: 15,
      lipRound: 0,
    },
    {
      wall: 'smooth',
      stations: [
        [0, 30],
        [15, 62],
        [35, 80],
        [60, 82],
        [90, 70],
      ],
      footRound: 20,
      lipRound: 0,
    },
    {
      wall: 'stepped',
      stations: [
        [0, 60],
        [95, 70],
        [100, 80],
      ],
      footRound: 0,
      lipRound: 8,
    },
    {
      wall: 'stepped',
      stations: [
        [0, 160],
        [40, 160],
        [44, 172],
        [100, 176],
      ],
      footRound: 50,
      lipRound: 0,
    },
  ] as const)(
    'ends where a circle in its corner touches it, whatever stretch that is on: $wall $stations',
    (vessel) => {
      const { footRound, lipRound } = vessel;
      const stations = vessel.stations.map(([height, across]) => ({ height, across }));
      const bent = wallBy(stations, { wall: vessel.wall });
      const length = wallLength(bent);
      const height = wallAt(bent, length).height;
      const outline = Array.from({ length: 20_001 }, (_, i) => {
        const along = (length * i) / 20_000;
        return { along, ...wallAt(bent, along) };
      });
      const nearest = (x: number, y: number) =>
        outline.reduce((best, place) =>
          Math.hypot(place.radius - x, place.height - y) < Math.hypot(best.radius - x, best.height - y)
            ? place
            : best,
        );
      const touching = (round: number, y: number) => {
        let [inner, outer] = [0, 90];
        for (let i = 0; i < 40; i++) {
          const x = (inner + outer) / 2;
          const { radius, height: h } = nearest(x, y);
          if (Math.hypot(radius - x, h - y) > round && x < radius) inner = x;
          else outer = x;
        }
        return nearest(inner, y).along;
      };
      const limits = roundLimits(bent, { footRound, lipRound });
      if (footRound > 0) expectWithin(limits.from, touching(footRound, footRound), 0.02);
      if (lipRound > 0) expectWithin(limits.to, touching(lipRound, height - lipRound), 0.02);
    },
  );

  test('is refused rounds that leave nothing of it', () => {
    const short = wallBy(
      [
        { height: 0, across: 62 },
        { height: 15, across: 66 },
        { height: 18, across: 66.5 },
      ],
      { wall: 'stepped' },
    );
    const rules = refusalsOf(() => flatBandsOfWall(short, { footRound: 26, lipRound: 0.5, flatGap: 0.15 }));
    expect(rules.map(({ rule, where }) => [rule, where.key])).toEqual([['round-too-large', 'footRound']]);
  });
});

test('a wall without bands has no longest one', () => {
  expect(longestBand([])).toBeUndefined();
  expect(
    longestBand([
      { from: 0, to: 5 },
      { from: 6, to: 11 },
    ]),
  ).toEqual({ from: 0, to: 5 });
});

test('a wall is fitted once, however many pieces of it ask', () => {
  const blank = aBlank(stepped, { wall: 'smooth' });
  expect(wallOf(blank)).toBe(wallOf(blank));
});
