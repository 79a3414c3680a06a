// Film cut off along an edge that all but runs along it, against Clipper 6 (clipper-lib).
import { expect, test } from 'vitest';
import { parsePathData } from '../../../src/drawing/path-data.ts';
import { polygon } from '../../../src/geometry/contour.ts';
import { filledShapes } from '../../../src/geometry/regions.ts';
import { cutOff } from '../../../src/pattern/lay/cut-off.ts';
import { doubledLines } from '../../../src/prove/checks/check-doubled.ts';
import { expectWithin } from '../../closeness.ts';
import { chordPoints } from '../../geometry/drawn.ts';
import { clipperArea } from '../../geometry/libraries.ts';

const border = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 20 },
  { x: 0, y: 20 },
];

test('what leaves an outline at less than a degree ends without a spike, and is else what lies within', () => {
  // Above 9 mm film goes on past an edge that leaves the outline at 12 mm, a third of a degree off it.
  const shapes = filledShapes(parsePathData('M2 5H12V20L10.02 16L9.985 9H2Z'), 'nonzero', 0.003);
  const spiked = filledShapes(parsePathData('M2 5H10V12L9.985 9H2Z'), 'nonzero', 0.003);
  const cut = cutOff(shapes, { contours: [polygon(border)] });
  expect(doubledLines(spiked.flatMap(({ contours }) => contours))).toBeGreaterThan(0);
  expect(doubledLines(cut.flatMap(({ contours }) => contours))).toBe(0);
  const rings = (of: typeof cut) =>
    of.flatMap(({ contours }) => contours.map((contour) => chordPoints(contour, 0.001)));
  const within = clipperArea('intersection', rings(shapes), [border], 'nonzero');
  const left = clipperArea('union', rings(cut), [], 'nonzero');
  expectWithin(left, within, 0.1);
  expect(left).toBeGreaterThan(20);
});
