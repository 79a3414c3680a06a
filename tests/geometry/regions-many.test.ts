// Areas of many random shapes at once, seeded: the seed is in the title of what fails.
import { expect, test } from 'vitest';
import { moveContour, rotation } from '../../src/geometry/affine.ts';
import { type Contour, reverseContour, type Shape } from '../../src/geometry/contour.ts';
import { shapeArea, signedArea } from '../../src/geometry/measure.ts';
import { clippedShapes, filledShapes } from '../../src/geometry/regions.ts';
import { chordTolerance } from '../../src/geometry/tolerance.ts';
import { expectWithin } from '../closeness.ts';
import { blob, box, randomFrom, sampled, segmentKeys } from './drawn.ts';
import { clipperArea } from './libraries.ts';

const total = (shapes: readonly Shape[]): number => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);
const contoursOf = (shapes: readonly Shape[]): Contour[] => shapes.flatMap(({ contours }) => [...contours]);
const seeds = Array.from({ length: 16 }, (_, i) => i + 1);

test.each(seeds)(
  'a heap of blobs has the area Clipper 6 finds, and a union is itself when merged again: seed %i',
  (seed) => {
    const random = randomFrom(seed);
    const heap = Array.from({ length: 2 + Math.floor(random() * 5) }, () =>
      blob(random, { x: 40 * random(), y: 40 * random() }, 6 + 14 * random(), 4 + Math.floor(random() * 7)),
    );
    const fill = seed % 2 === 0 ? 'evenodd' : 'nonzero';
    const shapes = filledShapes(heap, fill, chordTolerance);
    const rings = heap.map((contour) => sampled(contour, 300));
    // Chords of 300 a segment leave out up to 0.008 mm² on the largest heap.
    expectWithin(total(shapes), clipperArea('union', rings, [], fill), 0.015);
    // Areas by even and odd touch at the corners where the drawn edges cross; what touches may merge the second time.
    if (fill === 'evenodd') return;
    const again = filledShapes(contoursOf(shapes), 'nonzero', chordTolerance);
    expect(segmentKeys(contoursOf(again))).toEqual(segmentKeys(contoursOf(shapes)));
  },
);

test.each(seeds)(
  'a blob cut in two by a knife and merged again is the blob, without a trace: seed %i',
  (seed) => {
    const random = randomFrom(5000 + seed);
    const whole = blob(random, { x: 0, y: 0 }, 20, 4 + Math.floor(random() * 6));
    const knife =
      seed % 2 === 0
        ? moveContour(rotation(6 * random()), box(0, -60, 60, 120))
        : blob(random, { x: 15, y: 5 * random() }, 18, 6);
    const [shape, cutter] = [whole, knife].map((contour) =>
      filledShapes([contour], 'nonzero', chordTolerance),
    );
    if (!shape || !cutter) throw new Error('no shapes');
    const inside = clippedShapes(shape, cutter, 'intersection', chordTolerance);
    const outside = clippedShapes(shape, cutter, 'difference', chordTolerance);
    const area = Math.abs(signedArea(whole));
    expectWithin(total(inside) + total(outside), area, 0.005);
    const merged = filledShapes(contoursOf([...inside, ...outside]), 'nonzero', chordTolerance);
    expect(merged.map(({ contours }) => contours.length)).toEqual([1]);
    expectWithin(total(merged), area, 0.01);
    // The cut may leave a node where it crossed the blob, no more.
    expect(merged[0]?.contours[0]?.segments.length).toBeLessThanOrEqual(whole.segments.length + 4);
  },
);

test.each([
  ['intersection', 'inside'],
  ['difference', 'outside'],
] as const)(
  'of blobs side by side under a window with a hole, what lies clear of its edges stays or goes whole, by %s',
  (operation, kept) => {
    const random = randomFrom(77);
    const blobs = Array.from({ length: 64 }, (_, i) => {
      const at = { x: 10 * (i % 8) + 5, y: 10 * Math.floor(i / 8) + 5 };
      return blob(random, at, 3, 5);
    });
    const around = box(7, 7, 66, 66);
    const hole = box(27, 27, 26, 26);
    const window: Shape = { contours: [around, reverseContour(hole)] };
    const shapes = blobs.map((contour): Shape => ({ contours: [contour] }));
    const left = clippedShapes(shapes, [window], operation, chordTolerance);
    const rings = blobs.map((contour) => sampled(contour, 60));
    const frame = [around, reverseContour(hole)].map((contour) => sampled(contour, 1));
    // Chords of 60 a segment leave out up to 0.001 mm² of each.
    expectWithin(total(left), clipperArea(operation, rings, frame, 'nonzero'), 0.06);
    const isClear = ({ contours: [one] }: Shape) =>
      one?.segments.every(({ from: { x, y } }) => {
        const inside = (margin: number) =>
          x > 7 + margin && x < 73 - margin && y > 7 + margin && y < 73 - margin;
        const inHole = (margin: number) =>
          x > 27 - margin && x < 53 + margin && y > 27 - margin && y < 53 + margin;
        return kept === 'inside' ? inside(1) && !inHole(1) : !inside(-1) || inHole(-1);
      }) === true;
    const clear = shapes.filter(isClear);
    expect(clear.length).toBeGreaterThan(3);
    const found = new Set(segmentKeys(contoursOf(left)));
    expect(segmentKeys(contoursOf(clear)).filter((key) => !found.has(key))).toEqual([]);
  },
);
