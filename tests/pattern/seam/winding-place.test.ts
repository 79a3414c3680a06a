// Where a seam goes past motifs: on a can of 200 mm around, places by hand.
import { expect, test } from 'vitest';
import { motifRoomOf, windingPast } from '../../../src/pattern/seam/winding-place.ts';
import { flatWall, toFlat } from '../../../src/unroll/flat-wall.ts';
import { expectWithin } from '../../closeness.ts';

const can = flatWall(200 / (2 * Math.PI), 0, 50);
/** Straight up, 100 mm high, its finish going on by 6 mm. */
const seam = { from: 0, step: 10, turns: Array.from({ length: 11 }, () => 0), lap: 6 / 200 };

/** A motif of 30 by 20 mm about a turn, 50 mm up, seen where the wrap is cut at turn 0 too. */
const roomAbout = (turn: number, clear = 1) => {
  const points = [-15, 15].flatMap((x) =>
    [40, 60].map((along) =>
      toFlat(can, { turn: ((turn + x / 200) % 1) + (turn + x / 200 < 0 ? 1 : 0), along }),
    ),
  );
  return motifRoomOf(can, turn, points, clear);
};
const at = (rooms: ReturnType<typeof roomAbout>[], winding = seam, parts = 5) =>
  windingPast(winding, parts, rooms)?.turns[5];

test('the room of a motif is its own and as much more as is asked, though the seam parts it', () => {
  for (const turn of [0, 0.02, 0.5, 0.97]) {
    const room = roomAbout(turn);
    expectWithin(room.before, 16 / 200, 1e-9);
    expectWithin(room.after, 16 / 200, 1e-9);
    expect([room.from, room.to]).toEqual([39, 61]);
  }
});

test('a seam stays where the pattern has it while no motif is in the way', () => {
  expect(windingPast(seam, 5, [])).toBe(seam);
  expect(windingPast(seam, 5, [roomAbout(0.5), roomAbout(0.2)])).toBe(seam);
});

test('it goes on by as few repeats as bring it past them, its finish too', () => {
  expectWithin(at([roomAbout(0)]) ?? 0, 0.2, 1e-12);
  expectWithin(at([roomAbout(0), roomAbout(0.2)]) ?? 0, -0.2, 1e-12);
  // 16 mm of room from turn 0.1 on begin at 4 mm: the start is past it, its finish of 6 mm is not.
  expectWithin(at([roomAbout(0.1)]) ?? 0, 0.2, 1e-12);
  expect(at([roomAbout(0.1)], { ...seam, lap: 3 / 200 })).toBe(0);
  // A finish that goes on by more than half way around reaches a motif there.
  expect(at([roomAbout(0.5)], { ...seam, lap: 0.6 }, 1)).toBeUndefined();
});

test('a line that winds past a motif is left there; one that is a motif wide at another height too', () => {
  const winds = { ...seam, turns: seam.turns.map((_, i) => (i >= 3 && i <= 7 ? -0.12 : 0)) };
  expect(windingPast(winds, 5, [roomAbout(0)])).toBe(winds);
  const above = { ...roomAbout(0), from: 70, to: 90 };
  expect(windingPast(winds, 5, [above])).not.toBe(winds);
});

test('where every repeat at the back has a motif in the way there is none', () => {
  expect(at([roomAbout(0), roomAbout(0.2), roomAbout(0.8)])).toBeUndefined();
  expect(windingPast(seam, 2, [roomAbout(0)])).toBeUndefined();
});
