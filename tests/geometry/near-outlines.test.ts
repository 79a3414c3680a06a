// What of a net lies within outlines, its holes away from them left out of the cutting, against Clipper 6 (clipper-lib), which takes
// all of them through.
import { expect, test } from 'vitest';
import { parsePathData } from '../../src/drawing/path-data.ts';
import type { Shape } from '../../src/geometry/contour.ts';
import { directed, shapeArea } from '../../src/geometry/measure.ts';
import { outlinesOf, shapesWithin } from '../../src/geometry/near-outlines.ts';
import { filledShapes } from '../../src/geometry/regions.ts';
import { expectWithin } from '../closeness.ts';
import { chordPoints } from './drawn.ts';
import { clipperArea } from './libraries.ts';

const ringsOf = (shapes: readonly Shape[]) =>
  shapes.flatMap((shape) => directed(shape).map((contour) => chordPoints(contour, 0.0005)));

const squares = Array.from(
  { length: 50 },
  (_, i) => `M${2 + 10 * (i % 10)} ${2 + 10 * Math.floor(i / 10)}h6v6h-6Z`,
);
const net = filledShapes(parsePathData(`M0 0H100V50H0Z${squares.join('')}`), 'evenodd', 0.003);

// An angle and a square of sheet: holes that lie on neither lie in the angle's box.
const sheet = parsePathData('M-5 -5H55V14.5H24.5V45H-5ZM70.5 -5H94.5V24.5H70.5Z');

test('a net within an angle of sheet has its holes there and none beside it', () => {
  const within = shapesWithin(outlinesOf(sheet), net);
  const wanted = clipperArea(
    'intersection',
    ringsOf(net),
    ringsOf(filledShapes(sheet, 'evenodd', 0.003)),
    'nonzero',
  );
  expectWithin(
    within.reduce((sum, shape) => sum + shapeArea(shape), 0),
    wanted,
    0.01,
  );
  expect(within).toHaveLength(2);
});

test('shapes away from every edge come back as they are, those beside the sheet not at all', () => {
  const discs = filledShapes(parsePathData('M5 5h4v4h-4ZM40 30h4v4h-4ZM80 10h4v4h-4Z'), 'evenodd', 0.003);
  const [first, , third] = discs;
  expect(shapesWithin(outlinesOf(sheet), discs)).toEqual([first, third]);
});
