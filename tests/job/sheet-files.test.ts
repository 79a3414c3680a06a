// What a folder holds of sheets and of an earlier make: each piece's sheet in the list of files, and what is left over named.
import { describe, expect, test } from 'vitest';
import { leftOver } from '../../src/job/list/prove-folder.ts';
import { folderOf } from './a-folder.ts';
import { leafTile } from './a-job.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 44 },
    { height: 90, across: 56 },
  ],
};
const small = { across: 90, up: 80, margin: 4 };

describe('a folder with files of an earlier make', () => {
  const made = folderOf({
    blank: cup,
    job: { band: { from: 10, to: 40 }, sheet: { across: 200, up: 200, margin: 5 } },
  });

  test('is proved by the files of the last one; the others are named', async () => {
    const { texts, failed, report } = await made;
    const old = {
      'wrap-a.cut.svg': texts['wrap.cut.svg'] ?? '',
      'sheet-7.cut.svg': texts['sheet-1.cut.svg'] ?? '',
    };
    expect(failed(old)).toEqual([]);
    expect(leftOver({ report, texts: { ...texts, ...old } })).toEqual(['wrap-a.cut.svg', 'sheet-7.cut.svg']);
    expect(leftOver({ report, texts })).toEqual([]);
  });

  test('fails where a file of the last one is gone', async () => {
    const { failed } = await made;
    expect(failed({ 'sheet-1.cut.svg': '' })).toEqual(expect.arrayContaining(['sheet-pieces']));
    expect(failed({ 'wrap.cut.svg': '' })).not.toEqual([]);
  });

  test('tells of each piece on which sheet it is', async () => {
    const { report } = await made;
    const sheetOf = (name: string) => report.files?.find(({ file }) => file === name)?.sheet;
    expect([sheetOf('wrap.cut.svg'), sheetOf('wrap.guide.svg'), sheetOf('sheet-1.cut.svg')]).toEqual([
      1, 1, 1,
    ]);
    expect(sheetOf('job.json')).toBeUndefined();
  });
});

describe('a band too tall for the sheet in any panel', () => {
  const typed = { blank: cup, tile: leafTile(30, 20), job: { band: { from: 5, to: 85 }, sheet: small } };
  const made = folderOf(typed);

  test('is cut in levels, each in panels that fit, and all of it is proved', async () => {
    const { report, failed, texts } = await made;
    expect(failed()).toEqual([]);
    const rules = report.checks.map(({ rule }) => rule);
    expect(rules).toContain('levels');
    expect(rules).not.toContain('sheet-too-small');
    const wraps = Object.keys(texts).filter((name) => /^wrap-\d-[a-z]\.cut\.svg$/.test(name));
    expect(new Set(wraps.map((name) => name[5])).size).toBeGreaterThan(1);
    expect(report.sheets?.length).toBeGreaterThan(0);
    expect(report.proof?.pass).toBe(true);
  });

  test('fails the proof where a level is left out', async () => {
    const { failed } = await made;
    expect(failed({ 'wrap-1-a.cut.svg': '', 'wrap-1-a.guide.svg': '' })).toContain('files');
  });

  test('is not where the maker gave the joints, nor where panels are enough', async () => {
    const of = async (job: object) =>
      (await folderOf({ blank: cup, job })).report.checks.map(({ rule }) => rule);
    expect(await of({ band: { from: 5, to: 85 }, sheet: small, panels: { joints: [] } })).toContain(
      'sheet-too-small',
    );
    expect(await of({ band: { from: 5, to: 60 }, sheet: small })).not.toContain('levels');
  });
});

// Its panels, `wrap-1-a`, were taken for film that is missing from the sheets.
test('the paper to lay motifs by, in panels of levels, is missed on no sheet', async () => {
  const { failed, report } = await folderOf({
    blank: cup,
    files: { 'leaf.svg': leafTile(40, 30) },
    job: {
      items: [{ file: 'leaf.svg', across: 12, at: { turn: 0.3, along: 30 } }],
      panels: { joints: [0.5], levels: ['45mm'] },
      sheet: { across: 200, up: 200 },
    },
  });
  expect(report.files?.map(({ file }) => file)).toContain('wrap-2-b.cut.svg');
  expect([report.sheets?.length, failed()]).toEqual([1, []]);
});
