// Source: ASTM C143/C143M-20, 5.1, see source.md.
import { describe, test } from 'vitest';
import { expectWithin, expectWithinPart } from '../../closeness.ts';
import { laidByHeight } from '../frustum.ts';
import values from './values.json' with { type: 'json' };

describe.each([
  { unit: 'mm', ...values.mm },
  { unit: 'inches', ...values.inches },
])('the slump cone in $unit', ({ base, top, height }) => {
  const laid = laidByHeight(base, top, height);

  test('has the sector of a 1:3 cone: by the published half angle, and 360 / sqrt(37) degrees', () => {
    const [degrees = Number.NaN, minutes = Number.NaN, seconds = Number.NaN] = values.halfAngle;
    const half = ((degrees + minutes / 60 + seconds / 3600) * Math.PI) / 180;
    expectWithin(laid.sectorDeg, 360 * Math.sin(half), 0.0018);
    expectWithin(laid.sectorDeg, 360 / Math.sqrt(37), 1e-9);
  });

  test('has an inner radius equal to its slant, and an outer one of twice that', () => {
    expectWithinPart(laid.innerRadius, laid.slant, 1e-12);
    expectWithinPart(laid.outerRadius, 2 * laid.slant, 1e-12);
  });

  test('has the lateral area of half the circumferences times the slant', () => {
    expectWithinPart(
      laid.lateralArea,
      ((Math.PI * (base + top)) / 2) * Math.hypot(height, (base - top) / 2),
      1e-7,
    );
  });
});
