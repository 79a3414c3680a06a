// Where a band ends between rows. Truth is by hand: rows of motifs as high as written, in rows as high as written.
import { describe, expect, test } from 'vitest';
import { rowEnds, wholeRowsIn } from '../../../src/pattern/lattice/bare-rows.ts';
import { closingOf, layOut, rowsUp } from '../../../src/pattern/lattice/closing.ts';
import { expectWithin } from '../../closeness.ts';

/** Two rows of fish in a drawing 24 high, 6 high each: one over its lower edge, one in its middle. */
const overTheEdge = [
  { from: -3, to: 3 },
  { from: 21, to: 27 },
  { from: 9, to: 15 },
];

describe('the heights at which a band can end', () => {
  test('are the middles of the gaps between rows, nearest to the lower edge first', () => {
    expect([...rowEnds(overTheEdge, 24)].sort()).toEqual([0.25, 0.75]);
    expect(rowEnds([{ from: 2, to: 20 }], 24)).toEqual([23 / 24]);
  });

  test('leave out gaps within a motif', () => {
    // A float 10 high hangs 1 under a boat: the gap of 11 to the next row is where rows part.
    const boat = [
      { from: 2, to: 4 },
      { from: 5, to: 15 },
    ];
    expect(rowEnds(boat, 24)).toEqual([(15 + 26) / 2 / 24]);
  });

  test('are the lower edge where rows reach into one another, or a ground or a net goes on', () => {
    expect(
      rowEnds(
        [
          { from: 2, to: 14 },
          { from: 12, to: 27 },
        ],
        24,
      ),
    ).toEqual([0]);
    expect(rowEnds([{ from: 0, to: 24 }], 24)).toEqual([0]);
    expect(rowEnds([], 24)).toEqual([0]);
    expect([...rowEnds([...overTheEdge, { from: 0, to: 24 }], 24)].sort()).toEqual([0.25, 0.75]);
  });
});

test('a band takes the rows that change its height least, half a repeat of two rows where that is nearer', () => {
  expect(wholeRowsIn(overTheEdge, 24, 4.45)).toMatchObject({ rows: 4.5 });
  expect(wholeRowsIn(overTheEdge, 24, 4.2)).toMatchObject({ rows: 4 });
  // Never none at all.
  expect(wholeRowsIn(overTheEdge, 24, 0.1).rows).toBeCloseTo(0.5, 12);
  expect(wholeRowsIn([], 24, 0.1)).toEqual({ rows: 1, foot: 0 });
});

test('the closing begins the band there', () => {
  const lattice = { a: { x: 30, y: 0 }, b: { x: 0, y: -24 } };
  const options = { girth: 210, patternHeight: 105, scale: 'both', wholeRows: true } as const;
  const closing = closingOf(lattice, { ...options, extents: overTheEdge });
  if (!closing) throw new Error('it does not close');
  expectWithin(rowsUp(lattice, closing, 105), 4.5, 1e-12);
  expectWithin(closing.scaleUp * 24 * 4.5, 105, 1e-9);
  // From the gap a quarter up the drawing, whose lower edge is at y 24, to the other: no motif over 0 or 105 in the laid pattern.
  const { d, f } = layOut(closing, 24);
  const heights = Array.from({ length: 20 }, (_, i) => 24 - (i - 4) * 12).map((y) => d * y + f);
  const half = 3 * closing.scaleUp;
  expect(heights.filter((y) => Math.abs(y) < half || Math.abs(y - 105) < half)).toEqual([]);
  expect(heights.filter((y) => y > 0 && y < 105)).toHaveLength(9);
  expect(closingOf(lattice, options)).not.toHaveProperty('foot');
});
