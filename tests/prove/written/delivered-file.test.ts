// What of a delivered file no cutter could follow is told, line by line.
import { expect, test } from 'vitest';
import { readDelivered } from '../../../src/prove/written/delivered-file.ts';

const file = (box: string, inside = '<g data-role="outline"><path d="M0 0H1V1Z"/></g>', size = '40mm') =>
  readDelivered(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="30mm" viewBox="${box}">\n${inside}</svg>`,
    'wrap.cut.svg',
  );

test('a plain file has no faults, and its units are mm', () => {
  const { faults, perUnit, units } = file('0 0 40 30');
  expect(faults).toEqual([]);
  expect([perUnit, units]).toEqual([
    { across: 1, up: 1 },
    { across: 40, up: 30 },
  ]);
});

test.each(['5 0 40 30', '0 5 40 30', '5 5 40 30'])('a view box of %s does not begin at 0 0', (box) => {
  expect(file(box).faults).toEqual(['a view box that does not begin at 0 0']);
});

test.each([
  ['cm', '4cm', 1],
  ['in', `${40 / 25.4}in`, 1],
  ['pt', `${(40 * 72) / 25.4}pt`, 1],
  ['px', '40px', 25.4 / 96],
  ['no unit', '40', 25.4 / 96],
])('a width in %s is told in mm a unit', (_, size, wanted) => {
  expect(file('0 0 40 30', undefined, size).perUnit.across).toBeCloseTo(wanted, 9);
});

test('what is more than a plain path in a group is told by its line', () => {
  const inside = '<path d="M0 0H1"/>\n<g data-role="artwork" transform="scale(2)"><text>a</text></g>';
  expect(file('0 0 40 30', inside).faults).toEqual([
    'line 2: a path outside every group',
    'line 3: a g with transform',
    'line 3: a text, where only paths belong',
  ]);
});

test.each([
  [
    'lines over one another',
    'M20 20L30 20'.repeat(20_001),
    /^more than 20000 lines that begin on one square/,
  ],
  ['a place past all', 'M1e308 20L30 20', /^a place a kilometre away or more$/],
  ['a place of many digits', 'M20 20L-1234567.5 20', /^a place a kilometre away or more$/],
  [
    'lines side by side all over',
    'M0 1L40 2'.repeat(5001),
    /^more than 25 mm of straight lines to each square/,
  ],
  ['lines without end', 'm0 0l1 1'.repeat(500_001), /^more than 500000 lines$/],
])('%s are told, and not measured', (_, data, says) => {
  const { faults, groups } = file('0 0 40 30', `<g data-role="artwork"><path d="${data}"/></g>`);
  expect(faults).toEqual([expect.stringMatching(says)]);
  expect(groups).toEqual([]);
});

test('decimals of any length, and exponents that make a number small, are no place far away', () => {
  const data = 'M0.123456789 99999.1L1e-9 20';
  expect(file('0 0 40 30', `<g data-role="artwork"><path d="${data}"/></g>`).faults).toEqual([]);
});
