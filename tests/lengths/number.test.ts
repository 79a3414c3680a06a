import { describe, expect, test } from 'vitest';
import { parseNumber, parseShare } from '../../src/lengths/number.ts';

describe('a plain number', () => {
  test('is given when it lies within its bounds', () => {
    expect(parseNumber(5, { least: 1, most: 10, whole: true })).toEqual({ ok: true, value: 5 });
    expect(parseNumber(0.02, { least: 0, most: 0.5 })).toEqual({ ok: true, value: 0.02 });
  });

  test.each<[unknown, boolean, string]>([
    [0, true, '0 will not do here; give a whole number from 1 to 10'],
    [2.5, true, '2.5 will not do here; give a whole number'],
    [11, false, 'give a number from 1 to 10'],
    [Number.NaN, false, 'NaN will not do'],
    ['5', false, '"5" will not do'],
    [null, false, 'null will not do'],
    [undefined, false, 'undefined will not do'],
  ])('is refused when it is %j', (value, whole, says) => {
    const parsed = parseNumber(value, { least: 1, most: 10, whole });
    expect(parsed.ok ? '' : parsed.says).toContain(says);
  });
});

describe('a share', () => {
  test.each<[unknown, number]>([
    [0.02, 0.02],
    [0, 0],
    ['2%', 0.02],
    [' 2.5 % ', 0.025],
    ['2,5%', 0.025],
    ['50%', 0.5],
  ])('is given when it is %j', (value, share) => {
    const parsed = parseShare(value, 0.5);
    expect(parsed.ok && parsed.value).toBeCloseTo(share, 12);
  });

  test.each<[unknown]>([['2'], [2], ['51%'], ['-1%'], ['%'], ['two %'], [Number.NaN], [null], ['1e1%']])(
    'is refused when it is %j, with both ways to write it',
    (value) => {
      const parsed = parseShare(value, 0.5);
      expect(parsed.ok ? '' : parsed.says).toContain('give a share of it, from 0 to 0.5, or "0%" to "50%"');
    },
  );
});
