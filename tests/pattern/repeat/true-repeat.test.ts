// The lattice of a crop is the one it was generated from: truth is known, nothing of ours made it.
import { describe, expect, test } from 'vitest';
import { type Contour, polygon } from '../../../src/geometry/contour.ts';
import type { Lattice } from '../../../src/pattern/lattice/lattice.ts';
import { isSameLattice } from '../../../src/pattern/lattice/same-lattice.ts';
import { repeatTolerance, trueRepeat } from '../../../src/pattern/repeat/true-repeat.ts';
import { box, randomFrom } from '../../geometry/drawn.ts';
import { type CropOptions, cropOf, motifsIn, turnedLattice } from '../a-crop.ts';

const kinds = ['straight', 'half drop', 'brick', 'slanted'] as const;

function latticeOfKind(kind: (typeof kinds)[number], random: () => number): Lattice {
  const [across, up] = [20 + random() * 60, 20 + random() * 60];
  return {
    a: { x: across, y: kind === 'half drop' ? up / 2 : kind === 'slanted' ? up * random() * 0.4 : 0 },
    b: { x: kind === 'brick' ? across / 2 : kind === 'slanted' ? across * random() * 0.4 : 0, y: up },
  };
}

/** A crop that shows so many periods each way. */
function periods(lattice: Lattice, times: number): { width: number; height: number } {
  const { a, b } = lattice;
  return { width: times * (Math.abs(a.x) + Math.abs(b.x)), height: times * (Math.abs(a.y) + Math.abs(b.y)) };
}

const found = (options: CropOptions) =>
  trueRepeat([{ shapes: cropOf(options) }], { width: options.width, height: options.height });

describe.each(kinds)('a crop of a %s repeat', (kind) => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8])('gives its lattice back from 1.3 periods each way, case %i', (seed) => {
    const random = randomFrom(seed * 7 + kinds.indexOf(kind) * 1000);
    const straight = latticeOfKind(kind, random);
    const lattice = seed % 2 === 0 ? turnedLattice(straight, random() * 0.8) : straight;
    const motifs = motifsIn(lattice, 6 + seed, random);
    const at = { x: random() * 50, y: random() * 50 };
    const noise = seed % 3 === 0 ? 0.01 : 0;
    const options = { lattice, motifs, at, noise, random, ...periods(lattice, 1.3), cut: seed % 4 !== 0 };
    const [first] = found(options);
    expect(first && isSameLattice(first, lattice, repeatTolerance)).toBe(true);
    expect(first?.confidence).toBeGreaterThan(0.6);
  });
});

const straight: Lattice = { a: { x: 30, y: 0 }, b: { x: 0, y: 25 } };

test('more periods settle the lattice to hundredths, though every node is rounded', () => {
  const random = randomFrom(11);
  const lattice = turnedLattice({ a: { x: 23.456, y: 0 }, b: { x: 7.5, y: 31.234 } }, 0.2);
  const motifs = motifsIn(lattice, 6, random);
  const [first] = found({ lattice, motifs, width: 200, height: 180, noise: 0.01, random });
  expect(first && isSameLattice(first, lattice, 0.003)).toBe(true);
  expect(first?.confidence).toBeGreaterThan(0.95);
});

test('a pattern that is covered in part still shows its repeat, less surely', () => {
  const random = randomFrom(3);
  const options = {
    lattice: straight,
    motifs: motifsIn(straight, 6, random),
    width: 110,
    height: 95,
    random,
  };
  const covered = cropOf(options).filter(({ contours: [outer] }) => {
    const from = outer?.segments[0]?.from ?? { x: 0, y: 0 };
    return !(from.x > 30 && from.x < 75 && from.y > 30 && from.y < 65);
  });
  const [first] = trueRepeat([{ shapes: covered }], { width: 110, height: 95 });
  expect(first && isSameLattice(first, straight, repeatTolerance)).toBe(true);
  expect(first?.confidence).toBeLessThan(0.95);
});

test('the smallest period is found, not a multiple of it', () => {
  const random = randomFrom(9);
  const motifs = motifsIn(straight, 4, random);
  const [first] = found({ lattice: straight, motifs, width: 300, height: 250, random });
  expect(first && isSameLattice(first, straight, repeatTolerance)).toBe(true);
});

test('a net that is one single shape is known by its corners', () => {
  const mesh = Array.from({ length: 6 }, (_, i) =>
    Array.from({ length: 5 }, (__, j) => ({ contours: [box(4 + i * 17, 3 + j * 13, 9, 6)] })),
  ).flat();
  const sheet: Contour = polygon([
    { x: -5, y: -5 },
    { x: 105, y: -5 },
    { x: 105, y: 70 },
    { x: -5, y: 70 },
  ]);
  const net = { contours: [sheet, ...mesh.flatMap(({ contours }) => contours)] };
  const [first] = trueRepeat([{ shapes: [net] }], { width: 100, height: 65 });
  expect(first && isSameLattice(first, { a: { x: 17, y: 0 }, b: { x: 0, y: 13 } }, repeatTolerance)).toBe(
    true,
  );
});

test.each(Array.from({ length: 12 }, (_, i) => i))(
  'a hand-drawn pattern that is only almost regular has no repeat, case %i',
  (seed) => {
    const random = randomFrom(seed + 500);
    const motifs = motifsIn(straight, 5, random);
    expect(found({ lattice: straight, motifs, width: 120, height: 100, jitter: 0.3, random })).toEqual([]);
  },
);

test.each(Array.from({ length: 15 }, (_, i) => i))(
  'stars strewn at random have no repeat, case %i',
  (seed) => {
    const random = randomFrom(seed + 900);
    const [star] = motifsIn(straight, 1, random);
    if (!star) throw new Error('no motif');
    const far: Lattice = { a: { x: 1000, y: 0 }, b: { x: 0, y: 1000 } };
    const shapes = Array.from({ length: 12 + seed }, () =>
      cropOf({
        lattice: far,
        motifs: [star],
        width: 120,
        height: 100,
        at: { x: -random() * 110, y: -random() * 90 },
        random,
      }),
    ).flat();
    const sure = trueRepeat([{ shapes }], { width: 120, height: 100 });
    expect(sure.filter(({ confidence }) => confidence > 0.9)).toEqual([]);
  },
);
