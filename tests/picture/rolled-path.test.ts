// Numbers of pictures. Outside: the language's own way of writing numbers (ECMA-262, Number::toString).
import { expect, test } from 'vitest';
import { hundredths } from '../../src/picture/rolled-path.ts';

test('hundredths are written as numbers are, without the nought before the point', () => {
  const counts = [
    0, -0, 0.4, -0.4, 1, -1, 9, 10, 50, -50, 99, 100, -100, 101, 110, 1234567, -1234560, 12.5, 0.5, -1.5,
  ];
  const asNumber = (count: number) => String(Math.round(count) / 100 + 0).replace(/^(-?)0\./, '$1.');
  expect(counts.map(hundredths)).toEqual(counts.map(asNumber));
  for (let count = -2000; count < 2000; count++) expect(hundredths(count)).toBe(asNumber(count));
});
