// Where curves cross lines, against how the signs of many places along them change.
import { describe, expect, test } from 'vitest';
import { cubic, line } from '../../src/geometry/contour.ts';
import { levelCrossings, lineCrossings } from '../../src/geometry/crossings.ts';
import { cross, subtract } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';
import { randomFrom } from './drawn.ts';

const random = randomFrom(7_2026);
const anyPoint = () => ({ x: 100 * random() - 50, y: 100 * random() - 50 });
const curves = Array.from({ length: 200 }, () => cubic(anyPoint(), anyPoint(), anyPoint(), anyPoint()));
const steps = 2000;

describe('a curve crosses a line', () => {
  test('as often as it changes its side, each time on the line', () => {
    let found = 0;
    for (const curve of curves) {
      const [through, direction] = [anyPoint(), anyPoint()];
      const beside = (t: number) => cross(direction, subtract(pointAt(curve, t), through));
      const sides = Array.from({ length: steps + 1 }, (_, i) => beside(i / steps) > 0);
      const changes = sides.filter((side, i) => i > 0 && side !== sides[i - 1]).length;
      const crossings = lineCrossings(curve, through, direction);
      expect(crossings).toHaveLength(changes);
      for (const t of crossings)
        expectAtMost(Math.abs(beside(t)), 1e-7 * Math.hypot(direction.x, direction.y));
      found += changes;
    }
    expect(found).toBeGreaterThan(100);
  });

  test('that is level where levels are asked about', () => {
    let found = 0;
    for (const { from, c1, c2, to, ...curve } of curves) {
      const at = 40 * random() - 20;
      const level = lineCrossings({ ...curve, from, c1, c2, to }, { x: 0, y: at }, { x: 1, y: 0 });
      const asked = levelCrossings(from.y, c1.y, c2.y, to.y, at).sort((a, b) => a - b);
      expect(asked).toHaveLength(level.length);
      for (const [i, t] of level.sort((a, b) => a - b).entries())
        expectWithin(asked[i] ?? Number.NaN, t, 1e-9);
      found += level.length;
    }
    expect(found).toBeGreaterThan(100);
  });
});

test('a straight line crosses another once, and one that it lies in never', () => {
  const slant = line({ x: 0, y: 0 }, { x: 4, y: 8 });
  expect(lineCrossings(slant, { x: 0, y: 2 }, { x: 1, y: 0 })).toEqual([0.25]);
  expect(lineCrossings(slant, { x: 0, y: 9 }, { x: 1, y: 0 })).toEqual([]);
  expect(lineCrossings(slant, { x: 1, y: 2 }, { x: 1, y: 2 })).toEqual([]);
});
