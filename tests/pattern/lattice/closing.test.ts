import { describe, expect, test } from 'vitest';
import { movePoint } from '../../../src/geometry/affine.ts';
import {
  type Closing,
  type ClosingOptions,
  closingOf,
  equalParts,
  layOut,
  levelCount,
  repeatsAround,
  rowsUp,
} from '../../../src/pattern/lattice/closing.ts';
import { type Lattice, latticeOf, step } from '../../../src/pattern/lattice/lattice.ts';
import { expectPointWithin, expectWithin } from '../../closeness.ts';

const plain = latticeOf({ across: 60, up: 40, drop: 0, shift: 0 });
const halfDrop = latticeOf({ across: 60, up: 40, drop: 20, shift: 0 });
const brick = latticeOf({ across: 60, up: 40, drop: 0, shift: 30 });
const slanted: Lattice = { a: { x: 30, y: 10 }, b: { x: -10, y: 30 } };
const lattices = [
  { name: 'plain', lattice: plain },
  { name: 'half drop', lattice: halfDrop },
  { name: 'brick', lattice: brick },
  { name: 'a third of a drop', lattice: latticeOf({ across: 60, up: 40, drop: 40 / 3, shift: 0 }) },
  { name: 'slanted', lattice: slanted },
  { name: 'askew both ways', lattice: { a: { x: 23, y: -7.3 }, b: { x: 5.1, y: -31 } } },
];

const options = (girth: number, more: Partial<ClosingOptions> = {}): ClosingOptions => ({
  girth,
  patternHeight: 120,
  scale: 'both',
  wholeRows: false,
  ...more,
});

function closed(lattice: Lattice, given: ClosingOptions): Closing {
  const closing = closingOf(lattice, given);
  if (!closing) throw new Error('does not close');
  return closing;
}

/** Where once around comes to lie: n a + m b, laid out. */
function onceAround(lattice: Lattice, closing: Closing): { x: number; y: number } {
  const m = layOut(closing, 0);
  const sum = step(lattice, closing.n, closing.m);
  return { x: m.a * sum.x + m.c * sum.y, y: m.b * sum.x + m.d * sum.y };
}

describe('closing around the wall', () => {
  test('a plain repeat closes by whole repeats: 5 of 60 on a girth of 290', () => {
    const closing = closed(plain, options(290));
    expect([closing.n, closing.m + 0]).toEqual([5, 0]);
    expectWithin(closing.scaleAcross, 290 / 300, 1e-15);
    expectWithin(closing.scaleUp, 290 / 300, 1e-15);
    expect(closing.lean).toBe(0);
  });

  test('takes the count that scales least, measured by ratio', () => {
    // Between 4 and 5 of 60 the ratios are equal at sqrt(4 · 5) · 60 = 268.33.
    expect(closed(plain, options(268)).n).toBe(4);
    expect(closed(plain, options(268.7)).n).toBe(5);
  });

  test('keeps heights as drawn where only the girth is to be met', () => {
    const closing = closed(plain, options(290, { scale: 'across' }));
    expect(closing.scaleUp).toBe(1);
    expectWithin(closing.scaleAcross, 290 / 300, 1e-15);
  });

  test('stretches rows so that a whole number fills the band', () => {
    const closing = closed(plain, options(290, { wholeRows: true, patternHeight: 130 }));
    expectWithin(rowsUp(plain, closing, 130), 3, 1e-12);
    expectWithin(closing.scaleUp * 40 * 3, 130, 1e-9);
    const low = closed(plain, options(290, { wholeRows: true, patternHeight: 15 }));
    expectWithin(rowsUp(plain, low, 15), 1, 1e-12);
  });

  test('a half drop closes level at even counts and only there', () => {
    expect(levelCount(halfDrop)).toBe(2);
    for (let n = 2; n <= 24; n += 2) {
      const closing = closed(halfDrop, options(60 * n, { around: n }));
      expect(closing.lean).toBe(0);
      expectPointWithin(step(halfDrop, closing.n, closing.m), { x: 60 * n, y: 0 }, 1e-9);
    }
    for (let n = 1; n <= 23; n += 2) {
      const closing = closed(halfDrop, options(60 * n, { around: n }));
      // Odd counts end half a row off: a lean of atan(20 / 60 n) one way or the other.
      expectWithin(Math.abs(closing.lean), Math.atan2(20, 60 * n), 1e-12);
    }
  });

  test('chooses an even count for a half drop unasked, where that is near', () => {
    for (const girth of [230, 250, 350, 370]) expect(closed(halfDrop, options(girth)).n % 2).toBe(0);
  });

  test.each([
    { name: 'plain', lattice: plain, count: 1 },
    { name: 'half drop', lattice: halfDrop, count: 2 },
    { name: 'brick', lattice: brick, count: 1 },
    {
      name: 'a third of a drop',
      lattice: latticeOf({ across: 60, up: 40, drop: 40 / 3, shift: 0 }),
      count: 3,
    },
    { name: 'slanted', lattice: slanted, count: 3 },
    {
      name: 'a drop of no whole part',
      lattice: latticeOf({ across: 60, up: 40, drop: 40 / Math.PI, shift: 0 }),
      count: undefined,
    },
  ])('the smallest level count of $name is $count', ({ lattice, count }) => {
    expect(levelCount(lattice)).toBe(count);
  });

  test('a = (30, 10), b = (-10, 30) closes by 3 a - b = (100, 0) on a girth of 100', () => {
    const closing = closed(slanted, options(100));
    expect([closing.n, closing.m]).toEqual([3, -1]);
    expect(closing.lean).toBe(0);
    expectWithin(closing.scaleAcross, 1, 1e-15);
    const thrice = closed(slanted, options(300));
    expect([thrice.n, thrice.m]).toEqual([9, -3]);
    expect(equalParts(thrice)).toBe(3);
  });

  test('leans by the angle of its sum, where the sum is not level', () => {
    const lattice: Lattice = { a: { x: 50, y: -1 }, b: { x: 0, y: -40 } };
    const closing = closed(lattice, options(250, { around: 5 }));
    expect([closing.n, closing.m]).toEqual([5, 0]);
    expectWithin(closing.lean, Math.atan2(-5, 250), 1e-15);
    expectWithin(closing.scaleAcross, 250 / Math.hypot(250, 5), 1e-15);
  });

  test.each(lattices)('closes exactly for every count from 1 to 500: $name', ({ lattice }) => {
    let counted = 0;
    for (let n = 1; n <= 500; n++)
      for (const scale of ['both', 'across'] as const) {
        const girth = 30 + 0.97 * n;
        const closing = closingOf(lattice, options(girth, { around: n, scale, wholeRows: n % 2 === 0 }));
        if (!closing) continue;
        counted += 1;
        expect(closing.n).toBe(n);
        expectPointWithin(onceAround(lattice, closing), { x: girth, y: 0 }, 1e-9, `once around at ${n}`);
      }
    // A sum too steep to be called around is refused: only the first few counts of a lattice can be.
    expect(counted).toBeGreaterThanOrEqual(2 * 498);
  });

  test.each(lattices)('closes exactly and near its drawn size on any girth: $name', ({ lattice }) => {
    for (let girth = 60; girth < 900; girth += 13.7) {
      const closing = closingOf(lattice, options(girth));
      if (!closing) throw new Error(`does not close on ${girth}`);
      expectPointWithin(onceAround(lattice, closing), { x: girth, y: 0 }, 1e-9);
      expect(closing.scaleAcross).toBeGreaterThanOrEqual(0.5);
      expect(closing.scaleAcross).toBeLessThanOrEqual(2);
      expect(Math.abs(closing.lean)).toBeLessThan(Math.PI / 4);
    }
  });

  test('a count that goes up the wall rather than around it does not close', () => {
    const steep: Lattice = { a: { x: 10, y: -30 }, b: { x: 10, y: 400 } };
    expect(closingOf(steep, options(100, { around: 1 }))).toBeUndefined();
  });

  test('one repeat around counts as one, by a or by b alone', () => {
    expect(repeatsAround({ n: 5, m: 0 })).toBe(5);
    expect(repeatsAround({ n: 0, m: 3 })).toBe(3);
    expect(repeatsAround({ n: 0, m: -3 })).toBe(3);
    expect(repeatsAround({ n: 4, m: -2 })).toBe(4);
  });

  test('a lattice drawn the other way round closes as well, by its other step', () => {
    const turned: Lattice = { a: { x: 0, y: -40 }, b: { x: 60, y: 0 } };
    const closing = closed(turned, options(300));
    expect([closing.n + 0, closing.m]).toEqual([0, 5]);
    expectPointWithin(onceAround(turned, closing), { x: 300, y: 0 }, 1e-9);
    expect(repeatsAround(closing)).toBe(5);
    expectWithin(rowsUp(turned, closing, 120), 3, 1e-12);
  });
});

describe('rows up the band', () => {
  test.each(lattices)(
    'count areas: rows by repeats is band by girth over the period, $name',
    ({ lattice }) => {
      const closing = closed(lattice, options(400));
      const rows = rowsUp(lattice, closing, 120);
      const period = Math.abs(lattice.a.x * lattice.b.y - lattice.a.y * lattice.b.x);
      const laid = period * closing.scaleAcross * closing.scaleUp;
      expectWithin(rows * repeatsAround(closing), (120 * 400) / laid, 1e-9);
    },
  );
});

describe('laying out', () => {
  test('turns the drawing up the right way: its bottom edge at height 0, up positive', () => {
    const closing = closed(plain, options(300));
    const m = layOut(closing, 40);
    expectPointWithin(movePoint(m, { x: 0, y: 40 }), { x: 0, y: 0 }, 1e-12);
    expectPointWithin(movePoint(m, { x: 60, y: 0 }), { x: 60, y: 40 }, 1e-12);
  });

  test('keeps shapes as drawn but for the lean, where heights follow the girth', () => {
    const lattice: Lattice = { a: { x: 50, y: -1 }, b: { x: 0, y: -40 } };
    const closing = closed(lattice, options(250, { around: 5 }));
    const m = layOut(closing, 40);
    expectWithin(Math.hypot(m.a, m.b), closing.scaleAcross, 1e-12);
    expectWithin(Math.hypot(m.c, m.d), closing.scaleAcross, 1e-12);
    expectWithin(m.a * m.c + m.b * m.d, 0, 1e-12);
    expectPointWithin(movePoint(m, { x: 0, y: 40 }), { x: 0, y: 0 }, 1e-12);
  });
});

describe('equal parts', () => {
  test.each([
    [6, 0, 6],
    [6, -3, 3],
    [5, -2, 1],
    [0, 4, 4],
  ])('of %d a and %d b are %d', (n, m, parts) => {
    expect(equalParts({ n, m, scaleAcross: 1, scaleUp: 1, lean: 0 })).toBe(parts);
  });
});
