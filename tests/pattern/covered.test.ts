// Patterns with a label or a mark of somebody's lying over them still show their lattice, which the test made.
import { describe, expect, test } from 'vitest';
import { moveContour, rotation } from '../../src/geometry/affine.ts';
import type { Shape } from '../../src/geometry/contour.ts';
import { clippedShapes } from '../../src/geometry/regions.ts';
import { chordTolerance } from '../../src/geometry/tolerance.ts';
import type { Lattice } from '../../src/pattern/lattice/lattice.ts';
import { isMultiple } from '../../src/pattern/lattice/same-lattice.ts';
import { repeatTolerance } from '../../src/pattern/repeat/true-repeat.ts';
import { freeStudyOf, type RepeatStudy } from '../../src/pattern/study/repeat-study.ts';
import { sureRepeat } from '../../src/pattern/study/sure-repeat.ts';
import { blob, box, circle, randomFrom } from '../geometry/drawn.ts';
import { cropOf, motifsIn, turnedLattice } from './a-crop.ts';

const lattices: readonly (readonly [string, Lattice])[] = [
  ['straight', { a: { x: 18, y: 0 }, b: { x: 0, y: 14 } }],
  ['brick', { a: { x: 22, y: 0 }, b: { x: 11, y: 15 } }],
  ['half drop', { a: { x: 17, y: 10 }, b: { x: 0, y: 20 } }],
  ['slanted', turnedLattice({ a: { x: 19, y: 0 }, b: { x: 6, y: 16 } }, 0.2)],
];

/** A plate with five letters of a kind on it, or a bar slantwise over all. */
const labels: readonly (readonly [string, (random: () => number) => readonly [Shape, readonly Shape[]]])[] = [
  [
    'a label',
    (random) => {
      const [x, y] = [8 + 20 * random(), 8 + 18 * random()];
      const letters = [0, 1, 2, 3, 4].map((i) => ({
        contours: [blob(random, { x: x + 6 + 6 * i, y: y + 7 }, 2.5)],
      }));
      return [{ contours: [box(x, y, 36, 14)] }, letters];
    },
  ],
  [
    'a bar slantwise',
    (random) => {
      const turned = moveContour({ ...rotation(-0.5), e: 5, f: 36 + 8 * random() }, box(0, 0, 58, 5));
      return [{ contours: [turned] }, [{ contours: [turned] }]];
    },
  ],
];

/** What is found of a crop that a label or a bar lies on. */
function told(lattice: Lattice, lay: (typeof labels)[number][1], seed: number): RepeatStudy {
  const random = randomFrom(seed);
  const size = { width: 66 + 8 * random(), height: 50 + 6 * random() };
  const at = { x: 20 * random(), y: 20 * random() };
  const shapes = cropOf({ lattice, motifs: motifsIn(lattice, 2, random), at, ...size, random });
  const [plate, over] = lay(random);
  const left = shapes.flatMap((shape) => clippedShapes([shape], [plate], 'difference', chordTolerance));
  const layers = [{ shapes: left }, { shapes: over }].map((layer, i) => ({
    name: `${i}`,
    colour: `${i}`,
    ...layer,
  }));
  return freeStudyOf({ ...size, layers }, { a: { x: size.width, y: 0 }, b: { x: 0, y: -size.height } });
}

// What lies over it hides up to a fifth of the crop, and nearly as much again shows nowhere a second time. None is taken unasked: a motif
// on a ground that recurs by itself looks the same. Where the borders of a crop meet by chance nothing is asked of it.
describe.each(lattices)('a crop of a %s repeat', (_, lattice) => {
  test.each(labels)('under %s shows its lattice, and is not sure', (__, lay) => {
    const studies = Array.from({ length: 5 }, (___, seed) => told(lattice, lay, seed + 1));
    const found = studies.flatMap(({ borders, period }) => (borders.joins ? [] : [period]));
    expect(found.length).toBeGreaterThanOrEqual(3);
    expect(found.filter((one) => !one || !isMultiple(one, lattice, 4 * repeatTolerance))).toEqual([]);
    expect(found.filter((one) => one && one.confidence >= sureRepeat)).toEqual([]);
    const larger = found.filter((one) => one && !isMultiple(lattice, one, 4 * repeatTolerance));
    expect(larger.length).toBeLessThanOrEqual(1);
  });
});

test('what dashes recur by alone is never taken unasked: they do so by many steps', () => {
  const dash = (x: number, y: number) => ({ contours: [box(x, y, 4, 1.2)] });
  const rows = [5, 20, 28].flatMap((y) => [0, 6, 12, 18, 24, 30].map((x) => dash(x + 1, y)));
  const shapes = [...rows, { contours: [circle({ x: 18, y: 12.5 }, 5)] }];
  const found = freeStudyOf(
    { width: 36, height: 30, layers: [{ name: 'ink', colour: 'ink', shapes }] },
    { a: { x: 36, y: 0 }, b: { x: 0, y: -30 } },
  );
  expect(found.period?.confidence).toBeLessThan(sureRepeat);
});
