import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatLength,
  inMm,
  type LengthOptions,
  measuredLength,
  mostLength,
  parseLength,
} from '../../src/lengths/length.ts';

const inFile = (units: 'mm' | 'in'): LengthOptions => ({ units, bare: 'number' });
const typed = (units: 'mm' | 'in'): LengthOptions => ({ units, bare: 'text-too' });

const mmOf = (value: unknown, options: LengthOptions = inFile('mm')): number => {
  const parsed = parseLength(value, options);
  if (!parsed.ok) throw new Error(parsed.says);
  return parsed.mm;
};
const refusalOf = (value: unknown, options: LengthOptions = inFile('mm')): string => {
  const parsed = parseLength(value, options);
  if (parsed.ok) throw new Error(`${String(value)} was taken as ${parsed.mm} mm`);
  return parsed.says;
};

describe('a length that carries its unit', () => {
  // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959); the products are exact decimals.
  test.each([
    ['86mm', 86],
    ['86 mm', 86],
    ['86MM', 86],
    ['8.6cm', 86],
    ['3.375in', 85.725],
    ['3 3/8in', 85.725],
    ['3-3/8"', 85.725],
    ['3⅜"', 85.725],
    ['3 ⅜″', 85.725],
    ['3 3⁄8”', 85.725],
    ['3/8in', 9.525],
    ['⅜in', 9.525],
    ['2 1/2 inches', 63.5],
    ["1''", 25.4],
    ['.5in', 12.7],
    ['0.1in', 2.54],
    ['1/64in', 0.396875],
    ['12in', 304.8],
    ['+5mm', 5],
    ['  5mm  ', 5],
    ['1/3in', 25.4 / 3],
  ])('%s is %d mm to the last bit', (text, mm) => {
    expect(mmOf(text)).toBe(mm);
    expect(mmOf(text, inFile('in'))).toBe(mm);
  });

  test('every 64th of an inch up to 12 in is its exact count of 25.4 mm, in whole numbers', () => {
    for (let parts = 1; parts <= 12 * 64; parts++) {
      const [whole, over] = [Math.floor(parts / 64), parts % 64];
      const text = `${whole > 0 ? whole : ''}${over === 0 ? '' : ` ${over}/64`}in`;
      // 25.4/64 mm = 396 875 nm: the nearest double to a whole number of nanometres over a million.
      expect(mmOf(text)).toBe((parts * 396875) / 1_000_000);
    }
  });
});

describe('a bare number', () => {
  test('is in the units of its file', () => {
    expect(mmOf(86, inFile('mm'))).toBe(86);
    expect(mmOf(3.375, inFile('in'))).toBe(85.725);
    expect(mmOf(0.1, inFile('in'))).toBe(mmOf('0.1in'));
    expect(mmOf(1e-7, inFile('mm'))).toBe(1e-7);
  });

  test('may be text on the command line, and only there', () => {
    expect(mmOf('150', typed('mm'))).toBe(150);
    expect(mmOf('3 3/8', typed('in'))).toBe(85.725);
    expect(refusalOf('150', inFile('mm'))).toBe(
      '"150" has no unit; write "150mm", or the number without quotes',
    );
    expect(refusalOf('3 3/8', inFile('in'))).toBe('"3 3/8" has no unit; write "3 3/8in"');
  });
});

describe('a length that is refused', () => {
  test.each<[unknown, string]>([
    [undefined, 'is missing; give a length, such as "62mm"'],
    [null, 'is missing'],
    ['', '"" is empty'],
    ['   ', 'is empty'],
    [Number.NaN, 'NaN is not a length'],
    [Number.POSITIVE_INFINITY, 'Infinity is not a length'],
    [-5, '-5 is negative; give more than 0'],
    ['-5mm', '"-5mm" is negative'],
    ['−5mm', 'is negative'],
    ['-3 3/8in', 'is negative'],
    [0, '0 is no size; give more than 0'],
    ['0mm', '"0mm" is no size'],
    [20000, '20000 is over 10000 mm'],
    ['400in', '"400in" is over 10000 mm'],
    [1e300, 'is over 10000 mm'],
    ['8,6cm', '"8,6cm" has a comma in it; write a decimal point, "8.6cm"'],
    ['1,200mm', 'as in "8.6cm"'],
    ['3 3/0in', '"3 3/0in" has a fraction that makes no sense'],
    ['3 9/8in', 'makes no sense'],
    ['86furlong', '"86furlong" ends in "furlong", which is no unit here; write mm, cm or in'],
    ['1m', 'ends in "m"'],
    ["1'", 'which is no unit here'],
    ['86mm long', 'ends in "mm long"'],
    ['1.2.3mm', 'ends in ".3mm"'],
    ['1e3mm', 'ends in "e3mm"'],
    ['1e3', '"1e3" is not a length'],
    ['wide', '"wide" is not a length'],
    ['mm', '"mm" is not a length'],
    ['.', '"." is not a length'],
    ['NaN', '"NaN" is not a length'],
    [true, 'true is not a length'],
    [[1, 2], '[1,2] is not a length'],
    [{}, '{} is not a length'],
    ['5constructor', 'which is no unit here'],
  ])('%j: %s', (value, says) => {
    expect(refusalOf(value)).toContain(says);
  });

  test('is named in one line, cut short, and without backslashes before inch marks', () => {
    expect(refusalOf('0-1/0"')).toContain(`'0-1/0"'`);
    expect(refusalOf('a\nb')).not.toContain('\n');
    expect(refusalOf('9'.repeat(500)).length).toBeLessThan(200);
    expect(refusalOf(`0.${'0'.repeat(500)}1mm`)).toContain('is no size');
  });

  test('may be zero or negative where that is said, but never larger than what is allowed', () => {
    expect(mmOf(0, { ...inFile('mm'), sign: 'zero-too' })).toBe(0);
    expect(Object.is(mmOf('-0mm', { ...inFile('mm'), sign: 'zero-too' }), 0)).toBe(true);
    expect(refusalOf(-1, { ...inFile('mm'), sign: 'zero-too' })).toContain('give 0 or more');
    expect(mmOf('-3-3/8"', { ...inFile('mm'), sign: 'any' })).toBe(-85.725);
    expect(refusalOf(-20000, { ...inFile('mm'), sign: 'any' })).toContain('is over');
    expect(refusalOf(101, { ...inFile('mm'), most: 100 })).toContain('over 100 mm');
    expect(mmOf(mostLength)).toBe(mostLength);
  });
});

describe('a length written back', () => {
  test.each([
    [85.725, 'in', '3 3/8 in'],
    [25.4, 'in', '1 in'],
    [9.525, 'in', '3/8 in'],
    [-9.525, 'in', '-3/8 in'],
    [10, 'in', '0.3937 in'],
    [0, 'in', '0 in'],
    [85.725, 'mm', '85.725 mm'],
    [86.00000001, 'mm', '86 mm'],
    [-0.0001, 'mm', '0 mm'],
  ] as const)('%d mm in %s is %s', (mm, units, text) => {
    expect(formatLength(mm, units)).toBe(text);
  });

  test.each([
    [6.35, '6.35 mm', '6.4 mm', '0.25 in'],
    [6.345, '6.35 mm', '6.3 mm', '0.25 in'],
    [150, '150 mm', '150 mm', '5.906 in'],
    [0.0508, '0.051 mm', '0.1 mm', '0.002 in'],
    [-2.25, '-2.25 mm', '-2.3 mm', '-0.089 in'],
    [-0.001, '-0.001 mm', '0 mm', '0 in'],
  ])('of %d mm in words goes by one rule: halves away from 0, no closing zeros', (mm, told, read, inches) => {
    expect([inMm(mm), measuredLength(mm, 'mm'), measuredLength(mm, 'in')]).toEqual([told, read, inches]);
  });

  test('is read again as the same length, for every thousandth of a mm', () => {
    fc.assert(
      fc.property(fc.integer({ min: -10_000_000, max: 10_000_000 }), (microns) => {
        const mm = microns / 1000;
        expect(mmOf(formatLength(mm, 'mm'), { ...inFile('in'), sign: 'any' })).toBe(mm);
      }),
      { seed: 2, numRuns: 2000 },
    );
  });

  test('is read again as the same length, for every 64th of an inch', () => {
    fc.assert(
      fc.property(fc.integer({ min: -25_000, max: 25_000 }), (parts) => {
        const mm = (parts * 396875) / 1_000_000;
        expect(mmOf(formatLength(mm, 'in'), { ...inFile('mm'), sign: 'any' })).toBe(mm);
      }),
      { seed: 3, numRuns: 2000 },
    );
  });

  test('is never further off than half its last digit', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 9999, noNaN: true }), (mm) => {
        expect(
          Math.abs(mmOf(formatLength(mm, 'mm'), { ...inFile('mm'), sign: 'any' }) - mm),
        ).toBeLessThanOrEqual(0.0005000001);
        expect(
          Math.abs(mmOf(formatLength(mm, 'in'), { ...inFile('mm'), sign: 'any' }) - mm),
        ).toBeLessThanOrEqual(25.4 * 0.00005 + 1e-9);
      }),
      { seed: 4, numRuns: 2000 },
    );
  });

  test('any text at all is either read or refused in one line', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary' }), fc.stringMatching(/^[-+0-9 ./⅜"incm,]{0,12}$/)),
        (text) => {
          const parsed = parseLength(text, typed('mm'));
          if (parsed.ok) expect(parsed.mm > 0 && parsed.mm <= mostLength).toBe(true);
          else expect(parsed.says).toMatch(/^[^\n\r]{5,250}$/);
        },
      ),
      { seed: 5, numRuns: 3000 },
    );
  });
});
