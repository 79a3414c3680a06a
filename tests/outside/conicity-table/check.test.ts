// Source: conicity table, ISO 1119 series, see source.md.
import { describe, test } from 'vitest';
import { expectWithin } from '../../closeness.ts';
import { laidByHeight } from '../frustum.ts';
import values from './values.json' with { type: 'json' };

const seconds = ([degrees, minutes, rest]: readonly number[]): number =>
  (degrees ?? Number.NaN) * 3600 + (minutes ?? Number.NaN) * 60 + (rest ?? Number.NaN);

describe.each(values.rows)('conicity $conicity', ({ parts, halfAngle, coneAngle }) => {
  const length = 100;
  const large = 80;

  test.each([
    { foot: large, lip: large - length / parts },
    { foot: large - length / parts, lip: large },
  ])('has the published angles and their sector: foot $foot, lip $lip', ({ foot, lip }) => {
    const { wall, sectorDeg } = laidByHeight(foot, lip, length);
    const half = (Math.asin(Math.abs(wall.sine)) * 180 * 3600) / Math.PI;
    expectWithin(half, seconds(halfAngle), 1, 'half angle in seconds');
    expectWithin(2 * half, seconds(coneAngle), 1, 'cone angle in seconds');
    const published = 360 * Math.sin((seconds(halfAngle) / 3600) * (Math.PI / 180));
    // A second of half angle is 360 · 4.85e-6 = 0.0017 degrees of sector.
    expectWithin(sectorDeg, published, 0.0018, 'sector');
  });
});
