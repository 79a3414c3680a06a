// What clearing around a motif leaves of the pattern: too small to hold it goes, but where a line that the piece ends at goes through it.
import { expect, test } from 'vitest';

import { withoutCleared } from '../../../src/pattern/seam/clear-slivers.ts';
import { flatWall, girthAt, toFlat } from '../../../src/unroll/flat-wall.ts';
import { templateOf, woundTemplate } from '../../../src/unroll/template.ts';
import { box } from '../../geometry/drawn.ts';

test('a piece that a winding seam goes through is kept at both ends, one beside the straight line is not', () => {
  const wall = flatWall(40, 0, 50);
  const straight = templateOf(wall, { band: { from: 10, to: 90 }, trim: { lip: 3, foot: 3 }, overlap: 6 });
  const turns = Array.from({ length: 11 }, () => -0.1);
  const wound = woundTemplate(straight, { from: 7, step: 8.6, turns, lap: 6 / girthAt(wall, 50) });
  const leftAt = (turn: number, template: typeof straight) => {
    const { x, y } = toFlat(wall, { turn, along: 50 });
    const bar = { contours: [box(x - 5, y - 1, 10, 2)] };
    const cleared = { name: 'item-1', shape: { contours: [box(x + 1, y - 9, 14, 18)] } };
    return withoutCleared([bar], [cleared], template, { minPiece: 20, minWidth: 1 }).shapes.length;
  };
  expect([-0.1, 0.9, 0, 0.5].map((turn) => leftAt(turn, wound))).toEqual([1, 1, 0, 0]);
  expect([0, 1, 0.9, 0.5].map((turn) => leftAt(turn, straight))).toEqual([1, 1, 0, 0]);
});
