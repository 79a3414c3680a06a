import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bareGirthAt, fitStraightWall } from '../../src/blank/straight-wall.ts';
import { aBlank } from './a-blank.ts';

describe('a wall fitted to more stations than it needs', () => {
  // Anscombe (1973), The American Statistician 27, first set; the published fit is intercept 3.0001 (standard error
  // 1.1247), slope 0.5001 (0.1179), residual standard error 1.2366 on 9 degrees of freedom. Data and fit from memory.
  const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
  const y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];
  const upward = x
    .map((height, i) => ({ height, across: 2 * (y[i] ?? 0) }))
    .sort((a, b) => a.height - b.height);
  // A diameter is twice y, so a reading of twice the residual standard error gives y that error.
  const wall = fitStraightWall(aBlank(upward, { reading: 2 * 1.2366 }));

  test('is the published regression line', () => {
    expect(wall.radius).toBeCloseTo(3.0001, 4);
    expect(Math.tan(wall.halfAngle)).toBeCloseTo(0.5001, 4);
    const squares = wall.residuals.reduce((sum, { residual }) => sum + (residual / (2 * Math.PI)) ** 2, 0);
    expect(Math.sqrt(squares / 9)).toBeCloseTo(1.2366, 4);
  });

  test('is as sure as the published standard errors', () => {
    expect(Math.sqrt(wall.covariance.radius)).toBeCloseTo(1.1247, 3);
    // The slope is the tangent: its change per radian is 1 / cos².
    expect(Math.sqrt(wall.covariance.halfAngle) / Math.cos(wall.halfAngle) ** 2).toBeCloseTo(0.1179, 4);
  });

  test('names each station with what it read and what the wall has there', () => {
    for (const { station, along, measured, residual } of wall.residuals) {
      expect(measured).toBeCloseTo(Math.PI * (upward[station]?.across ?? 0), 10);
      expect(measured - residual).toBeCloseTo(bareGirthAt(wall, along), 10);
    }
  });

  test('a girth counts pi times as sure as a diameter: two diameters and a girth at one height meet at their weighted mean', () => {
    const weighted = fitStraightWall(
      aBlank([
        { height: 0, girth: 200 },
        { height: 100, across: 200 / Math.PI },
        { height: 100, girth: 201 },
      ]),
    );
    // Weights 1/π² and 1 (inverse variances of the girth).
    const mean = (200 / Math.PI ** 2 + 201) / (1 / Math.PI ** 2 + 1);
    expect(bareGirthAt(weighted, weighted.length)).toBeCloseTo(mean, 10);
    expect(bareGirthAt(weighted, 0)).toBeCloseTo(200, 10);
  });

  test('no other wall has a smaller sum of weighted squares, heights and alongs mixed', () => {
    const readings = [
      { height: 5, across: 62.4 },
      { along: 60, girth: 221 },
      { height: 90, girth: 238.5 },
      { along: 149, across: 84.9 },
    ];
    const best = fitStraightWall(aBlank(readings));
    const cost = (radius: number, lean: number): number =>
      readings.reduce((sum, { height, along = 0, across, girth = 0 }) => {
        const wide = height === undefined ? along * Math.sin(lean) : height * Math.tan(lean);
        const off = (across === undefined ? girth : Math.PI * across) - 2 * Math.PI * (radius + wide);
        return sum + (across === undefined ? off : off / Math.PI) ** 2;
      }, 0);
    const least = cost(best.radius, best.halfAngle);
    for (const size of [1e-2, 1e-4])
      for (const [dr, da] of [
        [1, 0],
        [-1, 0],
        [0, 0.01],
        [0, -0.01],
        [1, -0.01],
        [-1, 0.01],
        [1, 0.01],
        [-1, -0.01],
      ] as const)
        expect(cost(best.radius + dr * size, best.halfAngle + da * size)).toBeGreaterThan(least);
  });

  test('exact readings of any wall, in any mix, give that wall back', () => {
    const wallOf = fc.record({
      radius: fc.double({ min: 10, max: 200, noNaN: true }),
      lean: fc.double({ min: -0.9, max: 0.9, noNaN: true }),
      steps: fc.array(
        fc.record({
          up: fc.double({ min: 20, max: 60, noNaN: true }),
          byHeight: fc.boolean(),
          byAcross: fc.boolean(),
        }),
        { minLength: 2, maxLength: 7 },
      ),
    });
    fc.assert(
      fc.property(wallOf, ({ radius, lean, steps }) => {
        const places = steps.map((step, i) => ({
          ...step,
          along: steps.slice(0, i + 1).reduce((sum, { up }) => sum + up, 0),
        }));
        const along = places.at(-1)?.along ?? 0;
        fc.pre(radius + along * Math.sin(lean) > 5);
        // A height and an along only tell the lean apart from each other's when the wall leans: give each kind twice.
        const kinds = places.map((p) => p.byHeight);
        fc.pre(
          kinds.every((k) => k === kinds[0]) ||
            kinds.filter((k) => k).length * kinds.filter((k) => !k).length >= 4,
        );
        const stations = places.map((p) => {
          const across = 2 * (radius + p.along * Math.sin(lean));
          const size = p.byAcross ? { across } : { girth: Math.PI * across };
          return p.byHeight ? { height: p.along * Math.cos(lean), ...size } : { along: p.along, ...size };
        });
        const found = fitStraightWall(aBlank(stations));
        expect(Math.abs(found.radius - radius)).toBeLessThan(1e-8);
        expect(Math.abs(found.halfAngle - lean)).toBeLessThan(1e-10);
        expect(Math.abs(found.length - along)).toBeLessThan(1e-8);
      }),
      { seed: 11, numRuns: 1000 },
    );
  });
});
