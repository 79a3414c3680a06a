// Film by what was laid: shares of rectangles, reckoned by hand.
import { describe, expect, test } from 'vitest';
import type { SheetReport } from '../../../src/job/report.ts';
import { filmNeeded } from '../../../src/job/sheets/film-needed.ts';
import { expectWithin } from '../../closeness.ts';

const sheet = { across: 300, margin: 10, spacing: 2, mirror: false };
const report = (some: Partial<SheetReport>): SheetReport => ({
  sheet: 1,
  file: 'sheet-1.cut.svg',
  film: '',
  across: 300,
  up: 600,
  times: 1,
  used: 600,
  isLast: false,
  cutInto: 180_000,
  covered: 90_000,
  pieces: [],
  ...some,
});

describe('film needed', () => {
  test('is whole sheets, and of the last what is used of it', () => {
    const [film] = filmNeeded(
      [report({}), report({ isLast: true, used: 200, cutInto: 60_000, covered: 45_000 })],
      {
        ...sheet,
        up: 600,
      },
    );
    expect(film?.sheets).toBe(2);
    expect(film?.lastUsed).toBe(200);
    // Cut into: 300 x 600 and 300 x 200 mm; covered: 135 000 mm2.
    expectWithin(film?.waste ?? Number.NaN, 1 - 135_000 / 240_000, 1e-12);
  });

  test('of a roll is its length', () => {
    const [film] = filmNeeded([report({ up: 420, used: 420, cutInto: 126_000, isLast: true })], sheet);
    expect(film?.rollLength).toBe(420);
    expectWithin(film?.waste ?? Number.NaN, 1 - 90_000 / (300 * 420), 1e-12);
  });

  test('is told film by film, and counts a sheet that is cut several times', () => {
    const needed = filmNeeded(
      [report({ film: 'sand', times: 4 }), report({ film: 'sea', isLast: true, used: 300 })],
      { ...sheet, up: 600 },
    );
    expect(needed.map(({ film, sheets }) => [film, sheets])).toEqual([
      ['sand', 4],
      ['sea', 1],
    ]);
  });
});
