// Source: two school exercises, see source.md.
import { describe, test } from 'vitest';
import { expectWithin, expectWithinPart } from '../../closeness.ts';
import { laidByHeight } from '../frustum.ts';
import values from './values.json' with { type: 'json' };

/** The texts reckon with pi = 3.14. */
const byTheirPi = (area: number): number => (area * values.pi) / Math.PI;

describe('the bucket of 30 and 10, 24 high', () => {
  const { foot, lip, height, ...published } = values.byjus;
  const laid = laidByHeight(foot, lip, height);

  test('has a slant of 26, radii of 39 and 13 and a sector of 1800/13 degrees', () => {
    expectWithin(laid.slant, published.slant, 1e-12);
    expectWithin(laid.outerRadius, published.outerRadius, 1e-9);
    expectWithin(laid.innerRadius, published.innerRadius, 1e-9);
    expectWithin(laid.sectorDeg, published.sectorDegTimes13 / 13, 1e-9);
  });

  test('has the published area of wall and base', () => {
    const base = Math.PI * (foot / 2) ** 2;
    expectWithin(byTheirPi(laid.lateralArea + base), published.areaWithBase, 0.05);
  });
});

describe('the bucket of radii 60 and 20, 30 high, a sector of more than half a turn', () => {
  const { foot, lip, height, ...published } = values.goprep;

  test.each([
    { bottom: foot, top: lip },
    { bottom: lip, top: foot },
  ])('has the published slant, area, radii and sector: foot $bottom, lip $top', ({ bottom, top }) => {
    const laid = laidByHeight(bottom, top, height);
    expectWithin(laid.slant, published.slant, 1e-12);
    expectWithinPart(byTheirPi(laid.lateralArea), published.lateralArea, 1e-7);
    expectWithin(laid.outerRadius, published.outerRadius, 1e-9);
    expectWithin(laid.innerRadius, published.innerRadius, 1e-9);
    expectWithin(laid.sectorDeg, published.sectorDeg, 1e-9);
  });
});
