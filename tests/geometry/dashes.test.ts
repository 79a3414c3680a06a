// Dashes of no length. Source: SVG 2, 13.5.6 'stroke-dasharray': they are drawn where they have caps, along the line.
import { expect, test } from 'vitest';
import { polyline } from '../../src/geometry/contour.ts';
import { dashed } from '../../src/geometry/dashes.ts';
import { expectWithin } from '../closeness.ts';

test('a dot is a millionth of the pen long, and runs the way of its line', () => {
  const dots = dashed(
    polyline([
      { x: 0, y: 0 },
      { x: 0, y: 20 },
    ]),
    { lengths: [0, 5], offset: 2 },
    4,
  );
  expect(dots.map(({ segments }) => segments[0]?.from.y)).toEqual([3, 8, 13, 18]);
  for (const { segments } of dots) {
    const [first] = segments;
    expectWithin((first?.to.y ?? 0) - (first?.from.y ?? 0), 4e-6, 1e-12, 'length of a dot');
    expect(first?.to.x).toBe(0);
  }
});
