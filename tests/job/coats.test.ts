// Coats by thickness or by what is poured: read, laid on the wall, reported, and when to measure again.
import { describe, expect, test } from 'vitest';
import { describeBlank } from '../../src/job/blank/describe-blank.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { refusalsOf } from '../blank/a-blank.ts';
import { expectWithin } from '../closeness.ts';
import { madeOf } from './a-job.ts';

const can = {
  stations: [
    { height: 0, across: 80 },
    { height: 100, across: 80 },
  ],
};
/** Lateral area of that can: pi d h. */
const area = Math.PI * 80 * 100;

describe('a coat of a job', () => {
  const coatsOf = (...coats: object[]) => readJob({ name: 'n', blank: 'b', coats }, 'j').coats;
  const problemsOf = (coat: object) =>
    refusalsOf(() => coatsOf(coat)).map(({ rule, where }) => [rule, where.key]);

  test('is given by thickness or by volume', () => {
    expect(
      coatsOf({ thickness: 0.4 }, { name: 'resin', volume: 12, loss: 0.2 }, { volume: '1.5cl', over: true }),
    ).toEqual([
      { name: 'coat', thickness: 0.4, over: false },
      { name: 'resin', volume: 12, loss: 0.2, over: false },
      { name: 'coat', volume: 15, over: true },
    ]);
  });

  test.each<[object, string, string]>([
    [{ thickness: 0.4, volume: 12 }, 'one-of-two', 'coats[0].volume'],
    [{ name: 'clear' }, 'missing-key', 'coats[0].thickness'],
    [{ volume: 0 }, 'not-a-volume', 'coats[0].volume'],
    [{ volume: '12 cups' }, 'not-a-volume', 'coats[0].volume'],
    [{ volume: 12, loss: 1 }, 'not-a-number', 'coats[0].loss'],
    [{ volume: 12, covers: { from: 9, to: 3 } }, 'upside-down', 'coats[0].covers'],
  ])('is refused: %j', (coat, rule, key) => {
    expect(problemsOf(coat)).toEqual([[rule, key]]);
  });
});

describe('coats on the wall', () => {
  test('lie under all stacked pieces, and are told by the middle of them together', async () => {
    const stations = [
      { height: 0, across: 80 },
      { height: 30, across: 80 },
      { height: 60, across: 100 },
      { height: 130, across: 100 },
    ];
    const job = { pieces: 'stacked', coats: [{ volume: 12 }] };
    const { report, drafts } = await madeOf({ blank: { wall: 'stepped', use: 'other', stations }, job });
    expect(drafts.length).toBeGreaterThan(1);
    // Two cans and a frustum: pi d h and pi (r + R) s, the slant s by Pythagoras.
    const slant = Math.hypot(30, 10);
    const [coat] = report.coats ?? [];
    const wall = Math.PI * (80 * 30 + 90 * slant + 100 * 70);
    expectWithin(coat?.thickness ?? 0, 12_000 / wall, 1e-6);
    // Halfway up a wall of 30 + slant + 70 the upper can is reached.
    expectWithin(coat?.girthAfter ?? 0, Math.PI * (100 + (2 * 12_000) / wall), 1e-3);
  });

  test('poured by volume are as thick as what stays on the wall spreads', async () => {
    const coats = [
      { name: 'resin', volume: 12, loss: 0.2 },
      { volume: 3, covers: { from: 10, to: 35 } },
    ];
    const { report, draft } = await madeOf({ blank: can, job: { coats } });
    // 12 ml less a fifth is 9600 mm3 over pi 80 100; 3000 mm3 over a quarter of that wall.
    const [first, second] = [9600 / area, 3000 / (area / 4)];
    expectWithin(report.coats?.[0]?.thickness ?? 0, first, 1e-9);
    expectWithin(report.coats?.[1]?.thickness ?? 0, second, 1e-9);
    expectWithin(report.coats?.[0]?.girthGrowth ?? 0, 2 * Math.PI * first, 1e-9);
    expectWithin(report.coats?.[1]?.girthAfter ?? 0, Math.PI * 80 + 2 * Math.PI * (first + second), 1e-9);
    expectWithin(report.coats?.[0]?.volume ?? 0, 12, 1e-9);
    // The resolved job keeps thicknesses, so that it is the same job on whatever blank.
    expect(draft.job.coats.map((coat) => 'thickness' in coat && coat.thickness)).toEqual([
      report.coats?.[0]?.thickness,
      report.coats?.[1]?.thickness,
    ]);
  });

  test('make the sheet as much larger as a coat typed by that thickness', async () => {
    const volume = (0.4 * area) / 1000;
    const [poured, typed] = await Promise.all([
      madeOf({ blank: can, job: { coats: [{ volume }] } }),
      madeOf({ blank: can, job: { coats: [{ thickness: 0.4 }] } }),
    ]);
    expectWithin(poured.report.template?.width ?? 0, typed.report.template?.width ?? 1, 1e-9);
  });

  test('grow a leaning wall by the cosine of its lean, and over the film the film counts', async () => {
    const blank = {
      stations: [
        { height: 0, across: 60 },
        { height: 90, across: 60 + 180 / Math.sqrt(3) },
      ],
    };
    const coats = [
      { thickness: 0.5, over: true, name: 'top' },
      { thickness: 0.4, name: 'base' },
    ];
    const { report } = await madeOf({ blank, job: { coats, film: { thickness: 0.1 } } });
    const cos = Math.cos(Math.PI / 6);
    const middle = Math.PI * (60 + 90 / Math.sqrt(3));
    expect(report.coats?.map(({ name }) => name)).toEqual(['base', 'top']);
    expectWithin(report.coats?.[0]?.girthGrowth ?? 0, 2 * Math.PI * 0.4 * cos, 1e-9);
    expectWithin(report.coats?.[0]?.girthAfter ?? 0, middle + 2 * Math.PI * 0.4 * cos, 1e-9);
    expectWithin(report.coats?.[1]?.girthAfter ?? 0, middle + 2 * Math.PI * 1.0 * cos, 1e-9);
  });

  test('are measured again once a fifth of their growth is more than a reading is sure to', async () => {
    const rulesOf = async (thickness: number, reading: number) => {
      const { report } = await madeOf({
        blank: { ...can, reading },
        job: { coats: [{ thickness }], seam: { overlap: 12 } },
      });
      return report.checks.filter(({ rule }) => rule === 'coats-unsure').map(({ level }) => level);
    };
    // 2 pi t / 5 = 0.5 at t = 0.3979.
    expect(await rulesOf(0.39, 0.5)).toEqual([]);
    expect(await rulesOf(0.41, 0.5)).toEqual(['note']);
    expect(await rulesOf(0.41, 1)).toEqual([]);
    // Give or take 2 x 2 pi t / 5: past the 3 mm that an overlap holds on at t = 1.194.
    expect(await rulesOf(1.19, 0.5)).toEqual(['note']);
    expect(await rulesOf(1.2, 0.5)).toEqual(['look']);
  });

  test('of a spilt pot are asked about, and one past the lip is refused', async () => {
    const { report } = await madeOf({ blank: can, job: { coats: [{ volume: 200 }] } });
    expect(
      report.checks.filter(({ rule }) => rule === 'coat-thick').map(({ level, where }) => [level, where.key]),
    ).toEqual([['look', 'coats[0].volume']]);
    const outside = madeOf({ blank: can, job: { coats: [{ volume: 5, covers: { from: 120, to: 130 } }] } });
    await expect(outside).rejects.toMatchObject({ findings: [{ rule: 'covers-outside' }] });
  });

  test('by thickness are asked about over 3 mm, and refused over 25 mm', async () => {
    const rules = async (thickness: number) =>
      (await madeOf({ blank: { ...can, use: 'other' }, job: { coats: [{ thickness }] } })).report.checks
        .filter(({ level, rule }) => level === 'look' && rule !== 'coats-unsure')
        .map(({ rule, where }) => [rule, where.key]);
    expect(await rules(3)).toEqual([]);
    expect(await rules(3.1)).toEqual([['coat-thick', 'coats[0].thickness']]);
    await expect(rules(25.1)).rejects.toMatchObject({
      findings: [{ rule: 'coat-too-thick', where: { key: 'coats[0].thickness' } }],
    });
  });

  test('can be asked about without a job', () => {
    const told = describeBlank(readBlank(can, 'b'), 'b', 'mm', [
      { name: 'clear', thickness: 0.2, over: false },
    ]);
    expectWithin(told.coats[0]?.girthGrowth ?? 0, 0.4 * Math.PI, 1e-9);
    expect(told.lines.at(-1)).toContain('clear: 0.2 mm makes the girth grow by 1.3 mm, to 252.6 mm');
  });
});
