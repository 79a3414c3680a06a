// Source: ASTM E676-02 and joint designations, see source.md; two large diameters are from memory, marked in values.json.
import { describe, test } from 'vitest';
import { radiusAt } from '../../../src/unroll/flat-wall.ts';
import { expectWithin } from '../../closeness.ts';
import { laidByHeight } from '../frustum.ts';
import values from './values.json' with { type: 'json' };

describe.each(values.joints)('ground joint $name, large diameter $status', ({ large, length, small }) => {
  const laid = laidByHeight(small, large, length);

  test('tapers by 1 mm of diameter in 10 mm of length', () => {
    const upright = Math.sqrt(1 - laid.wall.sine ** 2);
    for (const height of [0, length / 3, length - 10]) {
      const across = (at: number) => 2 * radiusAt(laid.wall, at / upright);
      expectWithin(across(height + 10) - across(height), values.taperPer10, values.tolerancePer10);
    }
  });

  test('has the sector of every 1:10 joint, and an outer radius of 10.0125 large diameters', () => {
    expectWithin(laid.sectorDeg, 360 / Math.sqrt(401), 1e-9);
    expectWithin(laid.outerRadius / large, Math.sqrt(401) / 2, 1e-9);
  });
});
