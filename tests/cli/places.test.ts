// Lip zone, keep-outs, items and named materials from the command line: what is told, and what the guide shows.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import { aJob, projectFolder, type Ran, run, runMany, Workshop } from './run.ts';

const shop = new Workshop();
const lines = {
  placed: ['make', 'placed.job.json', '--no-pictures', '--out', 'placed'],
  again: ['make', 'placed/job.json', '--no-pictures', '--out', 'again'],
  apart: ['make', 'apart.job.json', '--no-pictures', '--out', 'apart'],
  high: ['make', 'high.job.json', '--no-pictures', '--out', 'high'],
  noItem: ['make', 'no-item.job.json', '--no-pictures', '--out', 'none'],
  noFilm: ['make', 'no-film.job.json', '--no-pictures', '--out', 'none'],
};
let ran: Readonly<Record<keyof typeof lines, Ran>>;

beforeAll(async () => {
  const cup = JSON.parse(shop.read('cup.blank.json'));
  const window = { what: 'window', turn: { from: 0.4, to: 0.6 }, along: { from: 20, to: 60 } };
  shop.write('kept.blank.json', { ...cup, keepOut: [window] });
  shop.write('film.json', readFileSync(join(projectFolder, 'profiles/films/cast-2-mil.film.json'), 'utf8'));
  const item = { file: 'dots.svg', across: 30, at: { turn: 0.75, along: 80 } };
  const band = { from: 6, to: 130 };
  shop.write('placed.job.json', aJob({ blank: 'kept.blank.json', band, film: 'film.json', items: [item] }));
  shop.write('high.job.json', aJob());
  shop.write(
    'apart.svg',
    '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="30mm" viewBox="0 0 30 30"><circle cx="15" cy="15" r="5"/></svg>',
  );
  shop.write('apart.job.json', aJob({ artwork: { file: 'apart.svg' } }));
  shop.write('no-item.job.json', aJob({ items: [{ ...item, file: 'gone.svg' }] }));
  shop.write('no-film.job.json', aJob({ film: 'gone.json' }));
  const all = await runMany(Object.values(lines), shop.folder);
  ran = Object.fromEntries(Object.keys(lines).map((name, i) => [name, all[i]])) as typeof ran;
}, 300_000);
afterAll(() => shop.clear());

const rulesOf = (folder: string): readonly [string, string][] =>
  JSON.parse(shop.read(`${folder}/report.json`)).checks.map((c: { rule: string; level: string }) => [
    c.rule,
    c.level,
  ]);

describe('make', () => {
  test('tells of a band that reaches into the lip zone, with status 1', () => {
    expect(ran.high.status).toBe(1);
    expect(rulesOf('high')).toContainEqual(['lip-zone', 'look']);
    expect(rulesOf('placed').map(([rule]) => rule)).not.toContain('lip-zone');
  });

  test('tells of film over a window, and where its items lie', () => {
    expect(ran.placed.status).toBe(1);
    expect(rulesOf('placed')).toContainEqual(['keep-out-covered', 'look']);
    const { items } = JSON.parse(shop.read('placed/report.json'));
    expect(items).toMatchObject([{ file: 'dots.svg', across: 30, up: 30, lies: true, misses: [] }]);
  });

  test('says so where no line of the pattern crosses the seam, instead of a gap of 0 mm', () => {
    expect(ran.apart.out).toContain('seam: no line of the pattern crosses it');
    expect(ran.apart.out).not.toContain('measured on the written file');
  });

  test('outlines lip zone and window on the guide as lines of notes, and cuts neither', () => {
    const noted = (file: string) =>
      readSvg(shop.read(file), file).groups.filter(
        ({ role, lines, apart }) => role === 'note' && lines && !apart,
      );
    const [group, ...others] = noted('placed/wrap.guide.svg');
    expect(others).toEqual([]);
    expect(group?.paths).toHaveLength(2);
    expect(noted('placed/wrap.cut.svg')).toEqual([]);
    expect(shop.read('placed/wrap.cut.svg')).not.toContain('data-role="note"');
  });

  test('makes the same again from the job it wrote, film and items in it', () => {
    const job = JSON.parse(shop.read('placed/job.json'));
    expect(job.film.thickness).toBe(0.0508);
    expect(job.items[0].file).toBe('../dots.svg');
    expect(ran.again.status).toBe(1);
    expect(shop.read('again/wrap.guide.svg') === shop.read('placed/wrap.guide.svg')).toBe(true);
  });

  test.each(['noItem', 'noFilm'] as const)('refuses a file that is not there: %s', (name) => {
    expect(ran[name].status).toBe(2);
    expect(ran[name].lines).toHaveLength(1);
    expect(ran[name].lines[0]).toMatch(
      /(items\[0\]\.file: "gone\.svg"|film: "gone\.json"): there is no such file/,
    );
  });
});

test('prints a guide with outlines on it', async () => {
  const { status } = await run(['make', 'placed.job.json', '--no-pictures', '--print', '--out', 'printed'], {
    cwd: shop.folder,
  });
  expect(status).toBe(1);
});
