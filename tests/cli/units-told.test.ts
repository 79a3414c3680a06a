// A job in inches is told in inches: on the terminal, on the job sheet and in pictures. Its report stays in mm.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { aJob, type Ran, runMany, Workshop } from './run.ts';

const shop = new Workshop();
const blank = {
  name: 'cup in inches',
  units: 'in',
  stations: [
    { height: 0, across: 2.5 },
    { height: 6, across: 3.25 },
  ],
};
const lines = {
  inches: ['make', 'inches.job.json', '--no-pictures', '--out', 'inches'],
  mm: ['make', 'inches.job.json', '--no-pictures', '--out', 'mm', '--units', 'mm'],
  json: ['make', 'inches.job.json', '--no-pictures', '--out', 'json', '--json'],
  refused: ['make', 'refused.job.json', '--out', 'none'],
  blank: ['blank', 'inches.blank.json'],
};
let ran: Readonly<Record<keyof typeof lines, Ran>>;

beforeAll(async () => {
  const job = { units: 'in', blank, seam: { style: 'overlap', overlap: 0.25 } };
  shop.write('inches.job.json', aJob({ ...job, trim: { foot: 0.125, lip: 0.125 } }));
  shop.write('refused.job.json', aJob({ ...job, band: { from: 0.5, to: 40 } }));
  shop.write('inches.blank.json', blank);
  const all = await runMany(Object.values(lines), shop.folder);
  ran = Object.fromEntries(Object.keys(lines).map((name, i) => [name, all[i]])) as typeof ran;
}, 300_000);
afterAll(() => shop.clear());

const millimetres = /\d mm\b(?!²| and 1 in| \()/;

describe('a job in inches', () => {
  test('is told in inches on the terminal', () => {
    expect(ran.inches.lines.join('\n')).toContain('the decoration reaches 0.787 in');
    expect([ran.inches.out, ...ran.inches.lines].join('\n')).not.toMatch(millimetres);
  });

  test('is told in mm where that was typed, to the same files', () => {
    expect(ran.mm.lines.join('\n')).toContain('the decoration reaches 20 mm');
    expect(shop.read('mm/wrap.cut.svg')).toBe(shop.read('inches/wrap.cut.svg'));
  });

  test('has a report in mm, and no other words in it', () => {
    const { checks } = JSON.parse(shop.read('inches/report.json'));
    expect(JSON.parse(ran.json.out).checks).toEqual(checks);
    expect(JSON.stringify(checks)).toContain('the decoration reaches 20 mm');
  });

  test('has a job sheet in inches, girths also as a tape shows them', () => {
    const sheet = shop.read('inches/job-sheet.html');
    // By hand: 2.5 in across are 7.854 in around, the nearest sixteenth is 7 14/16.
    expect(sheet).toContain('7.854 in, 7 7/8 on the tape');
    expect(sheet).toContain('0.25 in of overlap');
    expect(sheet.replace(/<style>.*?<\/style>/s, '')).not.toMatch(millimetres);
  });

  test('is refused in inches', () => {
    expect(ran.refused.status).toBe(2);
    expect(ran.refused.lines.join('\n')).toMatch(/ in\b/);
    expect(ran.refused.lines.join('\n')).not.toMatch(millimetres);
  });

  test('its blank is described in the unit of its file', () => {
    expect(ran.blank.out).toContain('7.854 in');
    expect([ran.blank.out, ...ran.blank.lines].join('\n')).not.toMatch(millimetres);
  });
});
