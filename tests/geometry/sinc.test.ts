import { describe, expect, test } from 'vitest';
import { asinc, atanc, expm1c, log1pc, sinc } from '../../src/geometry/sinc.ts';
import { expectWithinPart } from '../closeness.ts';

// Truth: the Maclaurin series, summed to where a term is below 1e-20 (all arguments here are at most 1/2).
const series = (x: number, term: (n: number) => number): number => {
  let sum = 0;
  for (let n = 60; n >= 0; n--) sum += term(n) * x ** n;
  return sum;
};
const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
const even = (n: number, of: (k: number) => number): number => (n % 2 === 0 ? of(n / 2) : 0);

const cases = [
  { name: 'sin x / x', f: sinc, term: (n: number) => even(n, (k) => (-1) ** k / factorial(2 * k + 1)) },
  { name: 'atan x / x', f: atanc, term: (n: number) => even(n, (k) => (-1) ** k / (2 * k + 1)) },
  {
    name: 'asin x / x',
    f: asinc,
    term: (n: number) => even(n, (k) => factorial(2 * k) / (4 ** k * factorial(k) ** 2 * (2 * k + 1))),
  },
  { name: '(e^x - 1) / x', f: expm1c, term: (n: number) => 1 / factorial(n + 1) },
  { name: 'ln(1 + x) / x', f: log1pc, term: (n: number) => (-1) ** n / (n + 1) },
];

describe.each(cases)('$name', ({ f, term }) => {
  test('is 1 at nothing', () => {
    expect(f(0)).toBe(1);
  });

  test.each([1e-300, 1e-16, 1e-9, 1e-6, 0.99999e-4, 1e-4, 1.00001e-4, 1e-3, 0.1, 0.4])(
    'is right to four last bits at %s, and at minus that',
    (x) => {
      for (const at of [x, -x]) expectWithinPart(f(at), series(at, term), 4 * 2 ** -52);
    },
  );
});
