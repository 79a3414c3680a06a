// Faults of a wrap are told once a period, and only where the film stays on the vessel.
import { expect, test } from 'vitest';
import { wrapFaults } from '../../../src/cut/checks/wrap-faults.ts';
import { flatWall, girthAt, toFlat } from '../../../src/unroll/flat-wall.ts';
import { templateOf } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';
import { box } from '../../geometry/drawn.ts';

const wall = flatWall(40, 0, 50);
const template = templateOf(wall, { band: { from: 10, to: 90 }, trim: { foot: 8, lip: 8 }, overlap: 6 });
const limits = { minWidth: 1, minGap: 0.4, minPiece: 0, minAngle: 0.3, step: 0.025 };
const girth = girthAt(wall, 50);

/** A bar half a mm high and 12 mm long about a place. */
const bar = (turn: number, along: number) => {
  const { x, y } = toFlat(wall, { turn, along });
  return { contours: [box(x - 6, y - 0.25, 12, 0.5)] };
};
const found = (bars: readonly (readonly [number, number])[], parts: number) =>
  wrapFaults(
    {
      template,
      layers: [{ name: 'a', colour: '#000000', shapes: bars.map(([turn, along]) => bar(turn, along)) }],
      runOff: 1,
      parts,
    },
    limits,
    'decal',
  ).film.filter(({ fault }) => fault.rule === 'thin-film');

test('a thin bar is told where it is, and neither in the trims nor in the overlap', () => {
  const told = found(
    [
      [0.3, 40],
      [0.5, 5],
      [0.7, 95],
      [1 + 8 / girth, 60],
    ],
    1,
  );
  expect(told).toHaveLength(1);
  expectWithin(told[0]?.fault.size ?? 0, 0.5, 0.005);
  expectWithin(told[0]?.at.along ?? 0, 40, 0.3);
});

test('a bar of every repeat is told once', () => {
  const bars = [0, 1, 2, 3].map((k) => [(k + 0.5) / 4 + 0.06, 40] as const);
  expect(found(bars, 4)).toHaveLength(1);
});
