// Exact invariants of unrolling on any wall: nothing is stretched, and panels are the piece again.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { signedArea } from '../../src/geometry/measure.ts';
import { flatWall, girthAt, toFlat, toWall } from '../../src/unroll/flat-wall.ts';
import { panelsOf } from '../../src/unroll/panel.ts';
import { outline, sideTurns, templateOf } from '../../src/unroll/template.ts';
import { expectPointWithin, expectWithin, expectWithinPart } from '../closeness.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Walls from nearly upright to a sweep of 350 degrees, either way up; no end closer to the point than 2 mm. */
const anyWall = fc
  .record({
    narrow: number(2, 150),
    high: number(1, 400),
    sine: fc.oneof(number(0, 350 / 360), number(0, 1e-6)),
    widerAtLip: fc.boolean(),
  })
  .map(({ narrow, high, sine, widerAtLip }) => ({
    wall: widerAtLip ? flatWall(narrow, sine, 0) : flatWall(narrow, -sine, high),
    high,
  }));

const pieceOf = ({ wall, high }: { wall: ReturnType<typeof flatWall>; high: number }) =>
  templateOf(wall, { band: { from: 0, to: high }, trim: { lip: 0, foot: 0 }, overlap: 0 });

const areaOf = (template: ReturnType<typeof pieceOf>): number => Math.abs(signedArea(outline(template)));

test('keeps the area: half the two girths times the length of the wall', () => {
  fc.assert(
    fc.property(anyWall, (any) => {
      const { wall, high } = any;
      // Pappus: the lateral area of a frustum.
      const lateral = ((girthAt(wall, 0) + girthAt(wall, high)) / 2) * high;
      expectWithinPart(areaOf(pieceOf(any)), lateral, 1e-6, 'area');
    }),
    { seed: 20261, numRuns: 500 },
  );
});

test('there and back is where it was, on any wall', () => {
  fc.assert(
    fc.property(anyWall, number(0, 1), number(0, 1), ({ wall, high }, turn, share) => {
      const at = { turn, along: share * high };
      const back = toWall(wall, toFlat(wall, at));
      expectWithin(back.along, at.along, 1e-8, 'along');
      expectWithin((back.turn - turn) * girthAt(wall, at.along), 0, 1e-8, 'around');
    }),
    { seed: 20262, numRuns: 1000 },
  );
});

test('panels share their joints to the last digit, and have the area of the piece between them', () => {
  const joints = fc.uniqueArray(fc.integer({ min: 1, max: 999 }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(anyWall, joints, (any, drawn) => {
      const template = pieceOf(any);
      const turns = drawn.sort((a, b) => a - b).map((turn) => turn / 1000);
      const panels = panelsOf(template, { joints: turns, overlap: 0 });
      expect(panels).toHaveLength(turns.length + 1);
      for (const [i, panel] of panels.slice(1).entries())
        for (const along of [0, any.high]) {
          const [before] = panels.slice(i, i + 1).map((left) => sideTurns(left, along)[1]);
          const at = (turn = Number.NaN) => toFlat(any.wall, { turn, along });
          expectPointWithin(at(sideTurns(panel, along)[0]), at(before), 1e-12, 'joint');
        }
      expectWithinPart(
        panels.reduce((sum, panel) => sum + areaOf(panel), 0),
        areaOf(template),
        1e-6,
        'area of the panels',
      );
    }),
    { seed: 20263, numRuns: 200 },
  );
});
