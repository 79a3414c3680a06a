// Lines that run along one another, against how long two straight lines stay near each other.
import { expect, test } from 'vitest';
import { doubledLines } from '../../../src/cut/checks/doubled-lines.ts';
import type { DrawnLine } from '../../../src/drawing/drawn-line.ts';
import { polyline } from '../../../src/geometry/contour.ts';
import { expectWithin } from '../../closeness.ts';

const drawn = (fromY: number, toY: number): DrawnLine => ({
  id: undefined,
  colour: '#000000',
  contours: [
    polyline([
      { x: 0, y: fromY },
      { x: 100, y: toY },
    ]),
  ],
});
const doubled = (other: DrawnLine, apart: number) =>
  doubledLines([drawn(0, 0), other], { tolerance: 0.002, apart, isPair: () => true });

test('lines side by side are doubled all along, and farther apart not at all', () => {
  const [found, ...others] = doubled(drawn(0.05, 0.05), 0.1);
  expect(others).toEqual([]);
  expectWithin(found?.length ?? 0, 100, 1e-6);
  expect(doubled(drawn(0.11, 0.11), 0.1)).toEqual([]);
});

test.each([
  [0, 0.2, 50],
  [-0.2, 0.2, 50],
  [0.4, 0, 25],
])('lines that part from %f to %f mm are doubled where they are near', (fromY, toY, near) => {
  // Chords are up to 1 mm long, and one that is near in part does not count.
  const [found] = doubled(drawn(fromY, toY), 0.1);
  expectWithin(found?.length ?? 0, near, 2);
});
