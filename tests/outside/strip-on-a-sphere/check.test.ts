// Source: a strip on a sphere, see source.md.
import { describe, expect, test } from 'vitest';
import { goreStrain } from '../../../src/unroll/gores.ts';
import { leastStretchCone, type RadiusAlong } from '../../../src/unroll/strain.ts';
import { expectWithin } from '../../closeness.ts';
import values from './values.json' with { type: 'json' };

const strip = (width: number, radius: number): RadiusAlong[] =>
  Array.from({ length: 401 }, (_, i) => {
    const along = (width * i) / 400;
    return { along, radius: radius * Math.cos((along - width / 2) / radius) };
  });

describe.each(values.rows)('a strip $width mm wide on a ball of radius $radius mm', (row) => {
  const wall = strip(row.width, row.radius);
  const exact = row.exact / 100;

  test('with its edges true is stretched in the middle by the published edge excess over what is left', () => {
    const { stretch, gathered, cone } = leastStretchCone(wall, 0);
    expectWithin(stretch / (1 + stretch), exact, 5e-7);
    expectWithin(stretch, exact / (1 - exact), 6e-7);
    expect(gathered).toBe(0);
    expectWithin(cone.sine, 0, 1e-12);
  });

  test('with its middle true is gathered at the edges by the published excess', () => {
    const { stretch, gathered } = leastStretchCone(wall, 0.2);
    expectWithin(gathered, exact, 5e-7);
    expectWithin(stretch, 0, 1e-12);
  });

  test('is what a gore of that width is held to have, to first order', () => {
    const count = (2 * Math.PI * row.radius) / row.width;
    const ball = { at: () => ({ radius: row.radius, slope: 0 }) };
    const strain = goreStrain(ball, () => 1 / row.radius ** 2, count, [0]);
    expectWithin(strain, row.edge / 100, 1e-9);
    expectWithin(strain / 3, row.middle / 100, 5e-6);
    expectWithin((strain * 2) / 3, row.gathered / 100, 5e-6);
  });
});
