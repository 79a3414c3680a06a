import { describe, expect, test } from 'vitest';
import {
  type Affine,
  compose,
  determinant,
  moveAll,
  moveContour,
  movePoint,
  rotation,
  translation,
} from '../../src/geometry/affine.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { expectPointWithin, expectWithin } from '../closeness.ts';
import { blob, randomFrom } from './drawn.ts';

const random = randomFrom(20267);
const any = (): Affine => ({
  a: random() - 0.5,
  b: random() - 0.5,
  c: random() - 0.5,
  d: random() - 0.5,
  e: 20 * random(),
  f: 20 * random(),
});

describe('affine maps', () => {
  test('done one after the other are one map', () => {
    for (let i = 0; i < 20; i++) {
      const [first, second] = [any(), any()];
      const p = { x: 10 * random(), y: 10 * random() };
      expectPointWithin(movePoint(compose(first, second), p), movePoint(second, movePoint(first, p)), 1e-12);
      expectWithin(determinant(compose(first, second)), determinant(first) * determinant(second), 1e-12);
    }
  });

  test('take their six numbers in the order of an SVG matrix', () => {
    // SVG 2, 'transform': matrix(a b c d e f) maps (x, y) to (a x + c y + e, b x + d y + f); from memory.
    expect(movePoint({ a: 2, b: 3, c: 5, d: 7, e: 11, f: 13 }, { x: 1, y: 10 })).toEqual({ x: 63, y: 86 });
    const many = Float64Array.of(1, 10, 0, 1);
    moveAll({ a: 2, b: 3, c: 5, d: 7, e: 11, f: 13 }, many);
    expect([...many]).toEqual([63, 86, 16, 20]);
    expect(movePoint(translation(3, 4), { x: 1, y: 1 })).toEqual({ x: 4, y: 5 });
  });

  test('turn x towards y', () => {
    expectPointWithin(movePoint(rotation(Math.PI / 2), { x: 1, y: 0 }), { x: 0, y: 1 }, 1e-15);
  });

  test('carry every point of a curve with its control points', () => {
    const contour = blob(random, { x: 0, y: 0 }, 10);
    const m = any();
    const moved = moveContour(m, contour);
    contour.segments.forEach((s, i) => {
      const other = moved.segments[i];
      if (!other) throw new Error('a segment is missing');
      for (const t of [0, 0.3, 0.8, 1])
        expectPointWithin(pointAt(other, t), movePoint(m, pointAt(s, t)), 1e-12);
    });
  });
});
