// Pieces drawn edge to edge, or a hair apart, are one; held against the areas that Clipper 6 (clipper-lib) gives.
import { describe, expect, test } from 'vitest';
import { parsePathData } from '../../../src/drawing/path-data.ts';
import type { Shape } from '../../../src/geometry/contour.ts';
import { filledShapes } from '../../../src/geometry/regions.ts';
import { withoutAbutting } from '../../../src/pattern/period/abutting.ts';
import { expectWithin } from '../../closeness.ts';
import { chordPoints } from '../../geometry/drawn.ts';
import { clipperArea } from '../../geometry/libraries.ts';

const pieces = (...data: string[]): Shape[] =>
  data.flatMap((d) => filledShapes(parsePathData(d), 'nonzero', 0.003));
const rings = (shapes: readonly Shape[]) =>
  shapes.flatMap(({ contours }) => contours.map((contour) => chordPoints(contour, 0.001)));
const area = (shapes: readonly Shape[]) => clipperArea('union', rings(shapes), [], 'nonzero');

describe('two pieces', () => {
  test.each([
    { name: 'edge to edge', right: 'M10 0H20V10H10Z' },
    { name: 'a hair apart', right: 'M10.004 0H20V10H10.004Z' },
    { name: 'a hair apart at one end', right: 'M10.008 0H20V10H10.0003Z' },
    { name: 'overlapping by a hair', right: 'M9.996 0H20V10H9.996Z' },
    { name: 'a hair apart along a part of either', right: 'M10.004 4H20V16H10.004Z' },
  ])('$name are one without a gap', ({ right }) => {
    const drawn = pieces('M0 0H10V10H0Z', right);
    const joined = withoutAbutting(drawn);
    expect(joined).toHaveLength(1);
    expect(joined[0]?.contours).toHaveLength(1);
    // The gap is filled and nothing else: a hair as long as what faces.
    expect(area(joined)).toBeGreaterThanOrEqual(area(drawn) - 1e-6);
    expectWithin(area(joined), area(drawn), 0.09);
    expectWithin(clipperArea('difference', rings(drawn), rings(joined), 'nonzero'), 0, 1e-4);
  });

  test.each([
    { name: 'farther apart than the precision', right: 'M10.02 0H20V10H10.02Z' },
    { name: 'that touch at a corner', right: 'M10 10H20V20H10Z' },
    { name: 'a hair apart at a corner alone', right: 'M10.004 9.98H20V20H10.004Z' },
    { name: 'on one another', right: 'M4 4H6V6H4Z' },
  ])('$name stay two', ({ right }) => {
    const drawn = pieces('M0 0H10V10H0Z', right);
    expect(withoutAbutting(drawn)).toBe(drawn);
  });
});

test('a slit a hair wide within a piece is closed; a hair of film within one is left as it is', () => {
  const slit = pieces('M0 0H10V4.998L5 4.9985V5.0015L10 5.002V10H0Z');
  const closed = withoutAbutting(slit);
  expect(closed).toHaveLength(1);
  expectWithin(area(closed), 100, 1e-3);
  const hair = pieces('M0 0H4V4.998H8V0H12V10H8V5.002H4V10H0Z');
  expect(withoutAbutting(hair)).toBe(hair);
});
