// Weeding told ahead, from the files as they are delivered. Lengths are held against svg-path-properties.
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../../closeness.ts';
import { librarianLength } from '../../geometry/libraries.ts';
import { folderOf, type Texts } from '../a-folder.ts';

const can = {
  stations: [
    { height: 0, across: 60 },
    { height: 90, across: 60 },
  ],
  use: 'other',
};
const job = { band: { from: 10, to: 70 }, trim: { lip: 3, foot: 3 } };
/** A ring and an open line, drawn mm. */
const tile =
  '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><g fill="#1d4e63"><path fill-rule="evenodd" d="M8 5H28V25H8ZM13 10V20H23V10Z"/></g></svg>';
const open = tile.replace('</g>', '<path d="M31 5H37V12"/></g>');

const pathsOf = (texts: Texts) =>
  [...(texts['wrap.cut.svg'] ?? '').matchAll(/ d="([^"]+)"/g)].map((m) => m[1] ?? '');

describe('the report of a job', () => {
  test('tells what stays, what is weeded, how far the blade goes and how often it comes down', async () => {
    const { texts, report } = await folderOf({ blank: can, job, artwork: { around: 5 }, tile });
    const { weeding } = report;
    if (!weeding) throw new Error('weeding is told');
    const length = pathsOf(texts).reduce((sum, data) => sum + librarianLength(data), 0);
    expectWithin(weeding.cutLength, length, 0.01);
    const lines = pathsOf(texts).reduce((sum, data) => sum + (data.match(/M/g) ?? []).length, 0);
    expect(weeding.lifts).toBe(lines);
    // 60 mm a second and 0.3 s a lift, the standard cutter.
    expectWithin(weeding.cutSeconds, length / 60 + 0.3 * lines, 0.01);
    const { width, height } = report.template ?? { width: 0, height: 0 };
    expectWithin(weeding.stays.area + weeding.waste.area, width * height, 1);
    expect(weeding.says[0]).toMatch(/a decal: the artwork stays/);
    expect(weeding.rule).toMatch(/common practice, no source/);
  });

  test('of a mask has stay what of a decal is waste', async () => {
    const made = { blank: can, artwork: { around: 5 }, tile };
    const decal = (await folderOf({ ...made, job })).report.weeding;
    const mask = (await folderOf({ ...made, job: { ...job, film: { use: 'mask' } } })).report.weeding;
    expect(mask?.stays).toEqual(decal?.waste);
    expect(mask?.waste).toEqual(decal?.stays);
    expect(mask?.weedSeconds).not.toBe(decal?.weedSeconds);
  });

  test('stands on the job sheet with its picture', async () => {
    const { texts, report } = await folderOf(
      { blank: can, job, artwork: { around: 5 }, tile },
      { pictures: true },
    );
    expect(texts['job-sheet.html']).toContain('26 lifts of the blade: about 39 s');
    expect(texts['job-sheet.html']).toContain('weeding.svg');
    expect(report.files?.map(({ file }) => file)).toEqual(
      expect.arrayContaining(['weeding.svg', 'weeding.png']),
    );
    expect(texts['weeding.svg']).toContain('data-role="mark"');
  });

  test('has nothing to weed where no art is cut', async () => {
    expect((await folderOf({ blank: can, job })).report.weeding).toBeUndefined();
  });
});

describe('lines of the artwork as drawn', () => {
  test('are told in a job too: open, doubled, crossing themselves, with nodes too close', async () => {
    const rules = async (body: string) => {
      const art = tile.replace('</g>', `${body}</g>`);
      const { report } = await folderOf({ blank: can, job, artwork: { around: 5 }, tile: art });
      return report.checks.filter(({ rule }) => /^(open|doubled|self|close)-/.test(rule));
    };
    expect(await rules('')).toEqual([]);
    expect((await rules('<path id="sail" d="M31 5H37V12"/>'))[0]).toMatchObject({
      rule: 'open-line',
      level: 'note',
      where: { element: 'sail' },
      says: expect.stringContaining('filled up to a straight line'),
    });
    const [doubled] = await rules('<path d="M31 5H37V12H31Z"/><path d="M31 5H37V12H31Z"/>');
    expect(doubled).toMatchObject({ rule: 'doubled-line', level: 'note' });
    const [crossing] = await rules('<path d="M31 5L37 12L37 5L31 12Z"/>');
    expect(crossing).toMatchObject({ rule: 'self-crossing', level: 'note' });
    const [close] = await rules('<path d="M31 5H37V12L36.99 12H31Z"/>');
    expect(close).toMatchObject({ rule: 'close-nodes', level: 'note' });
  });

  test('of one kind are told singly up to six, the rest by number', async () => {
    const many = Array.from({ length: 8 }, (_, i) => `<path d="M31 ${3 + 3 * i}h${5 + i / 10}v2"/>`).join('');
    const art = open.replace('<path d="M31 5H37V12"/>', many);
    const { report } = await folderOf({ blank: can, job, artwork: { around: 5 }, tile: art });
    const told = report.checks.filter(({ rule }) => rule === 'open-line');
    expect(told).toHaveLength(6);
    expect(told.at(-1)?.says).toMatch(/and 2 more like it$/);
  });

  test('that copies of one motif have are told once, where one lies on the tile', async () => {
    // The first and the last are drawn past the tile, of 40 by 30 mm.
    const copies = [-60, 2, 14, 26, 90].map((x) => `<path d="M${x} 3h5v2"/>`).join('');
    const art = open.replace('<path d="M31 5H37V12"/>', copies);
    const { report } = await folderOf({ blank: can, job, artwork: { around: 5 }, tile: art });
    const told = report.checks.filter(({ rule }) => rule === 'open-line');
    expect(told).toMatchObject([{ times: 3, where: { x: 19, y: 5 } }]);
    expect(told[0]?.says).toMatch(/; at 3 places alike$/);
  });
});
