// The pattern that a crop was cut from is known: laid anew from one period, it has to be the same everywhere.
import { describe, expect, test } from 'vitest';
import { shifted } from '../../../src/geometry/affine.ts';
import { boxCorners } from '../../../src/geometry/box.ts';
import { type Contour, polygon, type Shape } from '../../../src/geometry/contour.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { clippedShapes, filledShapes } from '../../../src/geometry/regions.ts';
import { chordTolerance } from '../../../src/geometry/tolerance.ts';
import type { Lattice } from '../../../src/pattern/lattice/lattice.ts';
import { fittedInto, windowOf } from '../../../src/pattern/period/clean-period.ts';
import { periodOf } from '../../../src/pattern/period/period.ts';
import { trueRepeat } from '../../../src/pattern/repeat/true-repeat.ts';
import { box, randomFrom } from '../../geometry/drawn.ts';
import { cropOf, motifsIn, turnedLattice } from '../a-crop.ts';

const areaOf = (shapes: readonly Shape[]): number => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);

const lattices: readonly { readonly kind: string; readonly lattice: Lattice }[] = [
  { kind: 'straight', lattice: { a: { x: 31, y: 0 }, b: { x: 0, y: 24 } } },
  { kind: 'half drop', lattice: { a: { x: 27, y: 13 }, b: { x: 0, y: 26 } } },
  { kind: 'brick', lattice: { a: { x: 30, y: 0 }, b: { x: 15, y: 22 } } },
  { kind: 'slanted', lattice: turnedLattice({ a: { x: 26, y: 3 }, b: { x: 5, y: 31 } }, 0.3) },
];

const times = 1.35;

/** Film of a crop elsewhere in the pattern that differs, as a share, once it is laid anew from the given crop. */
function different(
  {
    shapes,
    width,
    height,
    at,
  }: { shapes: readonly Shape[]; width: number; height: number; at: { x: number; y: number } },
  truth: (from: { x: number; y: number }, width: number, height: number) => Shape[],
): number {
  const [lattice] = trueRepeat([{ shapes }], { width, height });
  if (!lattice) throw new Error('no repeat found');
  const window = windowOf({ width, height }, lattice);
  if (!window) throw new Error('no whole period shown');
  const motifs = periodOf(shapes, { width, height, window }, lattice).map(({ contour }) => contour);
  const seen = { from: { x: -40, y: -30 }, width: 120, height: 90 };
  const laid = cropOf({ ...seen, at: seen.from, lattice, motifs, random: () => 0, cut: false }).flatMap(
    ({ contours }) => contours,
  );
  const frame = {
    contours: [polygon(boxCorners({ minX: 0, minY: 0, maxX: seen.width, maxY: seen.height }))],
  };
  const one = clippedShapes(
    filledShapes(laid, 'nonzero', chordTolerance),
    [frame],
    'intersection',
    chordTolerance,
  );
  const other = truth({ x: at.x + seen.from.x, y: at.y + seen.from.y }, seen.width, seen.height);
  const odd = [
    clippedShapes(one, other, 'difference', chordTolerance),
    clippedShapes(other, one, 'difference', chordTolerance),
  ];
  return areaOf(odd.flat()) / areaOf(other);
}

describe.each(lattices)('a clean period of a $kind repeat', ({ lattice }) => {
  const size = {
    width: times * (Math.abs(lattice.a.x) + Math.abs(lattice.b.x)),
    height: times * (Math.abs(lattice.a.y) + Math.abs(lattice.b.y)),
  };

  test.each([1, 2, 3])(
    'gives all of the pattern back where motifs stand apart or overlap, case %i',
    (seed) => {
      const random = randomFrom(seed * 31);
      const motifs = motifsIn(lattice, 4 + 3 * seed, random);
      const truth = (at: { x: number; y: number }, width: number, height: number) =>
        cropOf({ lattice, motifs, width, height, at, random, cut: true });
      const at = { x: random() * 40, y: random() * 40 };
      for (const cut of [true, false]) {
        const shapes = cropOf({ lattice, motifs, ...size, at, random, cut });
        expect(different({ shapes, ...size, at }, truth)).toBeLessThan(0.001);
      }
    },
  );

  test('gives a net back, which is nowhere whole', () => {
    const random = randomFrom(5);
    const holes = motifsIn(lattice, 5, random);
    const sheet = (width: number, height: number): Contour => box(0, 0, width, height);
    const truth = (at: { x: number; y: number }, width: number, height: number) =>
      clippedShapes(
        [{ contours: [sheet(width, height)] }],
        cropOf({ lattice, motifs: holes, width, height, at, random, cut: false }),
        'difference',
        chordTolerance,
      );
    const at = { x: 11, y: 17 };
    const shapes = truth(at, size.width, size.height);
    expect(different({ shapes, ...size, at }, truth)).toBeLessThan(0.001);
  });
});

test('what was drawn edge to edge, copy by copy, is one shape', () => {
  // A bar up a tile of 20 mm by 18 mm, its copies end on end: each is whole in the crop, and none may be laid by itself.
  const lattice: Lattice = { a: { x: 20, y: 0 }, b: { x: 0, y: 18 } };
  const size = { width: 50, height: 76 };
  const at = [0, 1, 2].flatMap((column) => [-1, 0, 1, 2, 3, 4].map((row) => ({ column, row })));
  const bars = at.map(({ column, row }) => ({
    contours: [box(5 + 20 * column, 7 + 18 * row, 1, 18)],
  }));
  const window = windowOf(size, lattice);
  if (!window) throw new Error('no whole period shown');
  // The step that was found is theirs but for rounding: bars laid by it one by one would be 0.0001 mm apart.
  const found: Lattice = { a: lattice.a, b: { x: 0, y: 18.0001 } };
  const contours = periodOf(bars, { ...size, window }, found).map(({ contour }) => contour);
  const laid = [0, 1, 2].flatMap((k) => shifted(contours, { x: 0, y: k * found.b.y }));
  expect(filledShapes(laid, 'nonzero', chordTolerance)).toHaveLength(1);
});

test('what stands in the crop once, and would show again were it part of the pattern, is left out', () => {
  const lattice: Lattice = { a: { x: 20, y: 0 }, b: { x: 0, y: 18 } };
  const random = randomFrom(2);
  const size = { width: 90, height: 80 };
  const pattern = cropOf({ lattice, motifs: motifsIn(lattice, 3, random), ...size, random });
  const label = { contours: [box(33, 37, 3, 2)] };
  const window = windowOf(size, lattice);
  if (!window) throw new Error('no whole period shown');
  const bare = periodOf(pattern, { ...size, window }, lattice);
  expect(periodOf([...pattern, label], { ...size, window }, lattice)).toEqual(bare);
});

test('a crop that shows less than one period has no window', () => {
  expect(windowOf({ width: 30, height: 30 }, { a: { x: 31, y: 0 }, b: { x: 0, y: 20 } })).toBeUndefined();
});

test('a crop of exactly one period has one, whatever its repeat was found to be off by', () => {
  const size = { width: 60, height: 40 };
  const drop: Lattice = { a: { x: 30, y: -20.0000001 }, b: { x: 30, y: 20.0000002 } };
  expect(windowOf(size, drop)).toBeUndefined();
  const fitted = fittedInto(size, drop, 0.01);
  expect(windowOf(size, fitted)).toBeDefined();
  for (const [one, other] of [
    [fitted.a.y, -20],
    [fitted.b.y, 20],
    [fitted.a.x, 30],
  ] as const)
    expect(Math.abs(one - other)).toBeLessThan(1e-4);
  // One that is too large by more stays so.
  const larger: Lattice = { a: { x: 30, y: -20.1 }, b: { x: 30, y: 20 } };
  expect(fittedInto(size, larger, 0.01)).toBe(larger);
});
