// Source: Popular Science Monthly 92 (1918) p. 776, see source.md.
import { describe, test } from 'vitest';
import { radiusAt } from '../../../src/unroll/flat-wall.ts';
import { expectWithin, expectWithinPart } from '../../closeness.ts';
import { laidByHeight } from '../frustum.ts';
import values from './values.json' with { type: 'json' };

describe.each(values.measures)('the $name measure', ({ height, base, top, volume }) => {
  const laid = laidByHeight(base, top, height);

  test('holds its measure, by slices of the wall, within 0.3 % of a table of two decimals', () => {
    const slices = 2000;
    const thick = laid.slant / slices;
    const upright = Math.sqrt(1 - laid.wall.sine ** 2);
    let sum = 0;
    for (let i = 0; i < slices; i++)
      sum += Math.PI * radiusAt(laid.wall, (i + 0.5) * thick) ** 2 * thick * upright;
    expectWithinPart(sum, volume, 3.2e-3);
  });

  test('has the sector of the rule, the same for every size', () => {
    // D = 2h/3 and d = 4h/9 leave (D - d) / 2 = h/9 over a slant of h sqrt(82) / 9: 360 / sqrt(82) degrees.
    expectWithin(laid.sectorDeg, 360 / Math.sqrt(82), 0.15);
    expectWithinPart(laid.outerRadius / height, Math.sqrt(82) / 3, 4e-3);
    expectWithinPart(laid.innerRadius / height, (2 * Math.sqrt(82)) / 9, 4e-3);
  });

  test('has the lateral area of the handbook: half the sum of the circumferences times the slant', () => {
    expectWithinPart(laid.lateralArea, ((Math.PI * (base + top)) / 2) * laid.slant, 1e-7);
  });
});
