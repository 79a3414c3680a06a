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
