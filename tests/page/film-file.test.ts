// A film from a file, as the page tells it and types it into the job.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readJob } from '../../src/job/typed/read-job.ts';
import { type Bench, emptyBench, isObject, type Json, withFile } from '../../src/page/model/bench.ts';
import { filmInWords, filmOf, filmTyped } from '../../src/page/model/film-file.ts';

const file = 'mask.film.json';
const bytes = readFileSync(new URL(`../../profiles/films/${file}`, import.meta.url));
const bench: Bench = withFile(emptyBench('mm'), 'film', file, bytes);

test('a film that a file names is known by what the file has: that it is a mask, too', () => {
  const film = filmOf(bench) ?? {};
  expect(film.use).toBe('mask');
  expect(filmInWords(film, 'mm')).toMatch(/film thickness 0\.1 mm; .*; smallest piece 4 mm²; a mask: /);
  // What the file leaves out goes without saying, and is reckoned with all the same: docs/job-file.md.
  expect(filmInWords({ thickness: '0.0040in', stretch: 0.02 }, 'mm')).toBe(
    'Its figures: film thickness 0.102 mm; it stretches by 0.02 of 1; thinnest film 1 mm; narrowest gap 0.4 mm; smallest piece 4 mm²; a decal: the artwork stays on the vessel.',
  );
  expect(filmInWords({ thickness: 0.003, units: 'in' }, 'in')).toContain('film thickness 0.003 in');
  expect(filmInWords({ thickness: 'thin' }, 'mm')).toBeUndefined();
});

test('typed into the job it is the same film, in a job of inches too', () => {
  const job = (film: Json) => ({ name: 'a', blank: 'a.blank.json', units: 'in', film });
  const named: unknown = JSON.parse(bytes.toString('utf8'));
  const ofFile = readJob(job(file), 'a.job.json', { [file]: named }).film;
  expect(readJob(job(filmTyped(filmOf(bench) ?? {})), 'a.job.json').film).toEqual(ofFile);
  expect(ofFile.thickness).toBe(0.1);
});

test('a file that is none is left to the engine', () => {
  expect(filmOf(withFile(emptyBench('mm'), 'film', 'a.film.json', new Uint8Array([1])))).toBeUndefined();
  expect(isObject(filmOf({ ...bench, job: { film: { use: 'mask' } } }))).toBe(true);
});
