import { describe, expect, test } from 'vitest';
import {
  type Contour,
  cubic,
  line,
  polygon,
  reverseContour,
  type Shape,
} from '../../src/geometry/contour.ts';
import { directed, shapeArea } from '../../src/geometry/measure.ts';
import { NearestFinder } from '../../src/geometry/nearest.ts';
import { type Corners, closedUp, offsetShapes, openedUp } from '../../src/geometry/offset.ts';
import { fitTolerance } from '../../src/geometry/tolerance.ts';
import { expectAtMost, expectWithin, expectWithinPart } from '../closeness.ts';
import { blob, box, chordPoints, circle, randomFrom, sampled } from './drawn.ts';
import { clipperArea, clipperOffset } from './libraries.ts';

const shape = (...contours: Contour[]): Shape => ({ contours });
const total = (shapes: readonly Shape[]): number => shapes.reduce((sum, one) => sum + shapeArea(one), 0);
const grown = (shapes: readonly Shape[], by: number, corners?: Corners) =>
  total(offsetShapes(shapes, by, corners));

/** How far the edge of a result is from the edge it was moved from, nearest and farthest. */
function distances(shapes: readonly Shape[], result: readonly Shape[]): { least: number; most: number } {
  const finder = new NearestFinder(shapes.flatMap(({ contours }) => [...contours]));
  const places = result.flatMap(({ contours }) => contours.flatMap((contour) => sampled(contour, 16)));
  const all = places.map((p) => finder.find(p, 50)?.distance ?? Number.NaN);
  return { least: Math.min(...all), most: Math.max(...all) };
}

// Steiner's formula: the area of a convex body grown by d is A + P d + pi d² (J. Steiner 1840, from memory).
describe('a shape with a closed form', () => {
  test('grows as Steiner says, whichever way it is drawn', () => {
    const rectangle = box(0, 0, 30, 20);
    for (const drawn of [rectangle, reverseContour(rectangle)])
      expectWithin(grown([shape(drawn)], 5), 600 + 100 * 5 + Math.PI * 25, 2e-3);
    const disc = [shape(circle({ x: 3, y: 4 }, 10, 16))];
    expectWithin(grown(disc, 2.5), Math.PI * 12.5 ** 2, 0.02);
    expectWithin(grown(disc, -2.5), Math.PI * 7.5 ** 2, 0.02);
  });

  test('keeps its corners where it is asked to, and flattens those past the miter limit', () => {
    expectWithin(grown([shape(box(0, 0, 30, 20))], 5, 'kept'), 40 * 30, 1e-6);
    const [result] = offsetShapes([shape(box(0, 0, 30, 20))], 5, 'kept');
    expect(result?.contours[0]?.segments).toHaveLength(4);
    // A needle of 5.7 degrees: kept, its tip would reach 20 times as far as the edge.
    const needle = polygon([
      { x: 0, y: -1 },
      { x: 20, y: 0 },
      { x: 0, y: 1 },
    ]);
    const reach = Math.max(
      ...offsetShapes([shape(needle)], 1, 'kept').flatMap(({ contours }) =>
        contours.flatMap((contour) => sampled(contour, 4).map(({ x }) => x)),
      ),
    );
    expectAtMost(reach, 21.01);
  });

  test('with an inner corner keeps it when it grows, and rounds it when it shrinks', () => {
    const ell = shape(
      polygon([
        { x: 0, y: 0 },
        { x: 20, y: 0 },
        { x: 20, y: 10 },
        { x: 10, y: 10 },
        { x: 10, y: 20 },
        { x: 0, y: 20 },
      ]),
    );
    // Of a polygon: A + P d + sum over outer corners of d²/2 times the turn, less d² tan(turn/2) at inner ones.
    expectWithin(grown([ell], 2), 300 + 80 * 2 + (5 * (Math.PI / 2) * 4) / 2 - 4, 2e-3);
    expectWithin(grown([ell], -2), 300 - 80 * 2 + 5 * 4 - (Math.PI * 4) / 4, 2e-3);
  });

  test('loses holes that fill and parts that vanish, and falls in two where it is thin', () => {
    const ring = shape(circle({ x: 0, y: 0 }, 10, 16), circle({ x: 0, y: 0 }, 4, 16));
    const filled = offsetShapes([ring], 5);
    expect(filled.map(({ contours }) => contours.length)).toEqual([1]);
    expectWithin(grown([ring], 1), Math.PI * (121 - 9), 0.02);
    expect(offsetShapes([ring], -3.1)).toEqual([]);
    const dumbbell = shape(
      polygon(
        '0 0, 10 0, 10 4, 20 4, 20 0, 30 0, 30 10, 20 10, 20 6, 10 6, 10 10, 0 10'.split(', ').map((at) => {
          const [x = 0, y = 0] = at.split(' ').map(Number);
          return { x, y };
        }),
      ),
    );
    expect(offsetShapes([dumbbell], -1.5)).toHaveLength(2);
    expect(openedUp([dumbbell], 1.5)).toHaveLength(2);
  });

  test('two that come to touch are one', () => {
    const two = [shape(box(0, 0, 10, 10)), shape(box(12, 0, 10, 10))];
    expect(offsetShapes(two, 0.9)).toHaveLength(2);
    expect(offsetShapes(two, 1.1)).toHaveLength(1);
  });

  test('closed up, keeps what stands out and fills an inner corner to the radius', () => {
    const two = [shape(box(0, 0, 10, 10)), shape(box(12, 0, 10, 10))];
    const closed = closedUp(two, 3);
    expect(closed).toHaveLength(1);
    // Filled between the boxes, less the two caps of discs of radius 3 that rest on both boxes' corners, 2 apart.
    const cap = 9 * Math.asin(1 / 3) - Math.sqrt(8);
    expectWithin(total(closed), 220 - 2 * cap, 0.02);
  });
});

describe('a blob of curves', () => {
  const blobs = Array.from({ length: 8 }, (_, i) => ({
    seed: 700 + i,
    drawn: blob(randomFrom(700 + i), { x: 0, y: 0 }, 20, 5 + (i % 4)),
  }));

  test.each(blobs)('agrees with Clipper 6, grown and shrunk, seed $seed', ({ drawn }) => {
    const rings = directed(shape(drawn)).map((contour) => chordPoints(contour, 2e-4));
    for (const by of [0.5, 3, 12, -0.5, -3]) {
      const theirs = clipperArea('union', clipperOffset(rings, by, 5e-4), [], 'nonzero');
      expectWithinPart(grown([shape(drawn)], by), theirs, 2e-4, `by ${by}`);
    }
  });

  test.each(blobs)('has an edge that far from its own everywhere, seed $seed', ({ drawn }) => {
    for (const by of [0.5, 3, -3]) {
      const { least, most } = distances([shape(drawn)], offsetShapes([shape(drawn)], by));
      expectWithin(least, Math.abs(by), 2 * fitTolerance, `nearest, by ${by}`);
      expectWithin(most, Math.abs(by), 2 * fitTolerance, `farthest, by ${by}`);
    }
  });

  // Growing by 4 leaves this where a curve bends as tightly: a cusp with a handle of a millionth of a mm, whose direction is
  // rounding. Shrunk by it, the edge leapt 0.1 mm aside. The truth is what an offset is: so far from the outline everywhere.
  test('whose end has a handle of no length to speak of is moved as if it had none', () => {
    const [low, high] = [
      { x: 15.688622754491004, y: 9.18562896638407 },
      { x: 15.701097472199699, y: 9.598240323799136 },
    ];
    const side = cubic(
      low,
      { x: 15.68862268529256, y: 9.418438842640708 },
      { x: 15.701097254787705, y: 9.59823911056726 },
      high,
    );
    const rest = ['16.1 13', '16.1 20', '0 20', '0 0', '15.688622754491004 0'].map((at) => {
      const [x = 0, y = 0] = at.split(' ').map(Number);
      return { x, y };
    });
    const corners = [high, ...rest, low];
    const sides = corners.slice(1).map((to, i) => line(corners[i] ?? to, to));
    const block = shape({ closed: true, segments: [side, ...sides] });
    for (const by of [-4, 4]) {
      const { least, most } = distances([block], offsetShapes([block], by));
      expectWithin(least, 4, fitTolerance, `nearest, by ${by}`);
      expectWithin(most, 4, fitTolerance, `farthest, by ${by}`);
    }
  });

  test('stays curves: few segments, not chords', () => {
    const [first] = blobs;
    if (!first) throw new Error('no blob');
    const [result] = offsetShapes([shape(first.drawn)], 3);
    expectAtMost(result?.contours[0]?.segments.length ?? Infinity, 60);
  });
});
