import { describe, expect, test } from 'vitest';
import { bareGirthAt, fitStraightWall, girthUncertaintyAt } from '../../src/blank/straight-wall.ts';
import { aBlank } from './a-blank.ts';
import { normal, uniform } from './random.ts';

describe('how sure the girth is', () => {
  // JCGM 101:2008: propagation of distributions by a Monte Carlo method. 20 000 draws give a standard deviation to
  // 0.5 %; 2.5 % is five times that.
  test.each([
    [
      'two stations',
      [
        { height: 0, across: 62 },
        { height: 150, girth: 270.2 },
      ],
      0,
    ],
    [
      'four stations, mixed',
      [
        { height: 10, across: 64 },
        { along: 55, girth: 227 },
        { height: 100, girth: 244 },
        { along: 150, across: 86 },
      ],
      0,
    ],
    [
      'a steep wall whose heights are read too',
      [
        { height: 10, girth: 400 },
        { height: 40, girth: 340 },
        { along: 90, girth: 265 },
      ],
      0.4,
    ],
  ] as const)('agrees with 20 000 noisy readings of %s', (_, given, heightReading) => {
    const reading = 0.5;
    const readings: readonly { height?: number; along?: number; across?: number; girth?: number }[] = given;
    const wall = fitStraightWall(aBlank(readings, { reading, heightReading }));
    // Exact readings of the fitted wall, so that noise is all that is added.
    const exact = wall.residuals.map((r, i) => ({
      given: readings[i] ?? {},
      girth: r.measured - r.residual,
    }));
    const draw = normal(uniform(7));
    const draws = Array.from({ length: 20_000 }, () => {
      const noisy = exact.map(({ given: { height, along, across }, girth }) => {
        const up = draw() * heightReading;
        const place = height === undefined ? { along: (along ?? 0) + up } : { height: height + up };
        const size =
          across === undefined
            ? { girth: girth + draw() * reading }
            : { across: girth / Math.PI + draw() * reading };
        return { ...place, ...size };
      });
      return fitStraightWall(aBlank(noisy, { reading, heightReading }));
    });
    const isByHeight = readings.every(({ height }) => height !== undefined);
    for (const along of [0, wall.length / 2, wall.length]) {
      const girths = draws.map((w) =>
        bareGirthAt(w, isByHeight ? (along * Math.cos(wall.halfAngle)) / Math.cos(w.halfAngle) : along),
      );
      const mean = girths.reduce((a, b) => a + b, 0) / girths.length;
      const deviation = Math.sqrt(girths.reduce((sum, g) => sum + (g - mean) ** 2, 0) / (girths.length - 1));
      expect(Math.abs(girthUncertaintyAt(wall, along) / deviation - 1)).toBeLessThan(0.025);
    }
  });

  // JCGM 100:2008, 4.3.7: within ± a, the standard uncertainty is a/√3. A calliper of ± 0.1 mm: 0.0577 mm across,
  // 0.1814 mm around; a tape of ± 0.5 mm: 0.2887 mm around (references, section 10, computed there).
  test.each([
    ['across', 0.1 / Math.sqrt(3), 0.18138],
    ['girth', 0.5 / Math.sqrt(3), 0.288675],
  ] as const)('at a station of two read by %s is that of its own reading', (kind, reading, around) => {
    const wall = fitStraightWall(
      aBlank(
        [
          { height: 0, [kind]: 80 },
          { height: 100, [kind]: 90 },
        ],
        { reading },
      ),
    );
    expect(girthUncertaintyAt(wall, 0)).toBeCloseTo(around, 5);
    expect(girthUncertaintyAt(wall, wall.length)).toBeCloseTo(around, 5);
    expect(girthUncertaintyAt(wall, wall.length / 2)).toBeCloseTo(around / Math.sqrt(2), 5);
  });

  test('a reading said to be perfect leaves next to no doubt, and fits as any other', () => {
    const stations = [
      { height: 0, across: 62 },
      { height: 70, girth: 230 },
      { height: 150, girth: 270.2 },
    ];
    const perfect = fitStraightWall(aBlank(stations, { reading: 0 }));
    const usual = fitStraightWall(aBlank(stations));
    expect(girthUncertaintyAt(perfect, 0)).toBeLessThan(1e-5);
    expect(perfect.radius).toBeCloseTo(usual.radius, 10);
  });

  // A tape of thickness t around a diameter D reads pi (D + t) (derived from its mid-plane; references, section 10).
  test('a thick tape is taken off the girths it read, and off nothing else', () => {
    const wall = fitStraightWall(
      aBlank(
        [
          { height: 0, girth: Math.PI * 80.1 },
          { height: 100, across: 80 },
        ],
        { tape: 0.1 },
      ),
    );
    expect(wall.radius).toBeCloseTo(40, 12);
    expect(wall.halfAngle).toBeCloseTo(0, 14);
  });
});
