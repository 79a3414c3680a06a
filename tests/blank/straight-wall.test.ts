import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bareGirthAt,
  bareRadiusAt,
  fitStraightWall,
  girthUncertaintyAt,
  heightAt,
  isCylinder,
  type StraightWall,
} from '../../src/blank/straight-wall.ts';
import { aBlank, refusalsOf } from './a-blank.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const inch = 25.4;

/** Diameter at a height above the foot, by the wall that was fitted. */
const acrossAtHeight = (wall: StraightWall, height: number): number =>
  2 * bareRadiusAt(wall, height / Math.cos(wall.halfAngle));

describe('a wall through two stations', () => {
  test('passes through both, whatever they are given by', () => {
    const wall = fitStraightWall(
      aBlank([
        { height: 0, across: 62 },
        { height: 150, girth: 270.2 },
      ]),
    );
    expect(acrossAtHeight(wall, 0)).toBeCloseTo(62, 12);
    expect(Math.PI * acrossAtHeight(wall, 150)).toBeCloseTo(270.2, 11);
    expect(heightAt(wall, wall.length)).toBeCloseTo(150, 11);
    for (const { residual, uncertainty } of wall.residuals) {
      expect(Math.abs(residual)).toBeLessThan(1e-11);
      expect(uncertainty).toBe(0);
    }
  });

  // School text "bucket" (byjus.com, NCERT type): diameters 30 and 10 cm, height 24 cm: "l = 26".
  test('has the slant length of a published bucket, 5-12-13', () => {
    const wall = fitStraightWall(
      aBlank([
        { height: 0, across: 100 },
        { height: 240, across: 300 },
      ]),
    );
    expect(wall.length).toBeCloseTo(260, 11);
    expect(Math.sin(wall.halfAngle)).toBeCloseTo(5 / 13, 14);
  });

  // Exercise at goprep.co: frustum of radii 60 and 20 cm, height 30 cm: "L = 50cm". Here wider at the foot.
  test('has the slant length of a published bucket, 3-4-5, turned over', () => {
    const wall = fitStraightWall(
      aBlank([
        { height: 0, across: 1200 },
        { height: 300, across: 400 },
      ]),
    );
    expect(wall.length).toBeCloseTo(500, 10);
    expect(Math.sin(wall.halfAngle)).toBeCloseTo(-4 / 5, 14);
  });

  // Math Central QQ.09.07 "janet1": circumferences 32 in and 44 in, 8 in apart. Published: R = 30.3, r = 22.1, rounded
  // early (0.5 % off), so 1 %.
  test('has the radii of a published lampshade, read by girth', () => {
    const wall = fitStraightWall(
      aBlank([
        { height: 0, girth: 32 * inch },
        { height: 8 * inch, girth: 44 * inch },
      ]),
    );
    const apex = bareRadiusAt(wall, 0) / Math.sin(wall.halfAngle) / inch;
    expect(Math.abs(apex / 22.1 - 1)).toBeLessThan(0.01);
    expect(Math.abs((apex + wall.length / inch) / 30.3 - 1)).toBeLessThan(0.01);
  });
});

describe('standard tapers', () => {
  // ASME B1.20.1-1983, Table 2, "basic dimensions of American National Standard taper pipe thread": inches.
  test.each([
    ['1/8', 0.36351, 0.1615, 0.3736, 0.2639, 0.38],
    ['1/2', 0.75843, 0.32, 0.77843, 0.5337, 0.79179],
    ['3/4', 0.96768, 0.339, 0.98887, 0.5457, 1.00179],
    ['1', 1.21363, 0.4, 1.23863, 0.6828, 1.2563],
    ['2', 2.26902, 0.436, 2.29627, 0.7565, 2.3163],
    ['3', 3.34062, 0.766, 3.3885, 1.2, 3.41562],
    ['6', 6.44609, 0.958, 6.50597, 1.5125, 6.54062],
    ['12', 12.53281, 1.36, 12.61781, 2.125, 12.66562],
    ['24', 23.7125, 2.375, 23.86094, 3.25, 23.91562],
  ])(
    'pipe thread %s: the wall through E0 and E2 has E1 between them and leans 1°47′',
    (_, e0, l1, e1, l2, e2) => {
      const wall = fitStraightWall(
        aBlank([
          { height: 0, across: e0 * inch },
          { height: l2 * inch, across: e2 * inch },
        ]),
      );
      // Each entry of the table is rounded to 0.00001 in.
      expect(Math.abs(acrossAtHeight(wall, l1 * inch) / inch - e1)).toBeLessThan(1.05e-5);
      // Published half angle 1°47'24", that is 1.7899 degrees; the rounding of E0 and E2 over L2 is the rest.
      expect(Math.abs(degrees(wall.halfAngle) - 1.7899)).toBeLessThan(0.00005 + degrees(0.5e-5 / l2));
    },
  );

  // Dimensions of standard tapers, littlemachineshop.com: large end, small end, length (in), angle from centre (deg).
  test.each([
    ['MT0', 0.3561, 0.252, 2, 1.4908],
    ['MT1', 0.475, 0.369, 2.125, 1.4287],
    ['MT2', 0.7, 0.572, 2.5625, 1.4307],
    ['MT3', 0.938, 0.778, 3.1875, 1.4377],
    ['MT4', 1.231, 1.02, 4.0625, 1.4876],
    ['MT5', 1.748, 1.475, 5.1875, 1.5073],
    ['MT6', 2.494, 2.116, 7.25, 1.4933],
    ['MT7', 3.27, 2.75, 10, 1.4894],
    ['JT1', 0.384, 0.33341, 0.65625, 2.2074],
    ['JT33', 0.62401, 0.56051, 1, 1.8184],
  ])('%s leans by its published angle', (_, large, small, long, angle) => {
    const wall = fitStraightWall(
      aBlank([
        { height: 0, across: small * inch },
        { height: long * inch, across: large * inch },
      ]),
    );
    expect(Math.abs(degrees(wall.halfAngle) - angle)).toBeLessThan(0.0003);
  });

  // "#8 Jarno taper is 1 inch on the large diameter, .800 inch on the small diameter and the length of taper is 4
  // inches ... .600 per foot" (hobby-machinist.com): D = N/8, d = N/10, L = N/2, so the lean is atan(1/40) for all.
  test.each([2, 8, 20])('Jarno %d leans by 0.6 in per foot across', (size) => {
    const wall = fitStraightWall(
      aBlank([
        { height: 0, across: (size / 10) * inch },
        { height: (size / 2) * inch, across: (size / 8) * inch },
      ]),
    );
    expect(Math.tan(wall.halfAngle) * 2 * 12).toBeCloseTo(0.6, 12);
  });

  // Conicity table, ISO 1119 series (encyclopedia copy): published half angles, to the second.
  test.each([
    [3, 9, 27, 44],
    [5, 5, 42, 38],
    [10, 2, 51, 45],
    [20, 1, 25, 56],
    [50, 0, 34, 23],
    [200, 0, 8, 36],
  ])('a conicity of 1:%d has its published half angle, by height and with along alike', (ratio, d, m, s) => {
    const published = d + m / 60 + s / 3600;
    const lean = Math.atan(1 / (2 * ratio));
    const byHeight = fitStraightWall(
      aBlank([
        { height: 0, across: 80 },
        { height: 120, across: 80 + 120 / ratio },
      ]),
    );
    const byAlong = fitStraightWall(
      aBlank([
        { along: 0, across: 80 },
        { along: 120 / Math.cos(lean), across: 80 + 120 / ratio },
      ]),
    );
    expect(Math.abs(degrees(byHeight.halfAngle) - published)).toBeLessThan(1 / 3600);
    expect(byAlong.halfAngle).toBeCloseTo(byHeight.halfAngle, 13);
    expect(byAlong.length).toBeCloseTo(byHeight.length, 11);
  });
});

describe('a nearly upright wall', () => {
  test.each([1e-3, 1e-6, 1e-9, 1e-12, 0, -1e-9])(
    'leaning %d radians keeps its girth to the last digits',
    (lean) => {
      const wall = fitStraightWall(
        aBlank([
          { height: 0, across: 80 },
          { height: 150, across: 80 + 300 * Math.tan(lean) },
        ]),
      );
      expect(Math.abs(wall.radius - 40)).toBeLessThan(2e-14);
      expect(Math.abs(wall.halfAngle - lean)).toBeLessThan(2e-16);
      expect(Math.abs(bareRadiusAt(wall, 75 / Math.cos(lean)) - (40 + 75 * Math.tan(lean)))).toBeLessThan(
        2e-14,
      );
      expect(Math.abs(wall.length - 150 / Math.cos(lean))).toBeLessThan(1e-12);
      expect(isCylinder(wall)).toBe(2 * Math.PI * 150 * Math.abs(lean) < 1e-6);
    },
  );
});

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

describe('how sure the girth is', () => {
  /** Seeded uniform numbers in (0, 1): mulberry32. */
  const uniform = (seed: number) => (): number => {
    seed = (seed + 0x6d2b79f5) | 0;
    let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  /** Box and Muller. */
  const normal = (random: () => number) => (): number =>
    Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());

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

describe('stations that are no wall', () => {
  const rules = (stations: Parameters<typeof aBlank>[0], rest = {}) =>
    refusalsOf(() => fitStraightWall(aBlank(stations, rest))).map(({ rule, where }) => [rule, where.key]);

  test.each([
    ['no station', [], 'few-stations', 'stations'],
    ['one station', [{ height: 0, across: 62 }], 'few-stations', 'stations'],
    [
      'one height',
      [
        { height: 40, across: 62 },
        { height: 40, across: 63 },
      ],
      'one-height',
      'stations',
    ],
    [
      'lip first',
      [
        { height: 150, across: 86 },
        { height: 0, across: 62 },
      ],
      'upside-down',
      'stations[1].height',
    ],
    [
      'a zero girth',
      [
        { height: 0, girth: 0 },
        { height: 9, girth: 9 },
      ],
      'not-a-length',
      'stations[0].girth',
    ],
    [
      'a negative diameter',
      [
        { height: 0, across: 9 },
        { height: 9, across: -9 },
      ],
      'not-a-length',
      'stations[1].across',
    ],
    [
      'a negative height',
      [
        { height: -1, across: 9 },
        { height: 9, across: 9 },
      ],
      'not-a-length',
      'stations[0].height',
    ],
    [
      'NaN',
      [
        { height: 0, across: Number.NaN },
        { height: 9, across: 9 },
      ],
      'not-a-length',
      'stations[0].across',
    ],
    [
      'a plate',
      [
        { height: 0, across: 50 },
        { height: 1, across: 100 },
      ],
      'too-steep',
      'stations',
    ],
    [
      'wider than the wall is long',
      [
        { along: 0, across: 50 },
        { along: 10, across: 71 },
      ],
      'too-steep',
      'stations',
    ],
    [
      'a point below the foot',
      [
        { height: 50, across: 10 },
        { height: 100, across: 60 },
      ],
      'meets-axis',
      'stations',
    ],
    [
      'one place by height and by along',
      [
        { height: 40, across: 60 },
        { along: 40, across: 61 },
      ],
      'one-height',
      'stations',
    ],
    [
      'no lean that suits',
      [
        { height: 100, across: 60 },
        { along: 101, across: 90 },
      ],
      'unsettled',
      'stations',
    ],
  ])('are refused: %s', (_, stations, rule, key) => {
    expect(rules(stations)).toContainEqual([rule, key]);
  });

  test('are refused when a height lies under an along once the lean is known', () => {
    const stations = [
      { height: 0, across: 60 },
      { along: 50, across: 62 },
      { height: 40, across: 61.6 },
      { height: 90, across: 64 },
    ];
    expect(rules(stations)).toEqual([['upside-down', 'stations[2].height']]);
  });

  test('are refused when the tape is thicker than what it read', () => {
    expect(
      rules(
        [
          { height: 0, girth: 3 },
          { height: 9, girth: 300 },
        ],
        { tape: 1 },
      ),
    ).toEqual([['tape-too-thick', 'stations[0].girth']]);
  });

  test('are refused all at once', () => {
    expect(
      rules([
        { height: 9, girth: 0 },
        { height: 5, across: -1 },
      ]),
    ).toEqual([
      ['not-a-length', 'stations[0].girth'],
      ['not-a-length', 'stations[1].across'],
      ['upside-down', 'stations[1].height'],
    ]);
  });

  test('two readings at one height are no fault beside a third elsewhere', () => {
    const wall = fitStraightWall(
      aBlank([
        { height: 0, across: 61 },
        { height: 0, across: 63 },
        { height: 80, across: 70 },
      ]),
    );
    expect(wall.radius).toBeCloseTo(31, 12);
  });

  test('a tall and far-off pair settles too', () => {
    const wall = fitStraightWall(
      aBlank([
        { height: 9990, across: 800 },
        { height: 9991, across: 800.01 },
      ]),
    );
    expect(acrossAtHeight(wall, 9990)).toBeCloseTo(800, 9);
  });
});
