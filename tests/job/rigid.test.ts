// A job whose motifs are moved whole: its files prove, its figures are those of the closed form, and trouble is named.
import { describe, expect, test } from 'vitest';
import { Refused } from '../../src/finding.ts';
import { expectWithin } from '../closeness.ts';
import { frustum, leafTile, madeOf } from './a-job.ts';

const [foot, lip, height] = [30, 44, 120];
const blank = {
  stations: [
    { height: 0, across: 2 * foot },
    { height, across: 2 * lip },
  ],
};
const rigid = (artwork: object = {}, more: object = {}) =>
  madeOf({ blank, tile: leafTile(26, 22), artwork: { lay: 'rigid', ...artwork }, ...more });

async function refusalOf(work: Promise<unknown>) {
  const fault = await work.catch((thrown: unknown) => thrown);
  if (!(fault instanceof Refused)) throw new Error('nothing was refused');
  return fault.findings;
}

describe('motifs moved whole in a job', () => {
  test('close, prove, and tell how far apart they stand', async () => {
    const { report, proof } = await rigid();
    expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
    expect(report.pattern?.lay).toBe('rigid');
    expect(report.pattern?.seamGap?.crossings).toBeGreaterThan(0);
    expectWithin(report.pattern?.seamGap?.position ?? Number.NaN, 0, 1e-3, 'gap');
    // Half of the film's 0.08 mm lies under the middle of the sheet.
    const { girthAt } = frustum(foot, lip, height);
    const { band } = report.template ?? { band: { from: 0, to: 0 } };
    const { around = 0, spacing } = report.pattern ?? {};
    const apart = (along: number) => girthAt(along, 0.04) / (around * 26);
    expectWithin(spacing?.foot ?? 0, apart(band.from), 1e-6, 'spacing at the foot');
    expectWithin(spacing?.lip ?? 0, apart(band.to), 1e-6, 'spacing at the lip');
    const [said] = report.checks.filter(({ rule }) => rule === 'spacing');
    expect(said?.level).toBe('note');
    expect(said?.says).toContain(`${(apart(band.from) * 100).toFixed(1)} % around at the foot edge`);
    expect(report.pattern?.distortion.rigid).toEqual({ proportions: 0, angleDeg: 0, size: 0 });
    expect(report.pattern?.distortion.even.angleDeg).toBeGreaterThan(5);
    expect(report.pattern?.distortion.conformal.size).toBeGreaterThan(0.1);
  });

  test('that would lie on one another are named, both of them, and are cut as one', async () => {
    const { report, proof } = await rigid({ around: 15 });
    expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
    const [first] = report.checks.filter(({ rule }) => rule === 'motifs-collide');
    expect(first).toMatchObject({ level: 'look', where: { file: 'tile.svg' } });
    expect(first?.says).toMatch(/drawn at 13 mm across and 11 mm down.*drawn at/);
  });

  test('that would lie in heaps are refused at once: uniting them took minutes', async () => {
    // The disc's box meets (2 d)² / cell of its likes: 2 * 10 mm either way, on cells of so many mm around by 22 mm up and as much smaller.
    const disc = 'M8 11A5 5 0 1 1 18 11A5 5 0 1 1 8 11Z';
    const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="26mm" height="22mm" viewBox="0 0 26 22"><path d="${disc}"/></svg>`;
    const met = (around: number): number => {
      const scale = (Math.PI * (foot + lip)) / (around * 26);
      return 20 ** 2 / (26 * 22 * scale ** 2);
    };
    const [some, heaps] = [45, 58];
    expect(met(some)).toBeLessThan(24);
    expect(met(heaps)).toBeGreaterThan(28);
    const { proof } = await rigid({ around: some }, { tile });
    expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
    const [heaped] = await refusalOf(rigid({ around: heaps }, { tile }));
    expect(heaped).toMatchObject({ rule: 'motifs-heaped', level: 'stop', where: { key: 'artwork.lay' } });
  });

  // Told apart by their places they were one; and each was held against all before it.
  test('that stand in one another are named each by itself', async () => {
    const ring = 'M4 11A9 9 0 1 1 22 11A9 9 0 1 1 4 11ZM5 11A8 8 0 1 0 21 11A8 8 0 1 0 5 11Z';
    const dot = 'M10 11A3 3 0 1 1 16 11A3 3 0 1 1 10 11Z';
    const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="26mm" height="22mm" viewBox="0 0 26 22"><path d="${ring}${dot}"/></svg>`;
    const { report } = await rigid({ around: 20, together: 0.1 }, { tile });
    const told = report.checks.filter(({ rule }) => rule === 'motifs-collide');
    // Rings on rings, and each ring on the dot to its right as well as to its left.
    expect(told.length).toBe(3);
  });

  test('fade at the edges with the rest of them whole', async () => {
    const { report, proof } = await rigid({}, { job: { edges: 'fade' } });
    expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
    expect(report.checks.some(({ rule }) => rule === 'faded')).toBe(true);
  });

  test('are refused where there are none, and on a wall of several pieces', async () => {
    const stripe =
      '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><path d="M0 8H20V12H0Z"/></svg>';
    const [net] = await refusalOf(madeOf({ blank, tile: stripe, artwork: { lay: 'rigid' } }));
    expect(net).toMatchObject({ rule: 'no-motifs', level: 'stop', where: { key: 'artwork.lay' } });
    const bent = {
      wall: 'stepped',
      stations: [
        { height: 0, across: 60 },
        { height: 40, across: 80 },
        { height: 90, across: 70 },
      ],
    };
    const stacked = madeOf({
      blank: bent,
      tile: leafTile(26, 22),
      artwork: { lay: 'rigid' },
      job: { pieces: 'stacked', band: { from: 4, to: 85 } },
    });
    expect((await refusalOf(stacked))[0]?.rule).toBe('rigid-on-pieces');
  });

  test('are advised where an even lay bends motifs by more than a quarter, and not on an ordinary cup', async () => {
    const steep = {
      stations: [
        { height: 0, across: 50 },
        { height: 90, across: 104 },
      ],
    };
    const on = async (of: object, lay: string) => {
      const { report } = await madeOf({ blank: of, tile: leafTile(26, 22), artwork: { lay } });
      return report.checks.some(({ rule }) => rule === 'lay-bends');
    };
    expect(await on(steep, 'even')).toBe(true);
    expect(await on(steep, 'conformal')).toBe(false);
    expect(await on(blank, 'even')).toBe(false);
  });
});
