// Areas by the shoelace formula; what crosses or touches itself is left to the polygon engine, held against it.
import { expect, test } from 'vitest';
import { polygon, reverseContour } from '../../src/geometry/contour.ts';
import { shapeArea, signedArea } from '../../src/geometry/measure.ts';
import { plainShape } from '../../src/geometry/plain-contour.ts';
import { filledShapes } from '../../src/geometry/regions.ts';
import { chordTolerance } from '../../src/geometry/tolerance.ts';
import { blob, randomFrom } from './drawn.ts';

const at = (...points: readonly (readonly [number, number])[]) => polygon(points.map(([x, y]) => ({ x, y })));
const square = at([0, 0], [4, 0], [4, 3], [0, 3]);

test('a contour that crosses nothing is its own area, run the way that outer ones run', () => {
  for (const contour of [square, reverseContour(square)]) {
    const shape = plainShape([contour], chordTolerance);
    expect(shape && shapeArea(shape)).toBe(12);
    expect(shape?.contours[0] && signedArea(shape.contours[0])).toBe(12);
  }
});

test.each([
  ['crosses itself', [at([0, 0], [4, 3], [4, 0], [0, 3])]],
  ['runs straight back', [at([0, 0], [4, 0], [2, 0], [2, 3])]],
  ['touches itself with a node', [at([0, 0], [4, 0], [4, 3], [2, 0], [0, 3])]],
  ['has a side that rounding would lose', [at([0, 0], [4, 0], [4, 1e-6], [4, 3], [0, 3])]],
  ['is two', [square, square]],
  ['is thinner than any film', [at([0, 0], [40, 0], [40, 0.001])]],
])('one that %s is left to the polygon engine', (_, contours) => {
  expect(plainShape(contours, chordTolerance)).toBeUndefined();
});

test('curves are told as the polygon engine tells them', () => {
  const random = randomFrom(11);
  let told = 0;
  for (let i = 0; i < 60; i++) {
    const contour = blob(random, { x: 0, y: 0 }, 5);
    const shape = plainShape([contour], 0.05);
    if (!shape) continue;
    told++;
    const filled = filledShapes([contour], 'nonzero', 0.05);
    expect(filled).toHaveLength(1);
    expect(filled[0] && shapeArea(filled[0])).toBeCloseTo(shapeArea(shape), 2);
  }
  expect(told).toBeGreaterThan(30);
});
