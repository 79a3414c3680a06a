import { describe, expect, test } from 'vitest';
import {
  bareRadiusAt,
  fitStraightWall,
  heightAt,
  isCylinder,
  type StraightWall,
} from '../../src/blank/straight-wall.ts';
import { aBlank } from './a-blank.ts';

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
