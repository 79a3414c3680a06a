// The lattice of a repeat as typed. Truth is by hand: the same copies, whichever way a step is told.
import { expect, test } from 'vitest';
import { latticeOfRepeat } from '../../../src/job/closing/choose-way.ts';
import { closingOf } from '../../../src/pattern/lattice/closing.ts';

test('a first step told to the left goes around as its opposite does', () => {
  const tile = { width: 45, height: 30, layers: [] };
  const lattice = latticeOfRepeat({ kind: 'lattice', a: { x: -45, y: 2 }, b: { x: 0, y: 30 } }, tile);
  const asked = { girth: 225, patternHeight: 60, around: 5, scale: 'both', wholeRows: false } as const;
  expect(lattice).toEqual({ a: { x: 45, y: -2 }, b: { x: 0, y: 30 } });
  expect(closingOf(lattice, asked)?.n).toBe(5);
});

// 45 mm typed in inches to four decimals left a slit of a thousandth of a mm between copies, cut twice.
test("a side typed as the tile has it, but for its last digits, is the tile's own", () => {
  const tile = { width: 45, height: 30, layers: [] };
  const typed = { kind: 'grid', drop: 15, shift: 0 } as const;
  const own = { a: { x: 45, y: -15 }, b: { x: 0, y: -30 } };
  expect(latticeOfRepeat({ ...typed, across: 1.7717 * 25.4, up: 1.1811 * 25.4 }, tile)).toEqual(own);
  expect(latticeOfRepeat({ ...typed, across: 45.03, up: 29.97 }, tile)).toEqual({
    a: { x: 45.03, y: -15 },
    b: { x: 0, y: -29.97 },
  });
});
