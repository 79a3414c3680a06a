import { expect, test } from 'vitest';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { materialFiles } from '../../../src/job/typed/read-material.ts';
import { refusalsOf } from '../../blank/a-blank.ts';
import { expectWithin } from '../../closeness.ts';

const job = { name: 'test', units: 'in', blank: 'b.json', film: 'f.json', sheet: 's.json' };
const read = (named: Readonly<Record<string, unknown>>) => readJob(job, 'j.json', named);
const film = { name: 'thin film', source: 'invented', units: 'mm', thickness: 0.05, stretch: 0.02 };
const sheet = { across: 300, up: 200, margin: '1/4in' };

test('the files of film and sheet are told with their keys, only where they are paths', () => {
  expect(materialFiles(job)).toEqual([
    { key: 'film', file: 'f.json' },
    { key: 'sheet', file: 's.json' },
  ]);
  expect(materialFiles({ film: { thickness: 1 }, sheet: '' })).toEqual([]);
  expect(materialFiles('no job')).toEqual([]);
});

test('film and sheet come from their files, bare numbers in those files in mm whatever the job is in', () => {
  const got = read({ 'f.json': film, 's.json': sheet });
  expect(got.film).toEqual({
    thickness: 0.05,
    stretch: 0.02,
    gather: 0,
    minWidth: 1,
    minGap: 0.4,
    minPiece: 4,
    minAngle: Math.PI / 9,
    use: 'decal',
  });
  expect(got.sheet?.across).toBe(300);
  expectWithin(got.sheet?.margin ?? NaN, 6.35, 1e-12);
});

test('a file in inches is read in inches', () => {
  const got = read({ 'f.json': { ...film, units: 'in', thickness: 0.002 }, 's.json': sheet });
  expectWithin(got.film.thickness, 0.0508, 1e-12);
});

test('what is wrong in such a file is told by its own name and key', () => {
  const rules = (f: unknown, s: unknown) =>
    refusalsOf(() => read({ 'f.json': f, 's.json': s })).map(({ rule, where }) => [
      rule,
      where.file,
      where.key,
    ]);
  expect(rules({ ...film, thick: 1 }, { ...sheet, margin: 100 })).toEqual([
    ['unknown-key', 'f.json', 'thick'],
    ['margin-too-wide', 's.json', 'margin'],
  ]);
  expect(rules([], { up: 3 })).toEqual([
    ['not-an-object', 'f.json', undefined],
    ['missing-key', 's.json', 'across'],
  ]);
});

test('a path that was not read is refused at its key', () => {
  const found = refusalsOf(() => read({ 's.json': sheet }));
  expect(found.map(({ rule, where }) => [rule, where.file, where.key])).toEqual([
    ['unreadable', 'j.json', 'film'],
  ]);
});
