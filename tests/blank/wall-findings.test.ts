import { describe, expect, test } from 'vitest';
import { fitStraightWall } from '../../src/blank/straight-wall.ts';
import { wallFindings } from '../../src/blank/wall-findings.ts';
import { aBlank } from './a-blank.ts';

const findingsOf = (readings: readonly (readonly [height: number, girth: number])[], rest = {}) => {
  const blank = aBlank(
    readings.map(([height, girth]) => ({ height, girth })),
    rest,
  );
  return wallFindings(blank, fitStraightWall(blank));
};

describe('a fitted wall', () => {
  test('has nothing to tell when its readings suit it', () => {
    expect(
      findingsOf([
        [0, 200],
        [50, 210.4],
        [100, 219.7],
        [150, 230.2],
      ]),
    ).toEqual([]);
    expect(
      findingsOf([
        [0, 200],
        [150, 260],
      ]),
    ).toEqual([]);
  });

  // With three stations evenly spaced and b too much in the middle, least squares leaves 2b/3 there, and of a reading's
  // own doubt u it leaves u √(2/3): b is over three times as much from 3 √(3/2) u = 3.674 u on.
  test.each([
    [3.6 * 0.5, false],
    [3.75 * 0.5, true],
  ])("needs the maker's eye from three standard uncertainties of the residual on: %d mm", (bulge, isLook) => {
    const found = findingsOf([
      [0, 200],
      [50, 210 + bulge],
      [100, 220],
    ]);
    expect(found.map(({ rule }) => rule)).toEqual(isLook ? ['wall-unsuited'] : []);
  });

  test('names the station, how far it is off and how much would pass', () => {
    const [found] = findingsOf([
      [0, 200],
      [50, 216],
      [100, 220],
    ]);
    expect(found).toMatchObject({ level: 'look', where: { along: expect.closeTo(50.025, 2) } });
    expect(found?.where.key).toMatch(/^stations\[[012]\]\.girth$/);
    // b = 6: 2b/3 = 4 in the middle, b/3 = 2 less at the ends; u √(2/3) = 0.408, u √(1/6) = 0.204.
    expect(found?.says).toContain('4 mm more girth');
    expect(found?.says).toContain('0.408 mm');
  });

  test('says that a wall with one edge is stepped', () => {
    expect(
      findingsOf([
        [0, 250],
        [60, 250],
        [100, 250],
        [140, 200],
      ])[0]?.says,
    ).toContain('a "stepped" wall would suit');
  });

  test('says that a wall bent everywhere is smooth', () => {
    const barrel = [0, 30, 60, 90, 120].map((h) => [h, 250 - ((h - 60) / 10) ** 2] as const);
    expect(findingsOf(barrel)[0]?.says).toContain('a "smooth" wall would suit');
  });

  test('does not choose between the two when three stations cannot tell', () => {
    expect(
      findingsOf([
        [0, 200],
        [50, 216],
        [100, 220],
      ])[0]?.says,
    ).toMatch(/"stepped".*"smooth".*another station/);
  });

  test('notes that the foot was not read, and how sure its girth is', () => {
    const [found] = findingsOf([
      [20, 200],
      [120, 200],
    ]);
    // Line through two readings of 0.5 mm, 20 mm before the first of them 100 mm apart: 0.5 √(1.2² + 0.2²) = 0.608.
    expect(found).toMatchObject({
      rule: 'foot-unread',
      level: 'note',
      where: { key: 'stations[0].height', along: 20 },
    });
    expect(found?.says).toContain('20 mm up the wall');
    expect(found?.says).toContain('0.608 mm');
  });
});
