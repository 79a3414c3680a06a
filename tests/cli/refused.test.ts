// Bad input and what tired people type: status 2, a clear line each, nothing written.
import { execFileSync } from 'node:child_process';
import { cpSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { aJob, patience, projectFolder, type Ran, run, runMany, Workshop } from './run.ts';

interface Bad {
  readonly title: string;
  readonly args: readonly string[];
  /** One pattern a line of standard error, in order. */
  readonly says: readonly RegExp[];
}

const shop = new Workshop();
const badTiles = join(projectFolder, 'fixtures/bad-tiles');
cpSync(badTiles, shop.at('bad'), { recursive: true });

let jobs = 0;
const job = (content: object | string): readonly string[] => {
  jobs += 1;
  shop.write(`job-${jobs}.json`, content);
  return ['make', `job-${jobs}.json`, '--out', 'new'];
};
const withArt = (file: string) => job(aJob({ artwork: { file } }));
const blank = (content: object): readonly string[] => job(aJob({ blank: { name: 'b', ...content } }));
const stations = [
  { height: 0, across: 62 },
  { height: 150, girth: 270 },
];
const unroll = (...args: string[]) => ['unroll', 'cup.blank.json', '--out', 'new', ...args];

shop.write('empty.json', '');
shop.write('comma.json', '{\n  "name": "x",\n  "blank": "cup.blank.json",\n}\n');
shop.write('a-file', 'something dear');
shop.write('lists/names.csv', 'name\nPebble\n');
shop.write('good.job.json', aJob());
// A pipe that nobody writes to: whoever reads it waits without end.
execFileSync('mkfifo', [shop.at('pipe')]);
const endless = /: is a device or a pipe, which may never end; save what it gives as a file, and name that$/;

const cases: readonly Bad[] = [
  // Issue: 'Bad input'.
  {
    title: 'an unknown key, with the nearest known one',
    args: job(aJob({ artwrok: {} })),
    says: [/^job-1\.json: artwrok: unknown key "artwrok"; the nearest known one here is "artwork"$/],
  },
  {
    title: 'a key of the seam, typed beside it',
    args: job(aJob({ overlap: 6 })),
    says: [
      /: overlap: unknown key "overlap"; the nearest known one is "seam\.overlap" or "collars\.overlap" or "panels\.overlap"$/,
    ],
  },
  {
    title: 'no such film',
    args: job(aJob({ film: 'nosuch.film.json' })),
    says: [/: film: "nosuch\.film\.json": there is no such file; check/],
  },
  { title: 'a device for a drawing', args: ['inspect', '/dev/zero'], says: [endless] },
  { title: 'a pipe for a drawing', args: ['inspect', 'pipe'], says: [endless] },
  { title: 'a pipe for a job', args: ['make', 'pipe'], says: [endless] },
  { title: 'a pipe for artwork', args: withArt('pipe'), says: [endless] },
  { title: 'a pipe for a list', args: ['names', 'good.job.json', 'pipe'], says: [endless] },
  {
    title: 'a coat of tenths typed as whole mm',
    args: unroll('--coat', '40'),
    says: [/^--coat: is a coat of 40 mm, and up to 25 mm is worked out; check the unit/],
  },
  {
    title: 'no such job',
    args: ['make', 'nosuch.job.json'],
    says: [/^nosuch\.job\.json: there is no such file; check/],
  },
  {
    title: 'no such blank',
    args: job(aJob({ blank: 'nosuch.blank.json' })),
    says: [/: blank: "nosuch\.blank\.json": there is no such file; check/],
  },
  {
    title: 'no such artwork',
    args: withArt('nosuch.svg'),
    says: [/: artwork\.file: "nosuch\.svg": there is no such file; check/],
  },
  {
    title: 'a zero size',
    args: blank({ stations: [{ height: 0, across: '0mm' }, stations[1]] }),
    says: [/: blank\.stations\[0\]\.across: "0mm" is no size; give more than 0/],
  },
  {
    title: 'negative sizes, all of them told',
    args: blank({
      stations: [
        { height: 0, across: -62 },
        { height: 150, girth: '-270mm' },
      ],
    }),
    says: [
      /stations\[0\]\.across: -62 is negative; give more/,
      /stations\[1\]\.girth: "-270mm" is negative; give more/,
    ],
  },
  {
    title: 'stations upside down',
    args: blank({ stations: [...stations].reverse() }),
    says: [/: blank\.stations\[1\]\.height: 0 mm .*; .*/],
  },
  {
    title: 'a band outside the wall',
    args: job(aJob({ band: { from: 12, to: 200 } })),
    says: [/: band\.to: 200 mm is past the lip; the wall is 150\.48 mm along, so give/],
  },
  {
    title: 'a band upside down',
    args: job(aJob({ band: { from: 120, to: 20 } })),
    says: [/: band: runs from 120 mm to 20 mm; give a "to" above its "from"/],
  },
  {
    title: 'an overlap wider than the girth',
    args: job(aJob({ seam: { overlap: 300 } })),
    says: [/: seam\.overlap: 300 mm is more than the least girth, 194\.78 mm; /],
  },
  {
    title: 'a tile without area',
    args: withArt('bad/no-area.svg'),
    says: [/^bad\/no-area\.svg: shows no area, .*; fill/],
  },
  {
    title: 'a tile of text only',
    args: withArt('bad/text-only.svg'),
    says: [/^bad\/text-only\.svg:2:3: text: is text that names no font, .*; turn/],
  },
  {
    title: 'a tile of pixels only',
    args: withArt('bad/raster-only.svg'),
    says: [/^bad\/raster-only\.svg:2:3: image#photo: is a picture made of pixels; trace/],
  },
  {
    title: 'broken path data, with its place',
    args: withArt('bad/broken-path.svg'),
    says: [/^bad\/broken-path\.svg:3:3: path#rope: path data can't be read: .*; draw this path again/],
  },
  {
    title: 'strokes of no known width',
    args: withArt('bad/strokes.svg'),
    says: [/^bad\/strokes\.svg:2:3: path#wave: has a stroke that stays as wide .*; turn/],
  },
  {
    title: 'a tile cut short',
    args: withArt('bad/cut-short.svg'),
    says: [/^bad\/cut-short\.svg:3:\d+: can't be read as SVG: /],
  },
  {
    title: 'a tile without a size',
    args: withArt('bad/no-size.svg'),
    says: [/^bad\/no-size\.svg: has no size above zero; give/],
  },
  {
    title: 'a tile of no width',
    args: withArt('bad/zero-size.svg'),
    says: [/^bad\/zero-size\.svg:1:1: width "0mm" is not a size above zero; give/],
  },
  {
    title: 'a PDF named .svg',
    args: withArt('bad/a-pdf.svg'),
    says: [/^bad\/a-pdf\.svg:1:1: is not an SVG drawing: it begins with "%PDF-1\.7.*; save/],
  },
  {
    title: 'an empty tile',
    args: withArt('bad/empty.svg'),
    says: [/^bad\/empty\.svg:1:1: is not an SVG drawing: it is empty; save/],
  },
  // What tired people type.
  { title: 'a folder for a job', args: ['make', 'bad'], says: [/^bad: is a folder, not a file; name/] },
  {
    title: 'an empty job',
    args: ['make', 'empty.json'],
    says: [/^empty\.json:1:1: the file is empty; give/],
  },
  {
    title: 'a blank for a job',
    args: ['make', 'cup.blank.json'],
    says: [/^cup\.blank\.json: is a blank, not a job; give/],
  },
  {
    title: 'a job for a blank',
    args: ['unroll', 'good.job.json'],
    says: [/^good\.job\.json: is a job, not a blank; give/],
  },
  {
    title: 'a drawing for a job',
    args: ['make', 'dots.svg'],
    says: [/^dots\.svg:1:1: "<svg" stands where /],
  },
  {
    title: 'a comma too many',
    args: ['make', 'comma.json'],
    says: [/^comma\.json:3:28: a comma stands before the closing "}"; take the comma out$/],
  },
  {
    title: 'a folder for artwork',
    args: withArt('bad'),
    says: [/: artwork\.file: "bad": is a folder, not a file; name/],
  },
  {
    title: 'a file for the output folder',
    args: ['make', 'good.job.json', '--out', 'a-file'],
    says: [/^a-file: can't be written to .*; give another folder/],
  },
  {
    title: 'a folder inside a file',
    args: ['make', 'good.job.json', '--out', 'a-file/out'],
    says: [/^a-file\/out: can't be written to .*; give/],
  },
  {
    title: 'centimetres for a unit',
    args: ['make', 'good.job.json', '--units', 'cm'],
    says: [/^--units: "cm" is not a unit here; give mm or in$/],
  },
  {
    title: 'centimetres for a unit of a blank',
    args: ['blank', 'cup.blank.json', '--units', 'cm'],
    says: [/^--units: "cm"/],
  },
  {
    title: 'a band upside down on the command line',
    args: unroll('--band', '130..12'),
    says: [/^--band: "130\.\.12" is upside down; give/],
  },
  {
    title: 'a band with one end',
    args: unroll('--band', '12..'),
    says: [/^--band: "12\.\." is not a band; give/],
  },
  {
    title: 'a band with a dash',
    args: unroll('--band', '12-130'),
    says: [/^--band: "12-130" is not a band; give/],
  },
  {
    title: 'a band past the lip on the command line',
    args: unroll('--band', '12..900'),
    says: [/^--band: 900 mm is past the lip; /],
  },
  {
    title: 'several wrong flags at once',
    args: unroll('--coat', 'thick', '--film', '-1', '--overlap', '3,5'),
    says: [/^--coat: "thick" is not a length; give/, /^--film: "-1" is negative; /, /^--overlap: .*; /],
  },
  {
    title: 'readings beside a file',
    args: unroll('--height', '150'),
    says: [/^--height: is given beside cup\.blank\.json; keep/],
  },
  {
    title: 'half a blank by flags',
    args: ['blank', '--height', '150'],
    says: [/^--foot-across: is missing; give/, /^--lip-across: is missing; give/],
  },
  {
    title: 'across and girth of one end',
    args: ['blank', '--height', '9', '--foot-across', '62', '--foot-girth', '190', '--lip-across', '70'],
    says: [/^--foot-girth: is given beside --foot-across; keep/],
  },
  {
    title: 'an unknown flag, with the nearest known one',
    args: unroll('--overlp', '4'),
    says: [/^unknown option '--overlp' \(Did you mean --overlap\?\); add --help/],
  },
  {
    title: 'half a flag, with those it may be the start of',
    args: ['blank', '--foot', '62'],
    says: [
      /^unknown option '--foot' \(Did you mean --foot-across or --foot-girth or --foot-round\?\); add --help/,
    ],
  },
  {
    title: 'a round too large, by flags',
    args: ['blank', '--height', '150', '--foot-across', '62', '--lip-across', '86', '--foot-round', '90'],
    says: [/^--foot-round: 90 mm needs /],
  },
  {
    title: 'a use there is none of, by flags',
    args: ['blank', '--height', '150', '--foot-across', '62', '--lip-across', '86', '--use', 'vase'],
    says: [/^--use: "vase" will not do here; give "drinking" or "other"$/],
  },
  {
    title: 'a volume of a coat where its thickness is needed',
    args: ['collar', 'cup.blank.json', '--coat', '12ml'],
    says: [/^--coat: "12ml" is a volume; give the coat's thickness here, such as 0\.4 mm$/],
  },
  {
    title: 'an unknown command',
    args: ['mak', 'good.job.json'],
    says: [/^unknown command 'mak' \(Did you mean make\?\); add --help/],
  },
  {
    title: 'two jobs',
    args: ['make', 'good.job.json', 'good.job.json'],
    says: [/^too many arguments for 'make'.*; add --help/],
  },
  {
    title: 'a drawing in another folder, named as it was given',
    args: ['inspect', 'bad/cut-short.svg'],
    says: [/^bad\/cut-short\.svg:3:\d+: can't be read as SVG: /],
  },
  {
    title: 'a tile in another folder',
    args: ['repeat', './bad/cut-short.svg', 'cup.blank.json'],
    says: [/^\.\/bad\/cut-short\.svg:3:\d+: can't be read as SVG: /],
  },
  {
    title: 'a list in another folder, with a job that takes nothing of it',
    args: ['names', './good.job.json', 'lists/names.csv'],
    says: [/^\.\/good\.job\.json: nothing in it is filled from names\.csv/],
  },
  { title: 'no job', args: ['make'], says: [/^missing required argument 'job'; add --help/] },
];

let before: readonly string[];
let ran: readonly Ran[];
beforeAll(async () => {
  before = shop.state();
  ran = await runMany(
    cases.map(({ args }) => args),
    shop.folder,
  );
}, 300_000);
afterAll(() => shop.clear());

describe('refused with status 2 and a clear line each', () => {
  test.each(cases.map((one, index) => ({ ...one, index })))('$title', ({ says, index }) => {
    const { status, out, lines } = ran[index] ?? { status: -1, out: '', lines: [] };
    expect(lines).toEqual(says.map((pattern) => expect.stringMatching(pattern)));
    expect(status).toBe(2);
    expect(out).toBe('');
    for (const line of lines) expect(line).not.toMatch(/^\s+at |node:|undefined|\[object|NaN/);
  });

  test('the same in a process of its own', patience, async () => {
    for (const title of ['a tile of text only', 'a file for the output folder', 'no job']) {
      const index = cases.findIndex((one) => one.title === title);
      const { took: _, ...alone } = await run(cases[index]?.args ?? [], { cwd: shop.folder, alone: true });
      const { took: __, ...together } = ran[index] ?? {};
      expect(alone).toEqual(together);
    }
  });

  test('and nothing written, changed or left behind', () => expect(shop.state()).toEqual(before));

  test('every bad tile of the fixtures is among them', () => {
    const used = new Set(
      cases.flatMap(({ args }) => (args[1]?.startsWith('job-') ? [shop.read(args[1])] : [])),
    );
    const tiles = readdirSync(badTiles).filter((name) => name.endsWith('.svg'));
    for (const name of tiles)
      expect(
        [...used].some((text) => text.includes(`bad/${name}`)),
        name,
      ).toBe(true);
  });
});
