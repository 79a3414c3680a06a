import { describe, expect, test } from 'vitest';
import {
  cellArea,
  coordinates,
  gcd,
  latticeOf,
  step,
  stepsIn,
} from '../../../src/pattern/lattice/lattice.ts';
import { expectPointWithin, expectWithin } from '../../closeness.ts';
import { randomFrom } from '../../geometry/drawn.ts';

describe('the lattice of a repeat', () => {
  test('steps to the right and up, up being negative y as drawn', () => {
    expect(latticeOf({ across: 60, up: 40, drop: 0, shift: 0 })).toEqual({
      a: { x: 60, y: 0 },
      b: { x: 0, y: -40 },
    });
  });

  test('moves the next repeat around up by its drop, and the next row around by its shift', () => {
    const { a, b } = latticeOf({ across: 60, up: 40, drop: 20, shift: 15 });
    expect(a).toEqual({ x: 60, y: -20 });
    expect(b).toEqual({ x: 15, y: -40 });
  });

  test('has as much area as its tile, dropped or not; by the determinant', () => {
    expect(cellArea(latticeOf({ across: 60, up: 40, drop: 0, shift: 0 }))).toBe(2400);
    expect(cellArea(latticeOf({ across: 60, up: 40, drop: 20, shift: 0 }))).toBe(2400);
    expect(cellArea(latticeOf({ across: 60, up: 40, drop: 0, shift: 30 }))).toBe(2400);
    expect(cellArea(latticeOf({ across: 60, up: 40, drop: 20, shift: 30 }))).toBe(2400 - 600);
  });
});

describe('steps of a lattice', () => {
  const random = randomFrom(20269);

  test('are counted back from where they lead', () => {
    for (let n = 0; n < 50; n++) {
      const lattice = {
        a: { x: 20 + 30 * random(), y: 10 * random() - 5 },
        b: { x: 10 * random() - 5, y: 20 + 30 * random() },
      };
      const [i, j] = [Math.floor(40 * random()) - 20, Math.floor(40 * random()) - 20];
      const back = coordinates(lattice, step(lattice, i, j));
      expectWithin(back.i, i, 1e-12);
      expectWithin(back.j, j, 1e-12);
    }
  });

  test('in a box are all there are, each once: against counting them out', () => {
    for (let n = 0; n < 30; n++) {
      const lattice = {
        a: { x: 10 + 10 * random(), y: 8 * random() - 4 },
        b: { x: 8 * random() - 4, y: -10 - 10 * random() },
      };
      const box = { minX: -70 * random(), minY: -70 * random(), maxX: 60 * random(), maxY: 60 * random() };
      const wanted: string[] = [];
      for (let i = -40; i <= 40; i++)
        for (let j = -40; j <= 40; j++) {
          const { x, y } = step(lattice, i, j);
          if (x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY) wanted.push(`${i},${j}`);
        }
      const got = [...stepsIn(lattice, box)];
      expect(got.map(({ i, j }) => `${i},${j}`).sort()).toEqual(wanted.sort());
      for (const { i, j, at } of got) expectPointWithin(at, step(lattice, i, j), 1e-12);
    }
  });

  // What used to go wrong: the lower end of the count was ceil(-1e-9), which is -0, and `closes` held it.
  test('count no step as 0, never as minus nought', () => {
    const lattice = latticeOf({ across: 60, up: 40, drop: 0, shift: 0 });
    const got = [...stepsIn(lattice, { minX: 0, minY: 0, maxX: 70, maxY: 50 })];
    for (const { i, j } of got) expect([Object.is(i, -0), Object.is(j, -0)]).toEqual([false, false]);
  });

  test('on the edge of a box belong to it', () => {
    const lattice = latticeOf({ across: 60, up: 40, drop: 0, shift: 0 });
    const got = [...stepsIn(lattice, { minX: 0, minY: -40, maxX: 120, maxY: 0 })];
    expect(got).toHaveLength(6);
  });
});

describe('the greatest common divisor', () => {
  test.each([
    [12, 18, 6],
    [0, 7, 7],
    [7, 0, 7],
    [0, 0, 0],
    [-12, 18, 6],
    [12, -18, 6],
    [1, 500, 1],
    [35, 64, 1],
  ])('of %d and %d is %d', (n, m, wanted) => {
    expect(gcd(n, m)).toBe(wanted);
  });
});
