// Gores laid on sheets: each a piece of its own, as often as the batch takes it; proved from the folder, and spoiled.
import { expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import { signedArea } from '../../src/geometry/measure.ts';
import { expectWithin } from '../closeness.ts';
import { folderOf } from './a-folder.ts';
import { leafTile } from './a-job.ts';

const buoy = {
  use: 'other',
  wall: 'smooth',
  stations: [
    { height: 0, across: 70 },
    { height: 30, across: 82 },
    { height: 60, across: 70 },
  ],
};
const count = 8;
const batch = 2;

const job = {
  pieces: 'gores',
  gores: count,
  batch,
  film: { stretch: 0.05 },
  sheet: { across: 200, up: 200, margin: 5, mirror: true },
};
const made = folderOf({ blank: buoy, tile: leafTile(30, 24), job });

const areasIn = (text: string): readonly number[] =>
  readSvg(text, 'a file')
    .groups.filter(({ role }) => role === 'outline')
    .flatMap(({ paths }) =>
      paths.map(({ contours }) => Math.abs(contours.reduce((sum, c) => sum + signedArea(c), 0))),
    );

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

test('hold every gore as often as the batch takes it, of the area it has in the cut file', async () => {
  const { report, texts, failed } = await made;
  expect(failed()).toEqual([]);
  const laid = (report.sheets ?? []).flatMap(({ pieces }) => pieces.map(({ part }) => part));
  for (let i = 1; i <= count; i++) expect(laid.filter((part) => part === `gore-${i}`)).toHaveLength(batch);
  const onSheets = (report.sheets ?? []).flatMap(({ file }) => areasIn(texts[file] ?? ''));
  expectWithin(sum(onSheets), batch * sum(areasIn(texts['wrap.cut.svg'] ?? '')), 0.05);
  expect(report.files?.find(({ file }) => file === 'wrap.cut.svg')?.sheet).toBe(1);
  expect(report.proof?.checks.map(({ rule }) => rule)).toContain('sheet-overlap');
});

test('a sheet that is gone, a gore under a false name, one laid twice and a node that moved are named', async () => {
  const { texts, failed } = await made;
  const sheet = texts['sheet-1.cut.svg'] ?? '';
  const spoiled = (text: string) => failed({ 'sheet-1.cut.svg': text });
  expect(spoiled('')).toContain('sheet-pieces');
  expect(spoiled(sheet.replace('"gore-3.1"', '"gore-4.1"'))).toContain('sheet-pieces');
  const twice = /<path id="gore-3\.1" d="[^"]*"\/>/.exec(sheet)?.[0] ?? '';
  expect(spoiled(sheet.replace(twice, `${twice}\n${twice}`))).toContain('sheet-overlap');
  // A node of one gore 0.2 mm off.
  const outline = /(<path id="gore-3\.1" d="M)([\d.]+)/;
  expect(spoiled(sheet.replace(outline, (_, head, x) => `${head}${Number(x) + 0.2}`))).toContain(
    'sheet-lines',
  );
});

test.each([
  ['with a knife that trails', { knifeOffset: 0.25, compensate: true, runOn: 0.5 }, 'knife-tip'],
  ['of a machine that is off', { measured: { across: 149.4, up: 150.15 } }, 'sheet-lines'],
])('for a cutter %s hold too, and fail when a sheet is 1 %% larger', async (_, cutter, rule) => {
  const { texts, failed, report } = await folderOf({
    blank: buoy,
    tile: leafTile(30, 24),
    job: { ...job, batch: 1, cutter },
  });
  expect(failed()).toEqual([]);
  expect(report.proof?.checks.map((check) => check.rule)).toContain(rule);
  const sheet = texts['sheet-1.cut.svg'] ?? '';
  const larger = sheet.replace(/\d+\.\d+/g, (number) => (Number(number) * 1.01).toFixed(4));
  expect(failed({ 'sheet-1.cut.svg': larger })).toContain(rule);
});
