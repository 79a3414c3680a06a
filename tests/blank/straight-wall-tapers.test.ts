import { describe, expect, test } from 'vitest';
import { bareRadiusAt, fitStraightWall, type StraightWall } from '../../src/blank/straight-wall.ts';
import { aBlank } from './a-blank.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const inch = 25.4;

/** Diameter at a height above the foot, by the wall that was fitted. */
const acrossAtHeight = (wall: StraightWall, height: number): number =>
  2 * bareRadiusAt(wall, height / Math.cos(wall.halfAngle));

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
