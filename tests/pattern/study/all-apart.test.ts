// Which tiles need no look for a repeat: truth is how the test draws them, and what the whole look finds of the same.
import { describe, expect, test } from 'vitest';
import type { Shape } from '../../../src/geometry/contour.ts';
import { tightBox } from '../../../src/geometry/measure.ts';
import { isAllApart } from '../../../src/pattern/study/all-apart.ts';
import { repeatStudyOf } from '../../../src/pattern/study/repeat-study.ts';
import { blob, box, circle, randomFrom } from '../../geometry/drawn.ts';
import { cropOf, motifsIn } from '../a-crop.ts';

const tileOf = (shapes: readonly Shape[], width: number, height: number) => ({
  width,
  height,
  layers: [{ name: '#000000', colour: '#000000', shapes }],
});

/** Blobs that all differ, one to a field. */
function blobsApart(seed: number, columns: number, rows: number): Shape[] {
  const random = randomFrom(seed);
  return Array.from({ length: columns * rows }, (_, i) => {
    const centre = { x: 10 * ((i % columns) + 0.5), y: 10 * (Math.floor(i / columns) + 0.5) };
    return { contours: [blob(random, centre, 3)] };
  });
}

describe('a tile of blobs that all differ', () => {
  const shapes = blobsApart(5, 12, 8);

  test('needs no look: nothing recurs, and the whole look finds that it joins', () => {
    const tile = tileOf(shapes, 120, 80);
    expect(isAllApart(tile)).toBe(true);
    const lattice = { a: { x: 120, y: 0 }, b: { x: 0, y: -80 } };
    expect(repeatStudyOf(tile, lattice).joins).toBe(true);
  });

  test('needs one where anything comes near a border', () => {
    expect(isAllApart(tileOf([...shapes, { contours: [box(119, 30, 3, 3)] }], 120, 80))).toBe(false);
    expect(isAllApart(tileOf([...shapes, { contours: [box(50, 0.02, 3, 0.4)] }], 120, 80))).toBe(false);
  });

  test('or where a large outline may repeat within itself', () => {
    expect(isAllApart(tileOf([...shapes, { contours: [box(5, 38, 110, 3)] }], 120, 80))).toBe(false);
  });
});

test('dots on a grid need a look, however they were drawn', () => {
  const dots = Array.from({ length: 96 }, (_, i): Shape => {
    const centre = { x: 10 * ((i % 12) + 0.5), y: 10 * (Math.floor(i / 12) + 0.5) };
    return { contours: [circle(centre, 3)] };
  });
  expect(isAllApart(tileOf(dots, 120, 80))).toBe(false);
});

test('of crops of known repeats with all that their edges cut left out, none that does not join goes unlooked at', () => {
  let open = 0;
  for (let seed = 1; seed <= 12; seed++) {
    const random = randomFrom(seed * 31);
    const lattice = { a: { x: 20 + random() * 40, y: 0 }, b: { x: random() * 20, y: 20 + random() * 40 } };
    const width = lattice.a.x * (3.2 + random());
    const height = lattice.b.y * (3.2 + random());
    const motifs = motifsIn(lattice, 3, random);
    const noise = seed % 2 === 0 ? 0.02 : 0;
    const all = cropOf({ lattice, motifs, width, height, noise, random, cut: false });
    const whole = all.filter(({ contours }) => {
      const { minX, minY, maxX, maxY } = tightBox(contours);
      return minX > 0.1 && minY > 0.1 && maxX < width - 0.1 && maxY < height - 0.1;
    });
    const tile = tileOf(whole, width, height);
    if (repeatStudyOf(tile, { a: { x: width, y: 0 }, b: { x: 0, y: -height } }).joins) continue;
    open += 1;
    expect(isAllApart(tile)).toBe(false);
  }
  expect(open).toBeGreaterThan(3);
});
