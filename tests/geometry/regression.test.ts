import { describe, expect, test } from 'vitest';
import { regress } from '../../src/geometry/regression.ts';

describe('a weighted straight line', () => {
  test('with weights that are counts is the plain line through repeated points', () => {
    const points = [
      { at: 1, value: 2.1, count: 3 },
      { at: 2, value: 2.9, count: 1 },
      { at: 4, value: 5.2, count: 2 },
    ];
    const weighted = regress(points.map(({ at, value, count }) => ({ at, value, weight: count })));
    const repeated = regress(
      points.flatMap(({ at, value, count }) =>
        Array.from({ length: count }, () => ({ at, value, weight: 1 })),
      ),
    );
    // Normal equations by hand: n 6, Σx 13, Σy 19.6, Σx² 39, Σxy 53.7: slope (6·53.7 - 13·19.6)/(6·39 - 169).
    expect(weighted.slope).toBeCloseTo((6 * 53.7 - 13 * 19.6) / (6 * 39 - 169), 12);
    expect(weighted.intercept).toBeCloseTo((39 * 19.6 - 13 * 53.7) / (6 * 39 - 169), 12);
    expect(repeated.slope).toBeCloseTo(weighted.slope, 12);
    // Inverse of the normal matrix [[6, 13], [13, 39]]: [[39, -13], [-13, 6]] / 65.
    expect(weighted.covariance.intercept).toBeCloseTo(39 / 65, 12);
    expect(weighted.covariance.both).toBeCloseTo(-13 / 65, 12);
    expect(weighted.covariance.slope).toBeCloseTo(6 / 65, 12);
  });
});
