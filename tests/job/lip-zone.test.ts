import { describe, expect, test } from 'vitest';
import type { Blank } from '../../src/blank/blank.ts';
import type { Finding } from '../../src/finding.ts';
import { barePlaces } from '../../src/job/plan/bare-places.ts';
import { planWrap } from '../../src/job/plan/plan.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { blankContent } from '../../src/job/typed/write-job.ts';
import { refusalsOf } from '../blank/a-blank.ts';
import { expectWithin } from '../closeness.ts';

/** The slump cone of ASTM C143 (references 2.6, seen), upright: its half angle is atan(50.8 / 304.8), 9.462 degrees. */
const cone = {
  stations: [
    { height: 0, across: 101.6 },
    { height: 304.8, across: 203.2 },
  ],
};
const coneLength = Math.hypot(304.8, 50.8);
const straight = {
  stations: [
    { height: 0, across: 80 },
    { height: 120, across: 80 },
  ],
};

const findingsOf = (blank: Blank, band: object | undefined, plain = false): readonly Finding[] => {
  const job = readJob({ name: 'test', blank: 'b.json', ...(band ? { band } : {}) }, 'j.json');
  const input = { job, jobFile: 'j.json', blank, blankFile: 'b.json', plain };
  const { wall, template } = planWrap(input);
  return barePlaces(input, { wall, template, band: template.band });
};
const levelsOf = (found: readonly Finding[]) =>
  found.map(({ rule, level, where }) => [rule, level, where.key]);
const cup = (rest: object = {}) => readBlank({ ...straight, ...rest }, 'b.json');

describe('the lip zone', () => {
  test('is the top 20 mm of a vessel of which nothing is said', () => {
    expect(levelsOf(findingsOf(cup(), { from: 5, to: 100 }))).toEqual([]);
    const found = findingsOf(cup(), { from: 5, to: 101 });
    expect(levelsOf(found)).toEqual([['lip-zone', 'look', 'band.to']]);
    expect(found[0]?.where.along).toBe(100);
    expect(found[0]?.says).toContain(
      'reaches 1 mm into the common lip-and-rim zone, the top 20 mm of the wall',
    );
    expect(found[0]?.says).toContain('not a legal line');
    expect(found[0]?.says).toContain('certified for food contact');
  });

  test('is reached by a band that was left out, and only noted of a plain template', () => {
    expect(levelsOf(findingsOf(cup(), undefined))).toEqual([['lip-zone', 'look', 'band']]);
    expect(levelsOf(findingsOf(cup(), undefined, true))).toEqual([['lip-zone', 'note', 'band']]);
  });

  test('on a wall no higher than the zone gives no band that ends at its foot', () => {
    const low = readBlank(
      {
        stations: [
          { height: 0, across: 80 },
          { height: 15, across: 80 },
        ],
      },
      'b.json',
    );
    const [found] = findingsOf(low, undefined);
    expect(found?.says).toMatch(/food contact\. If nobody drinks from it, give /);
    expect(found?.says).not.toContain('End the band');
  });

  // References, section 5: 20 mm along the wall of the slump cone is 19.728 mm of its height.
  test('is measured along the wall, not up', () => {
    const [found] = findingsOf(readBlank(cone, 'b.json'), undefined);
    expectWithin(found?.where.along ?? NaN, coneLength - 20, 1e-9);
    expectWithin((coneLength - (found?.where.along ?? NaN)) * (304.8 / coneLength), 19.728, 5e-4);
  });

  test('is as high as the blank says, and there is none at 0 or for another use', () => {
    const band = { from: 5, to: 111 };
    expect(levelsOf(findingsOf(cup({ lipZone: '10mm' }), band))).toHaveLength(1);
    expect(levelsOf(findingsOf(cup({ lipZone: '9mm' }), band))).toEqual([]);
    expect(levelsOf(findingsOf(cup({ lipZone: 0 }), band))).toEqual([]);
    expect(levelsOf(findingsOf(cup({ use: 'other' }), band))).toEqual([]);
    expect(levelsOf(findingsOf(cup({ use: 'drinking' }), band))).toHaveLength(1);
  });

  test('of all the wall is refused, and so is a use unheard of', () => {
    const rules = (rest: object) => refusalsOf(() => cup(rest)).map(({ rule, where }) => [rule, where.key]);
    expect(rules({ lipZone: 120 })).toEqual([['lip-zone-too-wide', 'lipZone']]);
    expect(rules({ lipZone: -1 })).toEqual([['not-a-length', 'lipZone']]);
    expect(rules({ use: 'tea' })).toEqual([['not-a-choice', 'use']]);
  });

  test('is written with the blank, as its source is', () => {
    const blank = cup({ lipZone: '1in', use: 'drinking', source: 'invented' });
    expect(blankContent(blank)).toMatchObject({ lipZone: 25.4, use: 'drinking', source: 'invented' });
  });
});

describe('a keep-out', () => {
  const withKeepOut = (keepOut: object, rest: object = {}) =>
    cup({ use: 'other', keepOut: [keepOut], ...rest });
  const window = { what: 'window', turn: { from: 0.4, to: 0.6 }, along: { from: 20, to: 60 } };

  test('that film covers is told, with where', () => {
    const found = findingsOf(withKeepOut(window), { from: 30, to: 100 });
    expect(levelsOf(found)).toEqual([['keep-out-covered', 'look', 'keepOut[0]']]);
    expect(found[0]?.where).toMatchObject({ file: 'b.json', turn: 0.5, along: 30 });
    expect(found[0]?.says).toContain('from turn 0.4 to 0.6, from 30 mm to 60 mm along');
  });

  test('that the band stops short of is not told', () => {
    expect(findingsOf(withKeepOut(window), { from: 60, to: 100 })).toEqual([]);
    expect(
      findingsOf(withKeepOut({ what: 'lid', along: { from: 100, to: 120 } }), { from: 5, to: 100 }),
    ).toEqual([]);
  });

  test('in the room of the handle is not covered, and one that reaches out of it is', () => {
    // 60 mm of a girth of 251.3 are 0.239 of a turn.
    const handle = { spans: 110, keepOff: 5 };
    const mark = (to: number) => ({ what: 'dent', turn: { from: 0.95, to } });
    expect(findingsOf(withKeepOut(mark(0.23), { handle }), { from: 5, to: 100 })).toEqual([]);
    expect(findingsOf(withKeepOut(mark(0.25), { handle }), { from: 5, to: 100 })).toHaveLength(1);
  });
});
