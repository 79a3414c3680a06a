// Motifs of several shapes, each put down whole where a hand had it: any step between two of them brings four outlines to their like.
import { expect, test } from 'vitest';
import { moveContour } from '../../../src/geometry/affine.ts';
import { boxCorners } from '../../../src/geometry/box.ts';
import { polygon, type Shape } from '../../../src/geometry/contour.ts';
import { clippedShapes } from '../../../src/geometry/regions.ts';
import { chordTolerance } from '../../../src/geometry/tolerance.ts';
import { isSameLattice } from '../../../src/pattern/lattice/same-lattice.ts';
import { repeatTolerance, trueRepeat } from '../../../src/pattern/repeat/true-repeat.ts';
import { blob, box, circle, randomFrom } from '../../geometry/drawn.ts';

/** A crop of motifs that stand off their places in rows by up to so much, mm; half of the patterns with a half drop. */
function crop(seed: number, stray: number) {
  const random = randomFrom(seed * 77);
  const parts = [blob(random, { x: 0, y: 0 }, 4), circle({ x: 6, y: 3 }, 1.5), box(-2, 4.5, 4, 1.2)];
  const motif = [...parts, circle({ x: 5, y: -3 }, 1)];
  const [across, up] = [18 + 6 * random(), 14 + 5 * random()];
  const [width, height] = [across * (1.6 + 3 * random()), up * (1.6 + 3 * random())];
  const drop = seed % 2 === 0 ? 0 : up / 2;
  const frame = { contours: [polygon(boxCorners({ minX: 0, minY: 0, maxX: width, maxY: height }))] };
  const off = () => (2 * random() - 1) * stray;
  const shapes = Array.from({ length: 100 }, (_, n) => [Math.floor(n / 10) - 2, (n % 10) - 2] as const)
    .flatMap(([i, j]) => {
      const by = { e: i * across + 3 + off(), f: j * up + Math.abs(i % 2) * drop + 2 + off() };
      return motif.map((part) => ({ contours: [moveContour({ a: 1, b: 0, c: 0, d: 1, ...by }, part)] }));
    })
    .flatMap((shape: Shape) => clippedShapes([shape], [frame], 'intersection', chordTolerance));
  const lattice = { a: { x: across, y: drop }, b: { x: 0, y: up } };
  return { found: trueRepeat([{ shapes }], { width, height }), lattice };
}

// Before motifs were counted as one thing each, six of twenty-four such crops gave a repeat, one of them wholly sure.
test.each([1, 2, 7, 10, 13, 15, 18, 24])('of motifs strewn by hand, case %i, no repeat is told', (seed) => {
  expect(crop(seed, 0.8).found).toEqual([]);
});

test.each([1, 2, 7, 10])('of the same in exact rows, case %i, it is', (seed) => {
  const { found, lattice } = crop(seed, 0);
  expect(found[0] && isSameLattice(found[0], lattice, repeatTolerance)).toBe(true);
});
