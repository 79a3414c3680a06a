// The nearest place, held against looking everywhere.
import { expect, test } from 'vitest';
import { cubic, type Segment } from '../../src/geometry/contour.ts';
import { NearestFinder } from '../../src/geometry/nearest.ts';
import { distance } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { expectWithin } from '../closeness.ts';
import { randomFrom } from './drawn.ts';

const finderOf = (segment: Segment) => new NearestFinder([{ closed: false, segments: [segment] }]);

test('a place on a curve is at no distance from it, however tight it turns there', () => {
  // Among these are hairpins: the curve comes and goes within a thirtieth of its parameter, where the nearest place used
  // to be missed by a tenth of a mm.
  const random = randomFrom(21);
  const at = () => ({ x: 40 * random(), y: 40 * random() });
  for (let round = 0; round < 120; round++) {
    const curve = cubic(at(), at(), at(), at());
    const finder = finderOf(curve);
    for (let i = 0; i <= 300; i++)
      expectWithin(finder.find(pointAt(curve, i / 300), 1)?.distance ?? 9, 0, 1e-5, `${round}, ${i}`);
  }
});

test('of random places and curves is never beaten by looking at a thousand places of the curve', () => {
  const random = randomFrom(17);
  const at = () => ({ x: 40 * random(), y: 40 * random() });
  for (let round = 0; round < 200; round++) {
    const curve = cubic(at(), at(), at(), at());
    const p = at();
    const looked = Math.min(...Array.from({ length: 1001 }, (_, i) => distance(pointAt(curve, i / 1000), p)));
    const found = finderOf(curve).find(p, 100)?.distance ?? Number.POSITIVE_INFINITY;
    expect(found).toBeLessThanOrEqual(looked + 1e-9);
    expect(found).toBeGreaterThan(looked - 0.2);
  }
});
