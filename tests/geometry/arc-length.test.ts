import { expect, test } from 'vitest';
import { contourLength, segmentLength } from '../../src/geometry/arc-length.ts';
import { cubic } from '../../src/geometry/contour.ts';
import { expectWithin, expectWithinPart } from '../closeness.ts';
import { blob, box, circle, randomFrom } from './drawn.ts';
import { exactData, librarianLength } from './libraries.ts';

test('straight lines and a circle have the lengths of their closed forms', () => {
  expectWithin(contourLength(box(3, 4, 20, 10)), 60, 1e-12);
  expectWithin(contourLength(circle({ x: 0, y: 0 }, 10, 16)), 2 * Math.PI * 10, 1e-5);
});

test('curves are as long as svg-path-properties says', () => {
  const random = randomFrom(11);
  for (let i = 0; i < 40; i++) {
    const contour = blob(random, { x: 50 * random(), y: 50 * random() }, 1 + 20 * random());
    expectWithinPart(contourLength(contour), librarianLength(exactData([contour])), 1e-4);
  }
});

// From a cusp to itself and back: x = 3 t (1 - t), along one line, so twice its reach of 3/4 of the handle.
test('a curve that turns back on itself is measured both ways', () => {
  const there = cubic({ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 10, y: 0 }, { x: 0, y: 0 });
  expectWithin(segmentLength(there), 15, 1e-4);
  expect(segmentLength(there, 1e-3)).toBeGreaterThan(14.9);
});
