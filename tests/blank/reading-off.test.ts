import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Blank, Station } from '../../src/blank/blank.ts';
import { readingOff, suspectKeys } from '../../src/blank/reading-off.ts';
import { fitStraightWall } from '../../src/blank/straight-wall.ts';
import { wallFindings } from '../../src/blank/wall-findings.ts';
import { expectWithin } from '../closeness.ts';
import { aBlank } from './a-blank.ts';

const told = (blank: Blank) => {
  const wall = fitStraightWall(blank);
  return {
    off: readingOff(blank, wall),
    rules: wallFindings(blank, wall).map(({ rule, where }) => [rule, where.key]),
  };
};

/** A cup of exact readings, girth 200 at the foot and 0.4 more a mm of height. */
const exact = (heights: readonly number[]) =>
  heights.map((height) => ({ height, girth: 200 + 0.4 * height }));

const withGirth = (heights: readonly number[], index: number, more: number): Blank =>
  aBlank(exact(heights).map((s, i) => ({ ...s, girth: s.girth + (i === index ? more : 0) })));

describe('the one reading that cannot be right', () => {
  test.each([0, 1, 2, 3, 4])('is named with what it should have been: station %d of five', (index) => {
    const heights = [0, 35, 70, 105, 140];
    const { off, rules } = told(withGirth(heights, index, 6));
    expect(off?.key).toBe(`stations[${index}].girth`);
    // The others are exact: what they say is the truth, 200 + 0.4 a mm.
    expectWithin(off?.shouldBe ?? 0, 200 + 0.4 * (heights[index] ?? 0), 1e-6);
    expect(off?.read).toBe(206 + 0.4 * (heights[index] ?? 0));
    expect(rules).toEqual([['reading-off', `stations[${index}].girth`]]);
  });

  test('is told in the terms it was read in: a diameter', () => {
    const blank = aBlank([
      { height: 0, girth: 200 },
      { height: 50, across: 220 / Math.PI },
      { height: 100, across: 240 / Math.PI + 4 },
      { height: 150, girth: 260 },
      { height: 180, girth: 272 },
    ]);
    const { off } = told(blank);
    expect(off).toMatchObject({ key: 'stations[2].across', kind: 'across' });
    expectWithin(off?.shouldBe ?? 0, 240 / Math.PI, 1e-6);
  });

  test('and a girth by what the tape would have shown, its thickness in it', () => {
    const blank = { ...withGirth([0, 35, 70, 105, 140], 3, 6), tape: 0.3 };
    expectWithin(told(blank).off?.shouldBe ?? 0, 242, 1e-6);
  });

  test('is found in 200 random cups read with noise, wherever it was slipped by ten readings', () => {
    const cups = fc.record({
      index: fc.integer({ min: 0, max: 5 }),
      sign: fc.constantFrom(-1, 1),
      noise: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 }),
    });
    fc.assert(
      fc.property(cups, ({ index, sign, noise }) => {
        const heights = [0, 30, 60, 90, 120, 150];
        const blank = withGirth(heights, index, sign * 5);
        const stations = blank.stations.map((s, i) => ({
          ...s,
          reading: { ...s.reading, mm: s.reading.mm + 0.4 * (noise[i] ?? 0) },
        }));
        const { off } = told({ ...blank, stations });
        expect(off?.key).toBe(`stations[${index}].girth`);
        expectWithin(off?.shouldBe ?? 0, 200 + 0.4 * (heights[index] ?? 0), 3 * (off?.uncertainty ?? 0));
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  test('is not named where three stations cannot tell: any of them may be to blame', () => {
    const blank = withGirth([0, 70, 140], 1, 6);
    const { off, rules } = told(blank);
    expect(off).toBeUndefined();
    expect(rules.map(([rule]) => rule)).toEqual(['wall-unsuited']);
    expect([...suspectKeys(blank, fitStraightWall(blank))].sort()).toEqual(
      [0, 1, 2].map((i) => `stations[${i}].girth`),
    );
  });

  test('is not named on a wall that bends everywhere', () => {
    const barrel = aBlank(
      [0, 30, 60, 90, 120].map((height) => ({ height, girth: 250 - ((height - 60) / 10) ** 2 })),
    );
    expect(told(barrel).off).toBeUndefined();
  });

  test('is nobody where all readings agree', () => {
    expect(told(aBlank(exact([0, 50, 100, 150])))).toEqual({ off: undefined, rules: [] });
  });
});

describe('a height and a length along the wall of one place', () => {
  const place = (mm: number, along: number, girth: number): Station => ({
    position: { kind: 'height', mm, along },
    reading: { kind: 'girth', mm: girth },
  });
  const steep = (along: number): Blank => ({
    ...aBlank([{ height: 0, girth: 200 }]),
    stations: [
      { position: { kind: 'height', mm: 0 }, reading: { kind: 'girth', mm: 200 } },
      { position: { kind: 'height', mm: 40 }, reading: { kind: 'girth', mm: 200 + 2 * Math.PI * 24 } },
      { position: { kind: 'height', mm: 60 }, reading: { kind: 'girth', mm: 200 + 2 * Math.PI * 36 } },
      place(80, along, 200 + 2 * Math.PI * 48),
    ],
  });

  // tan a = 0.6: the wall is 80 √(1 + 0.36) = 93.295 long where it is 80 high.
  test('agree with the sizes on a cone', () => {
    const wall = fitStraightWall(steep(80 * Math.hypot(1, 0.6)));
    expectWithin(Math.tan(wall.halfAngle), 0.6, 1e-9);
    expectWithin(wall.length, 80 * Math.hypot(1, 0.6), 1e-9);
  });

  test('are told by the sizes which along it should have been', () => {
    const { off } = told(steep(104));
    expect(off).toMatchObject({ key: 'stations[3].along', kind: 'along', read: 104 });
    expectWithin(off?.shouldBe ?? 0, 93.295, 0.05);
  });

  test('and which height', () => {
    const blank = steep(80 * Math.hypot(1, 0.6));
    const stations = blank.stations.map((s, i) =>
      i === 3 ? place(71, 80 * Math.hypot(1, 0.6), s.reading.mm) : s,
    );
    const { off } = told({ ...blank, stations });
    expect(off).toMatchObject({ key: 'stations[3].height', kind: 'height', read: 71 });
    expectWithin(off?.shouldBe ?? 0, 80, 0.05);
  });

  test('pull the lean, by their variances, where the sizes leave it open', () => {
    // Two diameters, each sure to 4 mm, on 80 mm: the lean is only sure to 4 degrees; the slant, read to 0.5, tells more.
    const loose: Blank = {
      ...steep(95),
      reading: 8,
      stations: [
        { position: { kind: 'height', mm: 0 }, reading: { kind: 'across', mm: 64 } },
        { ...place(80, 95, 0), reading: { kind: 'across', mm: 64 + 2 * 48 } },
      ],
    };
    const lean = fitStraightWall(loose).halfAngle;
    expectWithin(lean, Math.acos(80 / 95), 0.015);
    expect(lean).toBeLessThan(Math.acos(80 / 95));
    expect(lean).toBeGreaterThan(Math.atan(0.6));
  });
});
