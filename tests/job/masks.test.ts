// Masks of a job from end to end: as files that the proof measures, and as pictures before and after the mask is pulled.
import { describe, expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import { writeSvg } from '../../src/deliver/write-svg.ts';
import { movedGroups } from '../../src/drawing/drawing.ts';
import { translation } from '../../src/geometry/affine.ts';
import { expectAtMost } from '../closeness.ts';
import { folderOf } from './a-folder.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 110, across: 78 },
  ],
};
const tern = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="24mm" viewBox="0 0 40 24">
  <path d="M0 2C10 0 15 6 20 10C25 6 30 0 40 2C30 6 26 12 21 22L19 22C14 12 10 6 0 2Z" fill="#223344"/></svg>`;
const made = (mask: object, along = 60, options = {}) =>
  folderOf(
    {
      blank: cup,
      job: {
        items: [
          { file: 'tern.svg', across: 40, at: { turn: 0.02, along } },
          { file: 'tern.svg', across: 30, at: { turn: 0.6, along: 70 }, lay: 'even' },
        ],
        mask: { standOff: 2, smooth: 4, ...mask },
      },
      files: { 'tern.svg': tern },
    },
    options,
  );

describe.each(['foot', 'lip'] as const)('a mask that covers the rest to the %s', (covers) => {
  const job = made({ covers, window: { grow: -0.3 } }, 60);
  const rows = ['mask-stands-off', 'mask-closes', 'window-follows'];

  test('closes, stays away from what it follows, and has a window behind that', async () => {
    const { failed, report } = await job;
    expect(failed()).toEqual([]);
    const values = rows.map((rule) => report.proof?.checks.find((check) => check.rule === rule)?.value);
    for (const value of values) expectAtMost(value ?? Number.NaN, 0.01);
    expect(report.files?.map(({ file }) => file)).toEqual(
      expect.arrayContaining(['mask.cut.svg', 'mask.guide.svg', 'window.cut.svg', 'window.guide.svg']),
    );
    expect(report.checks.find(({ rule }) => rule === 'mask')?.says).toContain(covers);
  });

  test('is named by the proof where its files are moved, or gone', async () => {
    const { failed, texts } = await job;
    const moved = (file: string, role: string, by: number) => {
      const drawing = readSvg(texts[file] ?? '', file);
      const groups = drawing.groups.flatMap((group) =>
        group.role === role ? movedGroups([group], translation(0, by)) : [group],
      );
      return { [file]: writeSvg({ ...drawing, groups }, { title: 'x', filled: false }) };
    };
    expect(failed(moved('mask.cut.svg', 'outline', 0.1))).toContain('mask-stands-off');
    expect(failed(moved('mask.cut.svg', 'outline', 0.001))).toEqual([]);
    expect(failed(moved('window.cut.svg', 'artwork', 0.1))).toContain('window-follows');
    expect(failed(moved('window.cut.svg', 'artwork', 0.001))).toEqual([]);
    expect(failed({ 'mask.cut.svg': '' })).toEqual(expect.arrayContaining(rows.slice(0, 2)));
  });
});

test('a spoilt end of a mask does not meet itself', async () => {
  const { failed, texts } = await made({ covers: 'foot', follows: ['item-2'], smooth: 0 });
  const drawing = readSvg(texts['mask.cut.svg'] ?? '', 'mask.cut.svg');
  const tilt = { a: 1, b: 0.002, c: 0, d: 1, e: 0, f: 0 };
  const groups = drawing.groups.flatMap((group) => movedGroups([group], tilt));
  const text = writeSvg({ ...drawing, groups }, { title: 'x', filled: false });
  expect(failed({ 'mask.cut.svg': text })).toContain('mask-closes');
});

test('is seen before and after it is pulled', async () => {
  const { files } = await made({ covers: 'foot', sprayed: '#112233', film: '#ddccbb' }, 60, {
    pictures: true,
  });
  const picture = (name: string) => String(files.find(({ file }) => file === name)?.content ?? '');
  expect(picture('reveal-before.svg')).toContain('#ddccbb');
  expect(picture('reveal-after.svg')).not.toContain('#ddccbb');
  for (const name of ['reveal-before.svg', 'reveal-after.svg']) expect(picture(name)).toContain('#112233');
  expect(picture('reveal-after.svg')).toContain('#223344');
});

test('refuses what it can not follow or hold together, and says why', async () => {
  await expect(made({ covers: 'foot' }, 8)).rejects.toThrow(/does not hold together/);
  await expect(made({ covers: 'foot', follows: ['item-9'] })).rejects.toThrow(/item-9.*item-1, item-2/);
  await expect(made({ covers: 'foot', window: { grow: -20 } })).rejects.toThrow(/leaves no window/);
  await expect(made({ covers: 'rim' })).rejects.toThrow(/covers/);
  await expect(folderOf({ blank: cup, job: { mask: { covers: 'foot', standOff: 2 } } })).rejects.toThrow(
    /nothing to follow/,
  );
});
