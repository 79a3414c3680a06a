// Source: three trade rules for the sector of a cone, see source.md.
import { test } from 'vitest';
import { flatWall, sweep } from '../../../src/unroll/flat-wall.ts';
import { expectWithin } from '../../closeness.ts';
import { laidBySlant } from '../frustum.ts';
import values from './values.json' with { type: 'json' };

const sweepDeg = (sine: number): number => (sweep(flatWall(40, sine, 0)) * 180) / Math.PI;

test('a slant of six base radii makes a sector of 60 degrees', () => {
  const { slantOverRadius, sectorDeg } = values.builderMechanic;
  expectWithin(sweepDeg(1 / slantOverRadius), sectorDeg, 1e-12);
});

test('a point angle of 90 degrees makes a sector of 254.6 degrees', () => {
  const { pointAngleDeg, sectorDeg } = values.anvilfire;
  expectWithin(sweepDeg(Math.sin((pointAngleDeg / 2) * (Math.PI / 180))), sectorDeg, 0.05);
});

test('a frustum of radii R and r and slant s makes a sector of 360 (R - r) / s degrees', () => {
  for (const [R, r, s] of [
    [40, 31, 150],
    [60, 20, 50],
  ] as const)
    expectWithin(laidBySlant(2 * r, 2 * R, s).sectorDeg, (360 * (R - r)) / s, 1e-9);
});
