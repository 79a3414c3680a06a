// What clearing around a motif leaves of the pattern: too small to hold it goes, but where a line that the piece ends at goes through it.
import { expect, test } from 'vitest';
import { compose, moveContour, rotation, translation } from '../../../src/geometry/affine.ts';
import { withoutCleared } from '../../../src/pattern/seam/clear-slivers.ts';
import { flatWall, girthAt, toFlat } from '../../../src/unroll/flat-wall.ts';
import { templateOf, woundTemplate } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';
import { box, circle } from '../../geometry/drawn.ts';

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

// Of a disc the cap past a straight cut is left: it has nodes on the cut alone, and the proof took the pattern to be gone only as far as those.
test('how far a piece that is left out went is told of its whole edge', () => {
  const wall = flatWall(40, 0, 50);
  const template = templateOf(wall, { band: { from: 10, to: 90 }, trim: { lip: 3, foot: 3 }, overlap: 6 });
  const at = toFlat(wall, { turn: 0.5, along: 50 });
  const radius = 10;
  const quarters = moveContour(
    compose(rotation(Math.PI / 4), translation(at.x, at.y)),
    circle({ x: 0, y: 0 }, radius),
  );
  // Sheets have y down: what is above 8 mm up is left of the disc.
  const cleared = { name: 'item-1', shape: { contours: [box(at.x - 20, at.y - 8, 40, 40)] } };
  const { leftOut } = withoutCleared([{ contours: [quarters] }], [cleared], template, {
    minPiece: 40,
    minWidth: 1,
  });
  expect(leftOut).toHaveLength(1);
  const highest = Math.max(...(leftOut[0]?.places ?? []).map(({ along }) => along));
  expectWithin(highest, 50 + radius, 0.01, 'the top of the disc, mm up');
});
