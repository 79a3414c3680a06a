// Film that gives: the strip's measure is typed, the wrap is cut shorter around by as much, and proved as such. And which end lies on top.
import { describe, expect, test } from 'vitest';
import { readSvg } from '../../../src/deliver/read-svg.ts';
import { tightBox } from '../../../src/geometry/measure.ts';
import { draftTestPiece } from '../../../src/job/cutter/test-piece.ts';
import { standardCutter } from '../../../src/job/typed/material.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { refusalsOf } from '../../blank/a-blank.ts';
import { expectWithin } from '../../closeness.ts';
import { folderOf } from '../a-folder.ts';
import { frustum, leafTile } from '../a-job.ts';

const measured = { drawn: 200, laid: 201 };
const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 44 },
    { height: 40, across: 50 },
  ],
};
const barrel = {
  use: 'other',
  wall: 'smooth',
  stations: [
    { height: 0, across: 50 },
    { height: 20, across: 52 },
    { height: 40, across: 50 },
  ],
};
const film = { thickness: 0.1 };

const refused = (typed: object) =>
  refusalsOf(() => readJob({ name: 'test', blank: 'b.json', ...typed }, 't.job.json')).map(
    ({ rule, where }) => [rule, where.key],
  );

describe('film whose strip of 200 mm comes out at 201 mm', () => {
  const typed = { blank: cup, tile: leafTile(30, 20), artwork: { around: 5 } };
  const plain = folderOf({ ...typed, job: { film } });
  const giving = folderOf({ ...typed, job: { film: { ...film, measured } } });

  test('is cut for 200/201 of the girth at the same height: the cone on the sheet has as much less sweep', async () => {
    const { template } = (await giving).report;
    // Closed form: the sweep of a cone laid flat is 360 degrees times the sine of its half angle.
    const { halfAngle } = frustum(22, 25, 40);
    expectWithin(template?.sweepDeg ?? 0, (360 * Math.sin(halfAngle) * 200) / 201, 1e-9);
    expectWithin(template?.innerRadius ?? 0, (await plain).report.template?.innerRadius ?? 9, 1e-9);
    const seams = async (made: typeof giving) =>
      readSvg((await made).texts['wrap.guide.svg'] ?? '', 'guide')
        .groups.filter(({ role }) => role === 'seam')
        .flatMap(({ paths }) => paths.map(({ contours: [line] }) => line?.segments[0]?.from));
    const chord = async (made: typeof giving) => {
      const [a, b] = await seams(made);
      return Math.hypot((a?.x ?? 0) - (b?.x ?? 9), (a?.y ?? 0) - (b?.y ?? 9));
    };
    // Chord of the foot edge: twice the radius by the sine of half the sweep.
    const radius = template?.innerRadius ?? 0;
    const sweep = ((template?.sweepDeg ?? 0) * Math.PI) / 180;
    expectWithin(await chord(giving), 2 * radius * Math.sin(sweep / 2), 2e-3);
  });

  test('holds in the proof; the files of film that does not give, and 1 % more, fail it', async () => {
    const [{ failed, texts, report }, others] = await Promise.all([giving, plain]);
    expect(failed()).toEqual([]);
    const of = (name: string) => others.texts[name] ?? '';
    const both = { 'wrap.cut.svg': of('wrap.cut.svg'), 'wrap.guide.svg': of('wrap.guide.svg') };
    expect(failed(both)).toContain('scale');
    expect(report.checks.map(({ rule }) => rule)).toContain('film-gives');
    expectWithin(report.pattern?.scaleAcross ?? 0, others.report.pattern?.scaleAcross ?? 9, 1e-6);
    expect(texts['job-sheet.html']).toContain('0.50 % shorter around');
  });

  test('goes on walls that bend and on panels too', async () => {
    const bent = await folderOf({
      blank: barrel,
      job: { film: { ...film, stretch: 0.05, measured }, band: { from: 2, to: 38 } },
    });
    expect(bent.failed()).toEqual([]);
    const panels = await folderOf({
      blank: cup,
      job: { film: { ...film, measured: { laid: 199 } }, sheet: { across: 120, up: 120, margin: 5 } },
    });
    expect(panels.failed()).toEqual([]);
    expect(panels.report.files?.map(({ file }) => file)).toContain('wrap-b.cut.svg');
  });
});

test('what no film gives is refused, and gores, which are not pulled around', () => {
  expect(refused({ film: { measured: { laid: 211 } } })).toEqual([
    ['measured-far-off', 'film.measured.laid'],
  ]);
  expect(refused({ film: { measured: { drawn: 200 } } })).toEqual([['missing-key', 'film.measured.laid']]);
  expect(refused({ pieces: 'gores', film: { measured } })).toEqual([['measured-of-gores', 'film.measured']]);
});

test('the film strip has its marks 200 mm apart', () => {
  const { strip } = draftTestPiece({ cutter: standardCutter, words: () => [] });
  const marks = readSvg(strip.cut, 'strip')
    .groups.filter(({ role }) => role === 'artwork')
    .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours));
  const box = tightBox(marks);
  expectWithin(box.maxX - box.minX, 200, 1e-9);
  expect(marks).toHaveLength(4);
});

describe('the end on top of an overlap', () => {
  test('is the finish, or the start where the job says so: told in the report and in the steps', async () => {
    const of = async (seam: object) => (await folderOf({ blank: cup, job: { seam } })).report.seam;
    expect((await of({ overlap: 5 }))?.top).toBe('finish');
    const start = await of({ overlap: 5, top: 'start' });
    expect(start?.top).toBe('start');
    expect(start?.steps.join()).toContain('lay the start over it');
    expect((await of({ style: 'butt' }))?.top).toBeUndefined();
  });

  test('is refused at a seam that has none', () => {
    expect(refused({ seam: { style: 'butt', top: 'start' } })).toEqual([['top-without', 'seam.top']]);
  });
});
