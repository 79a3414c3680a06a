// Every file of profiles/ is read by the reader of its kind; the published ones against the figures of their tables.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { exitStatus } from '../src/cli/output.ts';
import { describeBlank } from '../src/job/blank/describe-blank.ts';
import { readBlank } from '../src/job/typed/read-blank.ts';
import { readJob } from '../src/job/typed/read-job.ts';
import { parseJson } from '../src/job/typed/read-json.ts';
import { blankContent } from '../src/job/typed/write-job.ts';
import { expectWithin } from './closeness.ts';

const folder = `${import.meta.dirname}/../profiles`;
const filesOf = (kind: string) => readdirSync(`${folder}/${kind}`).sort();
const contentOf = (path: string): unknown => parseJson(readFileSync(`${folder}/${path}`, 'utf8'), path);
const blankOf = (name: string) =>
  readBlank(contentOf(`blanks/${name}.blank.json`), `blanks/${name}.blank.json`);
const describedOf = (name: string) => describeBlank(blankOf(name), `${name}.blank.json`, 'mm');

const isSourced = (source: unknown): boolean =>
  /^(?:invented|published: .+\((?:seen|from memory)[^)]*\)|common practice, no source)/.test(String(source));

/** Says where it comes from, on the whole and figure by figure. */
function expectEachSourced(content: unknown): void {
  const { source, sources, name, units, use, ...figures } = content as Record<string, unknown>;
  expect(typeof name).toBe('string');
  expect(['mm', 'in']).toContain(units);
  expect(use === undefined || use === 'mask' || use === 'decal').toBe(true);
  expect(isSourced(source), String(source)).toBe(true);
  expect(Object.keys(sources as object).sort()).toEqual(Object.keys(figures).sort());
  for (const one of Object.values(sources as object)) expect(isSourced(one), String(one)).toBe(true);
}

describe('profiles of blanks', () => {
  const names = filesOf('blanks').map((file) => file.replace('.blank.json', ''));

  test.each(names)('%s is described, and says where its figures come from', (name) => {
    const { report, lines, checks } = describedOf(name);
    expect(lines.length).toBeGreaterThan(2);
    expect(report.flatBands.length).toBeGreaterThan(0);
    expect(checks.filter(({ level }) => level === 'stop')).toEqual([]);
    expect([0, 1]).toContain(exitStatus(checks));
    expect(isSourced(blankOf(name).source), blankOf(name).source).toBe(true);
  });

  test.each(names)('%s is the same blank once it is written and read again', (name) => {
    const blank = blankOf(name);
    const again = readBlank(parseJson(JSON.stringify(blankContent(blank)), name), name);
    expect(JSON.stringify(blankContent(again))).toBe(JSON.stringify(blankContent(blank)));
    expect(again.source).toBe(blank.source);
    expect(again.use).toBe(blank.use);
  });

  test('has one of each kind of wall', () => {
    const walls = names.map((name) => describedOf(name).report.wall);
    for (const wall of ['cylinder', 'frustum', 'stepped', 'curved'] as const) expect(walls).toContain(wall);
    expect(names.some((name) => blankOf(name).handle)).toBe(true);
    expect(names.some((name) => blankOf(name).footRound > 15)).toBe(true);
  });

  // Can Manufacturers Institute, voluntary standard (cancentral.com, seen): diameters and heights in inches; the
  // circumferences and wall areas were worked out from them apart from this project (references 3.2).
  test.each([
    ['can-no-303', 254.351, 111.125, 282.65],
    ['can-no-2', 274.3, 115.8875, 317.88],
    ['can-no-2-1-2', 324.173, 119.0625, 385.97],
    ['can-no-10', 493.741, 177.8, 877.87],
    ['can-12-oz', 207.63, 122.2248, 253.78],
  ])('%s has the girth, height and wall area of the published table', (name, girth, height, area) => {
    const { report } = describedOf(name);
    expectWithin(report.along, height, 5e-5);
    for (const read of report.girthAt) expectWithin(read.girth, girth, 6e-4);
    expectWithin(((report.girthAt[0]?.girth ?? 0) * report.along) / 100, area, 6e-3);
  });

  // ISO 3819, low form: outside diameter and greatest height (rows seen; 50 ml quoted second hand; references 3.1).
  test.each([
    ['beaker-5-ml', 22, 32],
    ['beaker-10-ml', 26, 37],
    ['beaker-50-ml', 42, 60],
  ])('%s has the diameter and the height of its row, and its tolerance of 5 %', (name, across, height) => {
    const { report } = describedOf(name);
    expectWithin(report.along, height, 1e-9);
    for (const read of report.girthAt) expectWithin(read.girth, Math.PI * across, 1e-9);
    // Limits of 5 % as a rectangular distribution: JCGM 100:2008, 4.3.7.
    expectWithin(blankOf(name).reading, (0.05 * across) / Math.sqrt(3), 0.005);
  });
});

describe('profiles of films and sheets', () => {
  const jobWith = (material: object, named: Readonly<Record<string, unknown>>) =>
    readJob({ name: 'test', blank: 'cup.blank.json', ...material }, 'test.job.json', named);

  test.each(filesOf('films'))('%s can be named by a job', (file) => {
    const content = contentOf(`films/${file}`);
    expectEachSourced(content);
    const { film } = jobWith({ film: file }, { [file]: content });
    expect(film.thickness).toBe((content as { thickness: unknown }).thickness);
    expect(Object.keys(film).sort()).toEqual(
      ['thickness', 'stretch', 'gather', 'minWidth', 'minGap', 'minPiece', 'minAngle', 'use'].sort(),
    );
  });

  test.each(filesOf('sheets'))('%s can be named by a job', (file) => {
    const content = contentOf(`sheets/${file}`);
    expect(isSourced((content as { source: unknown }).source)).toBe(true);
    expect(jobWith({ sheet: file }, { [file]: content }).sheet?.across).toBeGreaterThan(200);
  });

  // 1 mil is 0.001 in. Specialty Fabrics Review: cast "or 2 mil film", calendered "or 4 mil film" (seen). ISO 216: A4.
  test('are as thick and as large as published', () => {
    const film = (file: string) => jobWith({ film: file }, { [file]: contentOf(`films/${file}`) }).film;
    expectWithin(film('cast-2-mil.film.json').thickness, 0.002 * 25.4, 1e-12);
    expectWithin(film('calendered-4-mil.film.json').thickness, 0.004 * 25.4, 1e-12);
    const sheet = (file: string) => jobWith({ sheet: file }, { [file]: contentOf(`sheets/${file}`) }).sheet;
    expect(sheet('a4.sheet.json')).toMatchObject({ across: 210, up: 297 });
    expectWithin(sheet('roll-24-in.sheet.json')?.across ?? NaN, 609.6, 1e-9);
  });
});

describe('profiles of cutters', () => {
  test.each(filesOf('cutters'))('%s can be named by a job', (file) => {
    const content = contentOf(`cutters/${file}`);
    expectEachSourced(content);
    const job = { name: 'test', blank: 'cup.blank.json', cutter: file };
    const { cutter } = readJob(job, 'test.job.json', { [file]: content });
    expect(cutter.speed).toBe((content as { speed: unknown }).speed);
    expect(cutter.bed?.across).toBeGreaterThan(200);
  });
});

test('nothing stands in profiles/ that no test reads', () => {
  const read = ['blanks', 'cutters', 'films', 'sheets'];
  expect(readdirSync(folder).sort()).toEqual(['README.md', ...read]);
  for (const kind of read)
    for (const file of filesOf(kind)) expect(file).toMatch(new RegExp(`\\.${kind.slice(0, -1)}\\.json$`));
});
