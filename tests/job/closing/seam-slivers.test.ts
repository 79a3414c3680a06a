// What a straight seam leaves of motifs. Outside: the area of a circular segment, r² acos(d / r) - d √(r² - d²), from memory.
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../../closeness.ts';
import { madeOf } from '../a-job.ts';

const girth = 200;
const mug = {
  use: 'other',
  stations: [
    { height: 0, girth },
    { height: 60, girth },
  ],
};
/** Discs of 2 mm that reach 0.3 mm past a tile's border, and others clear of it. */
const [radius, away] = [2, 1.7];
const discs = `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><circle cx="${-away}" cy="10" r="${radius}"/><circle cx="${20 - away}" cy="10" r="${radius}"/><circle cx="8" cy="4" r="${radius}"/></svg>`;
const film = { thickness: 0, minWidth: 0.8, minGap: 0.3, minPiece: 1 };

const toldOf = async (seam: object, { blank = {}, of = film }: { blank?: object; of?: object } = {}) => {
  const job = { seam, film: of };
  const { report } = await madeOf({ blank: { ...mug, ...blank }, tile: discs, artwork: { around: 10 }, job });
  return report.checks.filter(({ rule }) => rule === 'seam-sliver');
};

describe('pieces too small for the film at a straight seam', () => {
  test.each([
    ['edge to edge', { style: 'butt' }],
    ['cut through', { style: 'cut-through', overlap: 6 }],
  ])('%s are told for the eye, where the cut leaves them', async (_, seam) => {
    const told = await toldOf(seam);
    expect(told.map(({ level, times }) => [level, times])).toEqual([['look', 3]]);
    const cap = radius ** 2 * Math.acos(away / radius) - away * Math.sqrt(radius ** 2 - away ** 2);
    expectWithin(told[0]?.size ?? 0, cap, 0.002);
    expect(told[0]?.says).toContain('at the start');
    // The caps reach 0.3 mm past the seam.
    expect(told[0]?.says).toContain(`the smallest ${cap.toFixed(2)} mm² and 0.3 mm around`);
    // The cap's middle is 0.15 mm past the seam.
    expectWithin(told[0]?.where.turn ?? 0, 0.15 / girth, 0.01 / girth);
  });

  test('under an overlap are told of the end on top alone, where the other shows the same art', async () => {
    const told = await toldOf({ overlap: 6.2 });
    expect(told.map(({ level, times }) => [level, times])).toEqual([['note', 3]]);
    expect(told[0]?.says).toContain('at the finish');
    const under = await toldOf({ overlap: 6, top: 'start' });
    expect(under[0]?.says).toContain('at the start');
  });

  test("are nobody's business under a cover strip, and none where the film is the art's ground", async () => {
    expect(await toldOf({ style: 'strip', strip: 10 })).toEqual([]);
    expect(await toldOf({ style: 'butt' }, { of: { ...film, use: 'mask' } })).toEqual([]);
  });

  test('by a handle are told without an overlap, which it has no room for', async () => {
    // The ends stand 10 mm either side of turn 0; a disc begins at 8.3 mm and one at 18.3.
    const told = await toldOf({}, { blank: { handle: { spans: 16, keepOff: 1.9 } } });
    expect(
      told.every(({ says }) => says.includes('the cut by the handle') && !says.includes('overlap')),
    ).toBe(true);
    expect(told.length).toBeGreaterThan(0);
  });

  test('of stacked pieces each say which piece they are of', async () => {
    const stations = [0, 30, 60].map((along, i) => ({ along, girth: girth - 8 * (i % 2) }));
    const { report } = await madeOf({
      blank: { use: 'other', wall: 'stepped', stations },
      tile: discs,
      artwork: { around: 10 },
      job: { pieces: 'stacked', seam: { overlap: 6.2 }, film },
    });
    const told = report.checks
      .filter(({ rule }) => rule === 'seam-sliver')
      .map(({ says }) => says.slice(0, 33));
    expect(told).toEqual(['the seam of piece 1 from the foot', 'the seam of piece 2 from the foot']);
  });
});
