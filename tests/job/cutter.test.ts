// What the profile of a cutter does to a job: its sheets, its limits, the way of its knife, its marks; told and proved.
import { describe, expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import { limitsOf } from '../../src/job/artwork/cut-limits.ts';
import { standardCutter, standardFilm } from '../../src/job/typed/material.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { refusalsOf } from '../blank/a-blank.ts';
import { expectAtMost } from '../closeness.ts';
import { folderOf } from './a-folder.ts';
import { leafTile } from './a-job.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 44 },
    { height: 40, across: 50 },
  ],
};
const knife = { knifeOffset: 0.25, compensate: true, runOn: 0.5 };
const small = { blank: cup, tile: leafTile(30, 20) };

const jobOf = (typed: object) => readJob({ name: 'test', blank: 'b.json', ...typed }, 't.job.json');

describe('the bed and the margin', () => {
  test('are the sheet of a job that has none', () => {
    const { sheet } = jobOf({ cutter: { bed: { across: '12in', up: '24in' }, margin: 6 } });
    expect(sheet).toEqual({ across: 304.8, up: 609.6, margin: 6, spacing: 2, mirror: false });
    expect(jobOf({ cutter: { bed: { across: 610 } } }).sheet?.up).toBeUndefined();
    expect(jobOf({}).sheet).toBeUndefined();
  });

  test('hold for the sheet it has: no less margin, and no larger than the bed either way round', () => {
    const cutter = { bed: { across: 300, up: 600 }, margin: 8 };
    expect(jobOf({ cutter, sheet: { across: 600, up: 300, margin: 3 } }).sheet?.margin).toBe(8);
    expect(jobOf({ cutter, sheet: { across: 200, up: 300, margin: 12 } }).sheet?.margin).toBe(12);
    for (const sheet of [{ across: 400, up: 500 }, { across: 300 }, { across: 610, up: 100 }])
      expect(refusalsOf(() => jobOf({ cutter, sheet })).map(({ rule, where }) => [rule, where.key])).toEqual([
        ['sheet-past-bed', 'sheet'],
      ]);
  });

  test('an axis to follow needs an offset, and a margin leaves something of the bed', () => {
    const of = (cutter: object) =>
      refusalsOf(() => jobOf({ cutter })).map(({ rule, where }) => [rule, where.key]);
    expect(of({ compensate: true })).toEqual([['no-knife-offset', 'cutter.compensate']]);
    expect(of({ bed: { across: 20 }, margin: 10 })).toEqual([['margin-too-wide', 'cutter.margin']]);
  });
});

test('a cutter from a file of its own is the same once its job is written and read again', () => {
  const file = { name: 'a plotter', source: 'invented', units: 'mm', ...knife, bed: { across: 300 } };
  const { cutter } = readJob({ name: 'test', blank: 'b.json', cutter: 'c.json' }, 't.job.json', {
    'c.json': file,
  });
  expect(jobOf({ cutter: JSON.parse(JSON.stringify(cutter)) }).cutter).toEqual(cutter);
});

test('the smallest feature holds where the film would take less, and not where it takes more', () => {
  const limits = limitsOf(standardFilm, { ...standardCutter, smallest: 0.7 });
  expect([limits.minWidth, limits.minGap]).toEqual([1, 0.7]);
});

test('without a word of a knife nothing is changed, and the profile still tells of the order', async () => {
  const plain = await folderOf(small);
  const trailing = await folderOf({ ...small, job: { cutter: { knifeOffset: 0.25, runOn: 1 } } });
  expect(trailing.texts['wrap.cut.svg']).toBe(plain.texts['wrap.cut.svg']);
  const said = ({ report }: typeof plain) => report.cutter?.does.map(({ key }) => key);
  expect(said(plain)).toEqual(['order', 'start', 'smallest']);
  expect(said(trailing)).toEqual(['order', 'start', 'knifeOffset', 'smallest']);
  expect(trailing.report.cutter?.does.find(({ key }) => key === 'knifeOffset')?.says).toContain('0.25 mm');
});

describe.each([
  ['swivel', { ...knife }],
  ['lift', { ...knife, corner: 'lift', pastCorner: 0.3 }],
])('files for the axis of a knife: %s', (_, cutter) => {
  const made = folderOf({ ...small, job: { cutter, sheet: { across: 260, up: 300, margin: 5 }, batch: 2 } });
  const plain = folderOf({ ...small, job: { sheet: { across: 260, up: 300, margin: 5 }, batch: 2 } });

  test('hold open strokes, the guide the lines; the tip is proved to keep within 0.02 mm of them', async () => {
    const { texts, prove, report } = await made;
    const strokes = readSvg(texts['wrap.cut.svg'] ?? '', 'cut').groups.flatMap(({ paths }) =>
      paths.flatMap(({ contours }) => contours),
    );
    expect(strokes.every(({ closed }) => !closed)).toBe(true);
    const { pass, checks } = prove();
    expect(checks.filter((check) => !check.pass)).toEqual([]);
    expect(pass).toBe(true);
    for (const rule of ['knife-tip', 'knife-all']) {
      const row = checks.find((check) => check.rule === rule);
      expectAtMost(row?.value ?? 9, 0.02);
      expect(row?.limit).toBe(0.02);
    }
    expect(report.cutter?.compensated).toBe(true);
    expect(report.proof?.pass).toBe(true);
    expect(report.files?.map(({ file }) => file)).toContain('sheet-1.guide.svg');
  });

  test('fail the proof when they hold the lines instead, or a stroke is moved by 0.1 mm, or one is missing', async () => {
    const [{ texts, failed }, lines] = await Promise.all([made, plain]);
    const cut = texts['wrap.cut.svg'] ?? '';
    const from = (name: string) => ({ [name]: lines.texts[name] ?? '' });
    expect(failed(from('wrap.cut.svg'))).toContain('knife-tip');
    expect(failed(from('sheet-1.cut.svg'))).toContain('knife-tip');
    const moved = cut.replace(/(<path d="M[^L]*L)([\d.]+)/, (_all, head, x) => `${head}${Number(x) + 0.1}`);
    expect(moved).not.toBe(cut);
    expect(failed({ 'wrap.cut.svg': moved }).filter((rule) => rule.startsWith('knife'))).not.toEqual([]);
    expect(failed({ 'wrap.cut.svg': cut.replace(/<path d="[^"]*"\/>\n/, '') })).toContain('knife-all');
    const large = cut.replace(/\d+\.\d+/g, (n) => String(Number(n) * 1.01));
    expect(failed({ 'wrap.cut.svg': large })).toEqual(expect.arrayContaining(['knife-tip', 'knife-all']));
    expect(failed({ 'sheet-1.guide.svg': '' })).toContain('sheet-pieces');
  });
});

test('gores, strips and motifs are cut by the axis too', async () => {
  const barrel = {
    use: 'other',
    wall: 'smooth',
    stations: [
      { height: 0, across: 50 },
      { height: 20, across: 56 },
      { height: 40, across: 50 },
    ],
  };
  const gores = await folderOf({
    blank: barrel,
    job: { pieces: 'gores', gores: 10, cutter: knife, film: { stretch: 0.05 } },
  });
  expect(gores.failed()).toEqual([]);
  expect(gores.prove().checks.map(({ rule }) => rule)).toContain('knife-tip');
  const parts = await folderOf({
    blank: cup,
    job: {
      cutter: knife,
      seam: { style: 'strip', strip: 8 },
      items: [{ file: 'dot.svg', across: 9, at: { turn: 0.5, along: 20 } }],
    },
    files: {
      'dot.svg':
        '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm" viewBox="0 0 9 9"><path d="M1 1H8V8H1Z"/></svg>',
    },
  });
  expect(parts.failed()).toEqual([]);
  const lines = readSvg(parts.texts['strip.cut.svg'] ?? '', 'strip').groups.flatMap(({ paths }) => paths);
  expect(lines.flatMap(({ contours }) => contours).some(({ closed }) => closed)).toBe(false);
});

test('marks that the cutter looks for stand at the corners of the guide, and the proof is the same', async () => {
  const { texts, failed } = await folderOf({
    ...small,
    job: { cutter: { marks: 'corners', margin: 10 }, sheet: { across: 260, up: 300 } },
  });
  for (const [guide, cut] of [
    ['wrap.guide.svg', 'wrap.cut.svg'],
    ['sheet-1.guide.svg', 'sheet-1.cut.svg'],
  ] as const) {
    const { width, height } = readSvg(texts[cut] ?? '', cut);
    const marks = readSvg(texts[guide] ?? '', guide)
      .groups.flatMap(({ paths }) => paths)
      .filter(({ id }) => id?.startsWith('cutter-mark'));
    const corners = marks.map(({ contours: [mark] }) => mark?.segments[0]?.to);
    expect(corners).toEqual(
      [
        [5, 5],
        [width - 5, 5],
        [width - 5, height - 5],
        [5, height - 5],
      ].map(([x = 0, y = 0]) => ({ x: expect.closeTo(x, 3), y: expect.closeTo(y, 3) })),
    );
    expect(texts[cut]).not.toContain('cutter-mark');
  }
  expect(failed()).toEqual([]);
});

test('the way of the knife is drawn where the files hold it, and only there', async () => {
  const names = async (cutter: object) =>
    (await folderOf({ ...small, job: { cutter } }, { pictures: true })).files.map(({ file }) => file);
  expect(await names(knife)).toEqual(expect.arrayContaining(['knife.svg', 'knife.png']));
  expect(await names({ knifeOffset: 0.25 })).not.toContain('knife.svg');
});
