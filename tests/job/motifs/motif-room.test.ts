// The room that a motif takes of a wrap, as joints see it.
import { expect, test } from 'vitest';
import { motifRoom } from '../../../src/job/motifs/motif-joints.ts';
import { flatWall, toWall } from '../../../src/unroll/flat-wall.ts';
import { templateOf } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';

// A sheet of sine 0.75 is three quarters of a ring: what comes a turn later would lie on its other end.
const template = templateOf(flatWall(80, 0.75, 50), {
  band: { from: 20, to: 80 },
  trim: { foot: 0, lip: 0 },
  overlap: 6,
});
const roomAt = (turn: number) =>
  motifRoom([
    {
      placed: { isApart: false },
      plan: { template },
      reach: { from: 40, to: 60, turns: { from: turn - 0.02, to: turn + 0.02 } },
    },
  ]);

test.each([0.1, 0.5, 0.9])(
  'on a sheet of three quarters of a ring it is taken once, where the motif is: %d',
  (turn) => {
    const [room, ...others] = roomAt(turn);
    expect(others).toEqual([]);
    const places = (room?.contours[0]?.segments ?? []).map(({ from }) => toWall(template.wall, from).turn);
    expectWithin(Math.min(...places), turn - 0.02, 1e-9);
    expectWithin(Math.max(...places), turn + 0.02, 1e-9);
  },
);

test('behind the seam it is taken at both ends', () => {
  expect(roomAt(0)).toHaveLength(2);
});
