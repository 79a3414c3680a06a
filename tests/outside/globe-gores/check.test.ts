// Source: globe gores, published and as map projections; see source.md.
import proj4 from 'proj4';
import { describe, expect, test } from 'vitest';
import type { Contour } from '../../../src/geometry/contour.ts';
import { directionAt } from '../../../src/geometry/segment.ts';
import { type GoreLevels, goreOutline, halfWidth } from '../../../src/unroll/gores.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import { ball, nearestOn } from '../../unroll/gore-walls.ts';
import values from './values.json' with { type: 'json' };

const R = 60;
const degrees = Math.PI / 180;
const globe = (count: number, levels: GoreLevels): Contour =>
  goreOutline(ball(R), { count, levels, spacing: 4, band: { from: 0, to: Math.PI * R } });

/** The angle between the two edges that leave the outline's first point, which is a pole. */
function tipDegrees(outline: Contour): number {
  const [first, last] = [outline.segments[0], outline.segments.at(-1)];
  if (!first || !last) return Number.NaN;
  const [out, back] = [directionAt(first, 0), directionAt(last, 1)];
  return (Math.atan2(out.x, -out.y) - Math.atan2(-back.x, back.y)) / degrees;
}

describe('a globe of sinusoidal gores', () => {
  test.each(values.tips)('has the published tip angle for $count gores', ({ count, degrees: wanted }) => {
    expectWithin(tipDegrees(globe(count, 'straight')), wanted, 6e-4);
  });

  test('has the published tip angle where one lobe is the whole globe', () => {
    expectWithin(tipDegrees(globe(1, 'straight')), values.wholeLobeDegrees, 6e-4);
  });

  test('of the customary number has gores as wide at the equator as so many degrees of it', () => {
    const { count, widthDegrees } = values.customary;
    expectWithin(2 * halfWidth(R, count), R * widthDegrees * degrees, 1e-12);
  });
});

describe.each([
  { levels: 'straight', projection: 'sinu' },
  { levels: 'arcs', projection: 'poly' },
] as const)('gores with levels $levels', ({ levels, projection }) => {
  test.each([4, 6, 8, 12, 24])(`have the edge that ${projection} maps, for %i of them`, (count) => {
    const edge = globe(count, levels).segments;
    let worst = 0;
    for (let latitude = -89; latitude <= 89; latitude += 1.7) {
      const [x = Number.NaN, y = Number.NaN] = proj4(
        `+proj=longlat +R=${R} +no_defs`,
        `+proj=${projection} +lat_0=0 +lon_0=0 +x_0=0 +y_0=0 +R=${R} +units=m +no_defs`,
        [180 / count, latitude],
      );
      // Our foot end is the south pole, y down.
      worst = Math.max(worst, nearestOn(edge, { x, y: (-Math.PI / 2) * R - y }));
    }
    expectAtMost(worst, 2e-4);
    expect(worst).toBeGreaterThan(0);
  });
});
