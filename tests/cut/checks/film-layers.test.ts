import { expect, test } from 'vitest';
import { maskLayer } from '../../../src/cut/checks/film-layers.ts';
import { contourLength } from '../../../src/geometry/arc-length.ts';
import { type Contour, polygon, reverseContour, type Shape } from '../../../src/geometry/contour.ts';
import { shapeArea, signedArea } from '../../../src/geometry/measure.ts';
import { clippedShapes } from '../../../src/geometry/regions.ts';
import { chordTolerance } from '../../../src/geometry/tolerance.ts';

const square = (x: number, y: number, side: number): Contour =>
  polygon([
    { x, y },
    { x: x + side, y },
    { x: x + side, y: y + side },
    { x, y: y + side },
  ]);
const one = (contour: Contour): Shape => ({ contours: [contour] });

/** Dots that come near nothing, either way around; a ring; a frame with a dot in it; four squares that touch at their corners. */
const shapes: Shape[] = [
  one(square(5, 5, 2)),
  one(reverseContour(square(10, 5, 2))),
  { contours: [square(20, 5, 6), reverseContour(square(22, 7, 2))] },
  { contours: [square(30, 5, 12), reverseContour(square(32, 7, 8))] },
  one(square(35, 10, 2)),
  ...[
    [62, 5],
    [60, 7],
    [64, 7],
    [62, 9],
  ].map(([x = 0, y = 0]) => one(square(x, y, 2))),
];

const told = (regions: readonly Shape[]) => ({
  areas: regions.map(shapeArea).sort((a, b) => a - b),
  holes: regions.map(({ contours }) => contours.length - 1).sort((a, b) => a - b),
  edge: regions.flatMap(({ contours }) => contours).reduce((sum, one) => sum + contourLength(one), 0),
});

test('a mask is the sheet less each area, as the engine cuts it of all together', () => {
  const size = { width: 70, height: 20 };
  const mask = maskLayer({ name: 'a', colour: '#000', shapes }, size).shapes;
  const sheet = polygon([
    { x: -20, y: -20 },
    { x: 90, y: -20 },
    { x: 90, y: 40 },
    { x: -20, y: 40 },
  ]);
  const together = told(clippedShapes([one(sheet)], shapes, 'difference', chordTolerance));
  const got = told(mask);
  expect(got.holes).toEqual(together.holes);
  expect(got.edge).toBeCloseTo(together.edge, 9);
  expect(got.areas).toHaveLength(together.areas.length);
  for (const [i, area] of got.areas.entries()) expect(area).toBeCloseTo(together.areas[i] ?? 0, 9);
  // By hand: the ring's middle, the ground in the frame less the dot, and all that is left.
  expect(got.areas.map((area) => Math.round(area))).toEqual([4, 60, 6600 - 4 - 4 - 36 - 144 - 16]);
  for (const { contours } of mask) {
    const [outer = 0, ...holes] = contours.map(signedArea);
    expect(outer).toBeGreaterThan(0);
    for (const hole of holes) expect(hole).toBeLessThan(0);
  }
});
