// Masks of a job from end to end: as files that the proof measures, and as pictures before and after the mask is pulled.
import { describe, expect, test } from 'vitest';
import { readSvg } from '../../../src/deliver/read-svg.ts';
import { writeSvg } from '../../../src/deliver/write-svg.ts';
import { movedGroups } from '../../../src/drawing/drawing.ts';
import { translation } from '../../../src/geometry/affine.ts';
import { directed, signedArea } from '../../../src/geometry/measure.ts';
import { expectAtMost } from '../../closeness.ts';
import { chordPoints } from '../../geometry/drawn.ts';
import { clipperArea, clipperOffset } from '../../geometry/libraries.ts';
import { folderOf } from '../a-folder.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 110, across: 78 },
  ],
};
const tern = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="24mm" viewBox="0 0 40 24">
  <path d="M0 2C10 0 15 6 20 10C25 6 30 0 40 2C30 6 26 12 21 22L19 22C14 12 10 6 0 2Z" fill="#223344"/></svg>`;
const made = (mask: object, along = 60, options = {}, band?: object) =>
  folderOf(
    {
      blank: cup,
      job: {
        items: [
          { file: 'tern.svg', across: 40, at: { turn: 0.02, along } },
          { file: 'tern.svg', across: 30, at: { turn: 0.6, along: 70 }, lay: 'even' },
        ],
        mask: { standOff: 2, smooth: 4, ...mask },
        ...(band ? { band } : {}),
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

test('a window behind two things that overlap across the seam follows the edge of both, not what is hidden of one', async () => {
  const { failed } = await folderOf({
    blank: cup,
    job: {
      items: [
        { file: 'tern.svg', across: 40, at: { turn: 0.96, along: 60 } },
        { file: 'tern.svg', across: 40, at: { turn: 0.06, along: 66 } },
      ],
      mask: { covers: 'foot', standOff: 1, smooth: 2, window: { grow: -0.4 } },
    },
    files: { 'tern.svg': tern },
  });
  expect(failed()).toEqual([]);
});

// The guide's outline of the decal, which the window is held against, was written as words are: to 0.01 mm, and without so short a line.
test('a window follows a decal with a step of 0.025 mm in its edge', async () => {
  const step =
    '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="20mm" viewBox="0 0 30 20"><path d="M0 0H28V10H28.025V20H0Z"/></svg>';
  const { failed } = await folderOf({
    blank: { use: 'other', stations: [0, 100].map((height) => ({ height, across: 80 })) },
    job: {
      items: [{ file: 'step.svg', across: 30, at: { turn: 0.5, along: 50 } }],
      mask: { covers: 'lip', standOff: 2, window: { grow: 0.2 } },
    },
    files: { 'step.svg': step },
  });
  expect(failed()).toEqual([]);
});

test('a mask in a hollow of the decal, which reaches neither end, has nothing to close', async () => {
  const cross =
    '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><path d="M-2 -2L22 22M22 -2L-2 22" fill="none" stroke="#334455" stroke-width="1.6"/></svg>';
  const tin = {
    use: 'other',
    stations: [
      { height: 0, across: 120 },
      { height: 100, across: 120 },
    ],
  };
  const { failed, report } = await folderOf({
    blank: tin,
    job: { mask: { covers: 'lip', standOff: 4, smooth: 4 } },
    artwork: { lay: 'conformal', around: 1, seamAt: 'gaps' },
    tile: cross,
  });
  expect(failed()).toEqual([]);
  expect(report.proof?.checks.find(({ rule }) => rule === 'mask-closes')?.value).toBe(0);
  // One that was cut off on its way to the finish is none of these.
  const whole = await made({ covers: 'foot', follows: ['item-2'], smooth: 0 });
  const drawing = readSvg(whole.texts['mask.cut.svg'] ?? '', 'mask.cut.svg');
  const short = drawing.groups.flatMap((group) =>
    movedGroups([group], { a: 0.9, b: 0, c: 0, d: 1, e: 0, f: 0 }),
  );
  const text = writeSvg({ ...drawing, groups: short }, { title: 'x', filled: false });
  expect(whole.failed({ 'mask.cut.svg': text })).toContain('mask-closes');
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
  await expect(made({ covers: 'lip' }, 60, {}, { from: 90, to: 108 })).rejects.toThrow(
    /beside its piece.*the band goes from 90 mm to 108 mm.*"band"/,
  );
  await expect(folderOf({ blank: cup, job: { mask: { covers: 'foot', standOff: 2 } } })).rejects.toThrow(
    /nothing to follow/,
  );
});

test('beside film that is said to be a mask itself is looked at', async () => {
  const rules = async (use: string) => {
    const { report } = await folderOf({
      blank: cup,
      job: {
        film: { use },
        items: [{ file: 'tern.svg', across: 40, at: { turn: 0.5, along: 60 } }],
        mask: { covers: 'lip', standOff: 2 },
      },
      files: { 'tern.svg': tern },
    });
    return report.checks.map(({ rule }) => rule);
  };
  expect(await rules('mask')).toContain('mask-film');
  expect(await rules('decal')).not.toContain('mask-film');
});

describe('a pattern that goes around', () => {
  // A swell with crests at the quarters of the tile: its lower edge is one line around the cup.
  const swell = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
    <path d="M0 10C5 10 5 6 10 6S15 10 20 10 25 6 30 6 35 10 40 10V16C35 16 35 20 30 20S25 16 20 16 15 20 10 20 5 16 0 16Z" fill="#223344"/></svg>`;
  const job = (mask: object, rest: object = {}) =>
    folderOf({
      blank: cup,
      // One row of it: the band is as high as the tile is laid.
      job: { band: { from: 40, to: 72 }, mask: { standOff: 2, ...mask }, ...rest },
      artwork: { around: 6 },
      tile: swell,
      files: { 'tern.svg': tern },
    });

  test.each(['foot', 'lip'])('has a mask along its edge too, to the %s, and a window', async (covers) => {
    const { failed, report, texts } = await job({ covers, window: { grow: -0.3 } });
    expect(failed()).toEqual([]);
    for (const rule of ['mask-stands-off', 'mask-closes', 'window-follows'])
      expectAtMost(report.proof?.checks.find((check) => check.rule === rule)?.value ?? Number.NaN, 0.01);
    // Area by Clipper 6: on the sheet the mask meets nothing of the swell grown by the stand-off.
    const rings = (file: string, role: string) =>
      readSvg(texts[file] ?? '', file)
        .groups.filter((group) => group.role === role)
        .flatMap(({ paths }) =>
          paths.flatMap((shape) => directed(shape).map((one) => chordPoints(one, 0.002))),
        );
    const mask = rings('mask.cut.svg', 'outline');
    const grown = clipperOffset(rings('wrap.cut.svg', 'artwork'), 1.99, 0.003);
    expect(mask).toHaveLength(1);
    expectAtMost(clipperArea('intersection', mask, grown, 'nonzero'), 0.05);
    const nearer = clipperOffset(rings('wrap.cut.svg', 'artwork'), 2.2, 0.003);
    expect(clipperArea('intersection', mask, nearer, 'nonzero')).toBeGreaterThan(20);
  });

  test('is followed beside a motif only where it is named', async () => {
    const items = [{ file: 'tern.svg', across: 20, at: { turn: 0.5, along: 60 }, apart: true }];
    const areaOf = async (mask: object) => {
      const { texts } = await job({ covers: 'foot', ...mask }, { items });
      const [outline] = readSvg(texts['mask.cut.svg'] ?? '', 'x').groups.filter(
        ({ role }) => role === 'outline',
      );
      return Math.abs(signedArea(outline?.paths[0]?.contours[0] ?? { closed: true, segments: [] }));
    };
    expect(await areaOf({})).toBeGreaterThan(await areaOf({ follows: ['artwork', 'item-1'] }));
  });
});

test('a mask is refused whose decal lies behind the handle, where its piece does not go', async () => {
  const behind = (turn: number) =>
    folderOf({
      blank: { ...cup, handle: { spans: 60, keepOff: 5 } },
      job: {
        items: [{ file: 'tern.svg', across: 12, at: { turn, along: 60 } }],
        mask: { covers: 'foot', standOff: 2, smooth: 3 },
      },
      files: { 'tern.svg': tern },
    });
  await expect(behind(0.03)).rejects.toThrow(/mask.* behind the handle/);
  expect((await behind(0.2)).failed()).toEqual([]);
});
