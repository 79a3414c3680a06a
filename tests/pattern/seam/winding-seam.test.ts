// The knots of a seam that winds, on a plain can without a pattern.
import { expect, test } from 'vitest';
import { windingSeam } from '../../../src/pattern/seam/winding-seam.ts';
import { flatWall } from '../../../src/unroll/flat-wall.ts';
import { templateOf } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';

test('its knots stand evenly from foot to lip of the piece, no more than 0.75 mm apart, and no closer than that asks for', () => {
  const wall = flatWall(30, 0, 50);
  for (const [from, to] of [
    [10, 40],
    [10, 12.9],
  ] as const) {
    const template = templateOf(wall, { band: { from, to }, trim: { lip: 3, foot: 3 }, overlap: 6 });
    const layers = [{ shapes: [] }];
    const { step, turns, ...seam } = windingSeam({
      ...{ template, layers, isPeriodic: true, parts: 5, clear: 1, overlap: 6 },
    });
    expect(seam.from).toBe(from - 3);
    expectWithin(step * (turns.length - 1), to - from + 6, 1e-9);
    expect(step).toBeLessThanOrEqual(0.75);
    expect(step * (turns.length - 1)).toBeGreaterThan(0.75 * (turns.length - 2));
  }
});
