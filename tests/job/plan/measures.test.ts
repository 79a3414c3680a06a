// How well a blank is known, in its report and in words; and what of that a job is told.
import { describe, expect, test } from 'vitest';
import { exitStatus } from '../../../src/cli/output.ts';
import { describeBlank } from '../../../src/job/blank/describe-blank.ts';
import { readBlank } from '../../../src/job/typed/read-blank.ts';
import { expectWithin } from '../../closeness.ts';
import { madeOf } from '../a-job.ts';

const cup = {
  stations: [
    { height: 0, across: 62 },
    { height: 150, girth: 270 },
  ],
};
const told = (blank: object) => describeBlank(readBlank(blank, 'b'), 'b', 'mm');

describe('what is told of a blank', () => {
  test('is the overlap: twice the doubt at the worse end of the band, and 3 mm to hold', () => {
    const { report, lines } = told(cup);
    // At the foot a diameter read to 0.5 mm: u = pi 0.5.
    expectWithin(report.overlap?.coversAt95 ?? 0, 2 * Math.PI * 0.5, 1e-3);
    expectWithin(report.overlap?.recommended ?? 0, 3 + 2 * Math.PI * 0.5, 1e-3);
    expectWithin(report.seam.lip, 0.5, 0.01);
    expect(lines.join('\n')).toContain('overlap advised: 6.1 mm');
  });

  test('is how good a reading is taken to be, and whose figure that is', () => {
    expect(told(cup).lines.join('\n')).toContain('good to 0.5 mm (standard uncertainty, assumed');
    expect(told(cup).report.reading).toEqual({ u: 0.5, isAssumed: true });
    const own = told({ ...cup, reading: 0.5 });
    expect(own.lines.join('\n')).toContain('good to 0.5 mm (standard uncertainty, as the blank says)');
    expect(own.report.reading).toEqual({ u: 0.5, isAssumed: false });
  });

  test('is no seam and no overlap where the wrap ends at a handle', () => {
    const { report, lines } = told({ ...cup, handle: { spans: 28, keepOff: 6 } });
    expect(report.overlap).toBeUndefined();
    expectWithin(report.seam.lip, 0.5, 0.01);
    const words = lines.join('\n');
    expect(words).toContain(
      'it has no seam, and needs no overlap; from one side to the other it may be too long',
    );
    expect(words).not.toMatch(/overlap advised|at the seam/);
  });

  test('is what half a millimetre of tape does at the seam', () => {
    const { report, lines } = told(cup);
    expect(report.halfMillimetre?.key).toBe('stations[0].across');
    expectWithin(report.halfMillimetre?.foot ?? 0, Math.PI / 2, 1e-6);
    expect(lines.join('\n')).toMatch(
      /half a millimetre of tape is half a millimetre at the seam, and half a millimetre across is 1\.6 mm; here the diameter 0 mm up the wall \(stations\[0\]\.across\) read .* leaves a gap of 1\.6 mm at the foot edge/,
    );
  });

  test('is each reading by the key it was typed under, and the one that is off', () => {
    const heights = [0, 50, 100, 150];
    const stations = heights.map((height) => ({ height, girth: [200 + 0.4 * height, 200 + 0.4 * height] }));
    const { report, checks, lines } = told({
      stations: stations.map((s, i) => (i === 2 ? { ...s, girth: [240, 246] } : s)),
    });
    expect(report.readings.length).toBe(8);
    expect(report.readingOff).toMatchObject({ key: 'stations[2].girth[1]', read: 246 });
    expectWithin(report.readingOff?.shouldBe ?? 0, 240, 1e-6);
    expect(checks.map(({ rule, level }) => [rule, level])).toEqual([['reading-off', 'look']]);
    expect(exitStatus(checks)).toBe(1);
    expect(lines.join('\n')).toMatch(
      /the girth 100\.2 mm up the wall \(stations\[2\]\.girth\[1\]\) tells a girth of 246 mm, [\d.]+ mm over the fitted wall/,
    );
  });

  test('is what the paper fits moved', () => {
    const { report, lines } = told({ ...cup, fits: [{ foot: 2, lip: -1, climb: 0 }] });
    const { fitted } = report;
    expectWithin(fitted?.before.footGirth ?? 0, Math.PI * 62, 1e-9);
    expectWithin(fitted?.moved.footGirth ?? 0, 2, 0.5);
    expectWithin(fitted?.moved.lipGirth ?? 0, -1, 0.6);
    expectWithin(
      (fitted?.after.footGirth ?? 0) - (fitted?.before.footGirth ?? 0),
      fitted?.moved.footGirth ?? 1,
      1e-12,
    );
    expect(fitted?.steps).toEqual([fitted?.after]);
    expectWithin(report.girthAt[0]?.girth ?? 0, fitted?.after.footGirth ?? 1, 1e-9);
    expect(lines.join('\n')).toContain('the paper fits moved the girth at the foot from 194.8 mm to');
  });

  test('is where to keep clear, and how far out of round', () => {
    const keepOut = [{ what: 'lid', along: { from: 140, to: 150 } }];
    const { report, lines, checks } = told({
      ...cup,
      stations: [{ height: 0, across: [63, 61] }, cup.stations[1]],
      keepOut,
    });
    expect(report.keepOuts).toEqual(keepOut);
    expect(report.outOfRound?.[0]).toMatchObject({ key: 'stations[0].across', outOfRound: 1 });
    expect(lines.at(-1)).toBe('keep clear of the lid all around, from 140 mm to 150 mm along');
    expect(checks.map(({ rule }) => rule)).toEqual(['out-of-round']);
  });

  test('holds for a wall that bends, as far as it is known', () => {
    const stations = [0, 50, 100].map((height) => ({ height, girth: height === 50 ? 246 : 240 }));
    const { report } = told({ stations, wall: 'smooth' });
    expect(report.overlap?.coversAt95).toBeGreaterThan(0);
    expect(report.sure).toBeUndefined();
  });
});

describe('a job whose overlap', () => {
  const rulesOf = async (job: object, blank: object = cup) =>
    (await madeOf({ blank, job })).report.checks
      .filter(({ rule }) => ['overlap-short', 'overlap-wide', 'butt-open', 'handle-no-seam'].includes(rule))
      .map(({ rule, level }) => [rule, level]);

  test('does not cover what the readings leave open is looked at', async () => {
    expect(await rulesOf({ seam: { overlap: 3 } })).toEqual([['overlap-short', 'look']]);
    expect(await rulesOf({ seam: { overlap: 3.2 } })).toEqual([]);
    const taped = { stations: [{ height: 0, girth: 194.8 }, cup.stations[1]] };
    expect(await rulesOf({ seam: { overlap: 3 } }, taped)).toEqual([]);
  });

  // A `--overlap 6in` on a cup of 195 to 270 mm was taken without a word.
  test('laps over more than a quarter of the wall is looked at, and past all of it refused', async () => {
    const can = { stations: [0, 90].map((height) => ({ height, girth: 240 })) };
    expect(await rulesOf({ seam: { overlap: 60 } }, can)).toEqual([]);
    expect(await rulesOf({ seam: { overlap: 60.1 } }, can)).toEqual([['overlap-wide', 'look']]);
    expect(await rulesOf({ seam: { overlap: '6in' } })).toEqual([['overlap-wide', 'look']]);
    await expect(rulesOf({ seam: { overlap: 240.1 } }, can)).rejects.toThrow(/240.1 mm is more than/);
  });

  test('is none is told what a butt seam leaves open', async () => {
    expect(await rulesOf({ seam: { style: 'butt' } })).toEqual([['butt-open', 'note']]);
  });

  test('has to leave more to hold is advised so much more', async () => {
    const { report } = await madeOf({ blank: cup, job: { seam: { overlap: 12, hold: 5 } } });
    const { recommended = 0, coversAt95 = 0 } = report.blank.overlap ?? {};
    expectWithin(recommended - coversAt95, 5, 1e-12);
  });

  test('is not there beside a handle is not asked for', async () => {
    const rules = await rulesOf({ seam: { overlap: 1 } }, { ...cup, handle: { spans: 40 } });
    expect(rules).toEqual([['handle-no-seam', 'note']]);
  });
});

describe('the widest band for one piece on a wall that bends', () => {
  // An arc of 200 mm up the wall, 50.5 mm from the axis at its widest.
  const [bend, radius] = [200, 50.5];
  const heights = [0, 20, 40, 60, 80, 100, 120];
  const stations = heights.map((height) => ({
    height,
    across: 2 * (radius - bend + Math.sqrt(bend ** 2 - (height - 60) ** 2)),
  }));

  // The edge excess of a strip of width w on a surface of curvature K is K w²/8 (see unroll/strain.ts).
  test('is where the excess of its edges is what the film stretches by', () => {
    const barrel = readBlank({ stations, wall: 'smooth' }, 'b');
    const { report, lines } = describeBlank(barrel, 'b', 'mm', [], { stretch: 0.02, gather: 0 });
    const { from = 0, to = 0, ...gives } = report.onePiece ?? {};
    expectWithin(to - from, Math.sqrt(8 * 0.02 * bend * radius), 1);
    expect(gives).toEqual({ stretch: 0.02, gather: 0 });
    expect(lines.join('\n')).toMatch(
      /stretches by 2\.0 % lies down from .*: a strip as wide as 39\.7 mm lies flat/,
    );
  });

  test('is never narrower than what a straightedge finds flat; on a straight wall none is told', () => {
    const { report } = told({ stations, wall: 'smooth' });
    const flat = report.flatBands.map(({ from, to }) => to - from);
    const { from = 0, to = 0 } = report.onePiece ?? {};
    expect(to - from).toBeGreaterThanOrEqual(Math.max(...flat));
    expect(told(cup).report.onePiece).toBeUndefined();
  });
});

test('a blank in inches is told in inches, and keeps its name as it was typed', () => {
  const blank = readBlank({ ...straight3, name: 'mug 82 mm', units: 'in' }, 'b');
  const said = describeBlank(blank, 'b', 'in').lines.join('\n');
  expect(said).toMatch(/^mug 82 mm: /);
  expect(said.slice('mug 82 mm'.length)).not.toMatch(/mm\b|cm²|millimetre/);
  // A cylinder 3 in across has 9.42 in² to the inch up.
  expect(said).toMatch(/: 37\.7 in², /);
  expect(said).toContain('0.02 in of tape is 0.02 in at the seam');
});

const straight3 = {
  stations: [
    { height: 0, across: 3 },
    { height: 4, across: 3 },
  ],
  use: 'other',
};
