import { describe, expect, test } from 'vitest';
import type { Blank, Station } from '../../src/blank/blank.ts';
import { placesOutOfRound } from '../../src/blank/reading-findings.ts';
import { fitStraightWall, girthUncertaintyAt } from '../../src/blank/straight-wall.ts';
import { wallFindings } from '../../src/blank/wall-findings.ts';
import { expectWithin } from '../closeness.ts';
import { aBlank, refusalsOf } from './a-blank.ts';

const across = (height: number, ...diameters: number[]): Station => ({
  position: { kind: 'height', mm: height },
  reading: {
    kind: 'across',
    mm: diameters.reduce((a, b) => a + b, 0) / diameters.length,
    ...(diameters.length > 1 ? { diameters } : {}),
  },
});
const blankOf = (stations: readonly Station[], rest: Partial<Blank> = {}): Blank => ({
  ...aBlank([]),
  ...rest,
  stations,
});
const found = (blank: Blank) => wallFindings(blank, fitStraightWall(blank));

describe('a place that is out of round', () => {
  test('counts as doubt of its girth: the readings over the root of their number, and half the difference over √3', () => {
    const wall = fitStraightWall(blankOf([across(0, 62.4, 61.2), across(100, 70)]));
    // JCGM 100:2008, 4.3.7: limits of ± 0.6 mm, u = 0.6/√3; two readings of 0.5 mm, u = 0.5/√2; pi times around.
    expectWithin(
      girthUncertaintyAt(wall, 0),
      Math.PI * Math.hypot(0.5 / Math.SQRT2, 0.6 / Math.sqrt(3)),
      1e-9,
    );
    expectWithin(wall.radius, 30.9, 1e-9);
  });

  // Ramanujan's second formula for the girth of an ellipse (1914; from memory), good to a part in 10^9 here.
  test('holds the true girth of an ellipse whatever the two ways it was read, within that doubt', () => {
    const [a, b] = [32, 30.5];
    const h = ((a - b) / (a + b)) ** 2;
    const girth = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    for (const turned of [0, 0.3, 0.6, Math.PI / 4]) {
      const width = (angle: number) => 2 * Math.hypot(a * Math.cos(angle), b * Math.sin(angle));
      const wall = fitStraightWall(
        blankOf([across(0, width(turned), width(turned + Math.PI / 2)), across(100, 70)]),
      );
      expectWithin(2 * Math.PI * wall.radius, girth, 2 * girthUncertaintyAt(wall, 0));
    }
  });

  test('is said, and is for the eye when reading alone does not explain it', () => {
    // Two readings of 0.5 mm differ by less than 2 √2 0.5 = 1.414 mm 19 times in 20.
    expect(
      found(blankOf([across(0, 62.7, 61.3), across(100, 70)])).map(({ rule, level }) => [rule, level]),
    ).toEqual([['out-of-round', 'note']]);
    const [said] = found(blankOf([across(0, 62.8, 61.3), across(100, 70)]));
    expect(said).toMatchObject({ rule: 'out-of-round', level: 'look', where: { key: 'stations[0].across' } });
    expect(said?.says).toContain('0.75 mm either way of their mean, 62.05 mm');
  });

  test('is said too when its diameters were typed as two stations', () => {
    const blank = blankOf([across(0, 62.4), across(0, 61.2), across(100, 70)]);
    expect(placesOutOfRound(blank)).toEqual([
      { key: 'stations[0].across', diameters: [62.4, 61.2], outOfRound: expect.closeTo(0.6, 12) },
    ]);
    expect(found(blank).map(({ rule }) => rule)).toEqual(['out-of-round']);
  });

  test('is not said of one diameter, nor of two that are the same', () => {
    expect(found(blankOf([across(0, 62), across(100, 70, 70)]))).toEqual([]);
  });
});

describe('sizes that are asked about', () => {
  test.each([
    [12.7, 'odd-size'],
    [12.8, undefined],
    [636, undefined],
    [637, 'odd-size'],
    [1911, 'odd-size'],
  ])('a cup %d mm across', (size, rule) => {
    const rules = found(blankOf([across(0, size), across(100, size)])).map((f) => [f.rule, f.level]);
    expect(rules).toEqual(
      rule === undefined
        ? []
        : [
            [rule, 'look'],
            [rule, 'look'],
          ],
    );
  });
});

describe('readings of one place that cannot be one vessel', () => {
  const rules = (blank: Blank) =>
    refusalsOf(() => fitStraightWall(blank)).map(({ rule, where }) => [rule, where.key]);

  test('a girth and a diameter mixed up', () => {
    const blank = aBlank([
      { height: 0, across: 62 },
      { height: 0, girth: 62 },
      { height: 100, across: 70 },
    ]);
    expect(rules(blank)).toEqual([['not-one-vessel', 'stations[1].girth']]);
  });

  test('two diameters half as much again', () => {
    expect(rules(blankOf([across(0, 62, 95), across(100, 70)]))).toEqual([
      ['not-one-vessel', 'stations[0].across'],
    ]);
  });

  test('a height longer than the wall up to it, beyond what reading both explains', () => {
    const place = (mm: number, along: number): Station => ({
      position: { kind: 'height', mm, along },
      reading: { kind: 'across', mm: 70 },
    });
    expect(rules(blankOf([across(0, 62), place(110, 100)]))).toEqual([
      ['height-over-along', 'stations[1].height'],
    ]);
    expect(fitStraightWall(blankOf([across(0, 62), place(100.5, 100)])).length).toBeGreaterThan(100);
  });
});
