import { describe, expect, test } from 'vitest';
import { curvedFindings, curvedUncertaintyAt, fitCurvedWall } from '../../src/blank/curved-wall.ts';
import {
  alongOfHeight,
  type ProfileReading,
  profileAt,
  smoothProfile,
  steppedProfile,
} from '../../src/blank/profile.ts';
import { expectWithin, expectWithinPart } from '../closeness.ts';
import { aBlank, refusalsOf } from './a-blank.ts';
import { normal, uniform } from './random.ts';

type Given = { readonly height?: number; readonly along?: number; readonly across?: number; girth?: number };

const bowl: readonly Given[] = [
  { height: 0, across: 50 },
  { height: 20, across: 74 },
  { height: 50, across: 88 },
  { height: 80, across: 80 },
];

const byHeight = (at: number) => ({ kind: 'height' as const, at });

const kinds = ['stepped', 'smooth'] as const;

describe.each(kinds)('a %s wall', (kind) => {
  test('passes through its stations, a girth less what the tape added', () => {
    const [, second, ...rest] = bowl;
    const taped = [...bowl.slice(0, 1), { height: 20, girth: Math.PI * 74.4 }, ...rest];
    const { profile } = fitCurvedWall(aBlank(taped, { tape: 0.4 }), kind);
    expect(second?.across).toBe(74);
    for (const { height = 0, across = 0 } of bowl)
      expectWithin(profileAt(profile, alongOfHeight(profile, height)).radius, across / 2, 1e-9);
  });

  const refused = (given: readonly Given[]) =>
    refusalsOf(() => fitCurvedWall(aBlank(given), kind)).map(({ rule, where, says }) => ({
      rule,
      key: where.key,
      says,
    }));

  test('refuses stations by height and by along together, and says to give all by one', () => {
    const [only] = refused([
      { height: 0, across: 60 },
      { along: 50, across: 70 },
      { along: 90, across: 75 },
    ]);
    expect(only).toMatchObject({ rule: 'mixed-stations', key: 'stations[1].along' });
    expect(only?.says).toContain('give all stations by one of the two');
  });

  test('refuses a wall that gets wider, or narrower, than it is long', () => {
    for (const across of [102, 18]) {
      const [only] = refused([
        { along: 0, across: 60 },
        { along: 20, across },
      ]);
      expect(only).toMatchObject({ rule: 'overhangs', key: 'stations[1].along' });
      expect(only?.says).toContain('read it again');
    }
  });

  test('names every wrong station at once', () => {
    const rules = refused([
      { along: 0, across: 60 },
      { along: 20, across: 110 },
      { height: 40, across: 110 },
    ]).map(({ rule, key }) => [rule, key]);
    expect(rules).toEqual([
      ['overhangs', 'stations[1].along'],
      ['mixed-stations', 'stations[2].height'],
    ]);
  });

  test('refuses one that would close below its lowest station', () => {
    const [only] = refused([
      { height: 30, across: 10 },
      { height: 50, across: 60 },
      { height: 80, across: 65 },
    ]);
    expect(only).toMatchObject({ rule: 'meets-axis', key: 'stations' });
    expect(only?.says).toContain('add a station there');
  });

  test('refuses too few stations and stations upside down by the rules of every wall', () => {
    expect(refused([{ height: 0, across: 60 }])[0]?.rule).toBe('few-stations');
    expect(
      refused([
        { height: 50, across: 60 },
        { height: 0, across: 60 },
      ])[0]?.rule,
    ).toBe('upside-down');
  });

  test('says that it goes on straight below a lowest station above the foot', () => {
    const blank = aBlank(bowl.map((given) => ({ ...given, height: (given.height ?? 0) + 8 })));
    const [only, ...more] = curvedFindings(blank);
    expect(more).toEqual([]);
    expect(only).toMatchObject({ rule: 'foot-unread', level: 'note', where: { key: 'stations[0].height' } });
    expect(only?.says).toContain('8 mm up');
    const read = aBlank(bowl);
    expect(curvedFindings(read)).toEqual([]);
  });

  // JCGM 101:2008, Monte Carlo: 2000 draws give a standard deviation to 1.6 %; 7 % is over four times that. The bowl
  // leans up to 40 degrees: a wrong radius moves the place up the wall as well. Without that it is 20 % off at the foot.
  test.each([
    ['by height from the foot', bowl, [0, 10, 40, 80]],
    [
      'by height from above the foot',
      bowl.map((g) => ({ ...g, height: (g.height ?? 0) + 8 })),
      [0, 8, 30, 85],
    ],
    [
      'by along',
      [
        { along: 0, across: 50 },
        { along: 25, across: 74 },
        { along: 55, girth: 276 },
        { along: 90, across: 80 },
      ],
      [0, 12, 40, 90],
    ],
  ] as const)('read %s is as sure as 2000 noisy readings of it are alike', (_, given, alongs) => {
    const readings: readonly Given[] = given;
    const reading = 0.3;
    const wall = fitCurvedWall(aBlank(readings, { reading }), kind);
    const draw = normal(uniform(11));
    const through = kind === 'stepped' ? steppedProfile : smoothProfile;
    const girths = alongs.map((): number[] => []);
    for (let i = 0; i < 2000; i++) {
      const profile = through(
        readings.map(({ height, along = 0, across, girth = 0 }): ProfileReading => {
          const place = height === undefined ? { kind: 'along' as const, at: along } : byHeight(height);
          const off = reading * draw();
          return {
            ...place,
            radius: across === undefined ? (girth + off) / (2 * Math.PI) : (across + off) / 2,
          };
        }),
      );
      for (const [k, along] of alongs.entries())
        girths[k]?.push(2 * Math.PI * profileAt(profile, along).radius);
    }
    alongs.forEach((along, k) => {
      const all = girths[k] ?? [];
      const mean = all.reduce((a, b) => a + b, 0) / all.length;
      const spread = Math.sqrt(all.reduce((a, b) => a + (b - mean) ** 2, 0) / (all.length - 1));
      expectWithinPart(curvedUncertaintyAt(wall, along), spread, 0.07, `at ${along} mm`);
    });
  });
});

describe('a smooth wall read along itself', () => {
  test('is refused where its curve turns steeper than level between stations that could be a wall', () => {
    const given = [
      { along: 0, across: 40 },
      { along: 10, across: 58 },
      { along: 20, across: 40 },
      { along: 30, across: 58 },
    ];
    const [only] = refusalsOf(() => fitCurvedWall(aBlank(given), 'smooth'));
    expect(only).toMatchObject({ rule: 'overhangs', where: { key: 'stations', along: 0 } });
    expect(only?.says).toContain('steeper than level');
    expect(() => fitCurvedWall(aBlank(given), 'stepped')).not.toThrow();
  });

  test('is refused where its curve dips to the axis between stations', () => {
    const given = [
      { height: 0, across: 80 },
      { height: 20, across: 10 },
      { height: 60, across: 10 },
      { height: 80, across: 80 },
    ];
    const [only] = refusalsOf(() => fitCurvedWall(aBlank(given), 'smooth'));
    expect(only).toMatchObject({ rule: 'meets-axis', where: { key: 'stations' } });
    expect(() => fitCurvedWall(aBlank(given), 'stepped')).not.toThrow();
  });
});
