// The command given drawings and readings changed at random: a status that a maker knows, words, and nothing written where it
// refuses; and every class of what is made to do harm, within the time and memory that nothing may exceed.
import { readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { aJob, patience, projectFolder, run, Workshop } from '../cli/run.ts';
import { expectAtMost } from '../closeness.ts';
import { manyScans } from './a-jpeg.ts';
import { greyPng } from './a-png.ts';
import { patient, seeds } from './fuzz.ts';
import { mutatedJson, mutatedSvg, pick, randomFrom } from './mutate.ts';

const workshop = new Workshop();
afterAll(() => workshop.clear());

const cases = join(import.meta.dirname, '../cases/artwork');
const drawings = readdirSync(cases).flatMap((folder) =>
  readdirSync(join(cases, folder))
    .filter((file) => file.endsWith('.svg'))
    .map((file) => readFileSync(join(cases, folder, file), 'utf8')),
);

interface Tried {
  readonly seed: number;
  readonly status: number | null;
  readonly lines: readonly string[];
}

async function tried(seed: number, args: readonly string[]): Promise<Tried | undefined> {
  const before = workshop.state();
  const { status, lines } = await run(args, { cwd: workshop.folder });
  const isKnown = status === 0 || status === 1 || status === 2;
  const isTold = status === 0 || lines.length > 0;
  const isClean = status !== 2 || workshop.state().join() === before.join();
  return isKnown && isTold && isClean ? undefined : { seed, status, lines };
}

test('drawings and readings changed at random end in 0, 1 or 2, and 2 writes nothing', patient, async () => {
  const faults: Tried[] = [];
  const seen = new Set<string>();
  const blank: unknown = JSON.parse(workshop.read('cup.blank.json'));
  for (const seed of seeds(24)) {
    const random = randomFrom(seed);
    let text = pick(random, drawings);
    for (let i = 0; i <= random() * 4; i++) text = mutatedSvg(text, random);
    workshop.write('art.svg', text);
    workshop.write('read.blank.json', mutatedJson(blank, random) as object);
    for (const args of [
      ['inspect', 'art.svg', '--art-across', '40mm', '--out', `seen-${seed}`],
      ['unroll', 'read.blank.json', '--out', `flat-${seed}`],
    ]) {
      const fault = await tried(seed, args);
      if (fault) faults.push(fault);
    }
  }
  for (const name of readdirSync(workshop.folder)) seen.add(name.replace(/-\d+$/, ''));
  expect(faults).toEqual([]);
  expect([...seen]).toEqual(expect.arrayContaining(['seen', 'flat']));
});

const svg = (body: string, size = 'width="40mm" height="40mm" viewBox="0 0 40 40"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${body}</svg>`;
const square = '<path d="M4 4H36V36H4Z"/>';

const entities = [...'bcdefghij'].map((name, i) => `<!ENTITY ${name} "${`&${'abcdefghi'[i]};`.repeat(10)}">`);
const bomb = `<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa">${entities.join('')}]>${svg('<title>&j;</title>')}`;
const outside = `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hosts">]>${svg('<title>&x;</title>')}`;

const many = (count: number, one: object) => Array.from({ length: count }, () => one);
const inspected = (file: string) => ['inspect', file, '--out', 'out'];
const laid = (file: string) => {
  workshop.write('laid.job.json', aJob({ artwork: { file, across: '60mm' } }));
  return ['make', 'laid.job.json', '--out', 'out'];
};
const lettered = (file: string) => {
  const text = { text: 'Tern', capHeight: 9, at: { turn: 0.5, along: 60 }, font: file };
  workshop.write('lettered.job.json', { name: 'cup', blank: 'cup.blank.json', lettering: [text] });
  return ['make', 'lettered.job.json', '--out', 'out'];
};
const listed = (file: string) => {
  workshop.write('listed.job.json', aJob({ name: '{name}' }));
  return ['names', 'listed.job.json', file, '--out', 'out'];
};

/** No refusal says more than this, letters: what it quotes may be as long as the file. */
const mostSaid = 1000;

/** Each class of what is made to do harm: a file, a command that reads it, and what is said of it. */
const hostile: readonly (readonly [
  what: string,
  file: string,
  content: () => string | Uint8Array,
  args: (file: string) => readonly string[],
  says: RegExp,
])[] = [
  ['a bomb of entities', 'a.svg', () => bomb, inspected, /entit/],
  ['an entity from outside', 'a.svg', () => outside, inspected, /entit/],
  [
    'a picture from outside',
    'a.svg',
    () => svg(`${square}<image href="http://127.0.0.1:9/x.png" width="9" height="9"/>`),
    laid,
    /image/,
  ],
  [
    'a million groups in one another',
    'a.svg',
    () => svg('<g>'.repeat(1e6) + '</g>'.repeat(1e6)),
    inspected,
    /more than 256 elements deep/,
  ],
  [
    'ten million segments',
    'a.svg',
    () => svg(`<path d="M0 0${'l1 1'.repeat(1e7)}z"/>`),
    inspected,
    /1000000 points/,
  ],
  [
    'a hundred thousand attributes',
    'a.svg',
    () => svg(`<path ${Array.from({ length: 1e5 }, (_, i) => `a${i}="1"`).join(' ')} d="M4 4H36V36H4Z"/>`),
    inspected,
    /an element of more than 1000 attributes/,
  ],
  [
    'clip paths that each need the one before twice',
    'a.svg',
    () => {
      const clipped = (i: number) => `<path clip-path="url(#c${i})" d="M4 4H36V36Z"/>`;
      const clips = Array.from(
        { length: 30 },
        (_, i) => `<clipPath id="c${i + 1}">${clipped(i).repeat(2)}</clipPath>`,
      );
      return svg(`<clipPath id="c0">${square}</clipPath>${clips.join('')}${clipped(30)}`);
    },
    inspected,
    /need more than 1000 others/,
  ],
  [
    'twenty thousand style rules for one shape',
    'a.svg',
    () => {
      const rules = Array.from({ length: 20_000 }, (_, i) => `.c${i} .d${i} > path:first-child {fill:#123}`);
      return svg(`<style>${rules.join('')}</style>${square}`);
    },
    inspected,
    /has 20000 declarations in style rules of 897780 letters/,
  ],
  [
    'dashes far shorter than their round ends',
    'a.svg',
    () =>
      svg(
        `<path fill="none" stroke="#000" stroke-width=".3" stroke-linecap="round" stroke-dasharray=".02" d="${Array.from({ length: 19 }, (_, i) => `M0 ${2 * i}H40`).join('')}"/>`,
      ),
    inspected,
    /is dashed into more than 20000 pieces/,
  ],
  [
    'sixty thousand lines side by side',
    'a.svg',
    () =>
      svg(
        `<path d="M4 36${Array.from({ length: 6e4 }, (_, i) => `L${4 + i / 2000} ${i % 2 === 0 ? 30 : 4}`).join('')}L36 36Z"/>`,
      ),
    inspected,
    /lie over or beside each other as thickly/,
  ],
  [
    'five thousand specks on less than a square centimetre',
    'a.svg',
    () => {
      const at = (i: number) => `x="${(i % 71) * 0.13}" y="${Math.floor(i / 71) * 0.13}"`;
      const specks = Array.from({ length: 5000 }, (_, i) => `<use href="#a" ${at(i)}/>`);
      return svg(`<defs><circle id="a" r=".05"/></defs>${specks.join('')}`);
    },
    inspected,
    /has more than 80 edges to the square mm on \d\d of them, finer than any blade/,
  ],
  [
    'three hundred lines of tens of metres',
    'a.svg',
    () => {
      const at = (i: number) => `${(i * 7919) % 90000} ${(i * 104729) % 90000}`;
      const lines = Array.from({ length: 300 }, (_, i) => `<path d="M${at(i)}L${at(i + 301)}"/>`);
      return svg(`<g fill="none" stroke="#000">${lines.join('')}</g>`);
    },
    inspected,
    /has more than 5 km of edges/,
  ],
  [
    'an entity that nothing declares',
    'a.svg',
    () => svg('<title>&x;</title>'),
    inspected,
    /entity that nothing/,
  ],
  ['what is no number', 'a.svg', () => svg('<path d="M0 0LNaN 9L9 9Z"/>'), inspected, /path/],
  ['a number past all', 'a.svg', () => svg('<path d="M0 0L1e308 9L9 1e308Z"/>'), inspected, /out of range/],
  ['a shape of 900 m', 'a.svg', () => svg('<path d="M4 4H36V9e5H4Z"/>'), inspected, /more than 100 m away/],
  [
    'a view box of no size',
    'a.svg',
    () => svg(square, 'width="40mm" height="40mm" viewBox="0 0 0 0"'),
    inspected,
    /viewBox/,
  ],
  [
    'a PDF by another name',
    'a.svg',
    () => '%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\nendobj',
    inspected,
    /is not an SVG/,
  ],
  ['a PNG that says it is large', 'a.png', () => greyPng(60_000, 1000), laid, /pixels/],
  ['a PNG that unpacks to far more than it says', 'a.png', () => greyPng(64, 4e8), laid, /unpack/],
  ['a JPEG that says it is large', 'a.jpg', () => manyScans(60_000, 1), laid, /pixels/],
  ['a JPEG of twenty thousand scans', 'a.jpg', () => manyScans(4000, 20_000), laid, /more than 64 scans/],
  ['a font cut short', 'a.ttf', () => font().slice(0, 9000), lettered, /cut short/],
  ['a font cut short in its head', 'a.ttf', () => font().slice(0, 40), lettered, /is cut short, or damaged/],
  ['a font of nothing', 'a.ttf', () => '', lettered, /too short to be a font/],
  ['a list of 1 GB', 'gigabyte.csv', () => '', listed, /1000 MB; up to 50 MB/],
  [
    'a list of one cell of 40 MB',
    'a.csv',
    () => `name\n"${'x'.repeat(4e7)}"`,
    listed,
    /a cell of 40000000 letters/,
  ],
  ['a list of NULs', 'a.csv', () => new Uint8Array(1e7), listed, /a cell of 10000000 letters/],
  ['a drawing of NULs', 'a.svg', () => new Uint8Array(1e7), inspected, /is not an SVG/],
  [
    'a key of 2 MB',
    'a.job.json',
    () => JSON.stringify({ name: 'a', blank: 'cup.blank.json', ['x'.repeat(2e6)]: 1 }),
    (file) => ['make', file],
    /x: unknown key/,
  ],
  [
    'a name of 10 MB',
    'a.job.json',
    () => JSON.stringify(aJob({ name: 'x'.repeat(1e7) })),
    (file) => ['make', file],
    /name: "x+…" will not do here; give a text of one line, up to 200 letters/,
  ],
  [
    'three hundred thousand keys that are none of ours',
    'a.job.json',
    () => JSON.stringify(Object.fromEntries(Array.from({ length: 3e5 }, (_, i) => [`k${i}`, 1]))),
    (file) => ['make', file],
    /has 300000 unknown keys, the first "k0"; is this the file you meant\?/,
  ],
  [
    'two and a half million keys',
    'a.job.json',
    () => `{${Array.from({ length: 2.5e6 }, (_, i) => `"k${i}":1`).join()}}`,
    (file) => ['make', file],
    /holds more than 1000000 values/,
  ],
  [
    'an id of 2 MB, of several lines',
    'a.svg',
    () => svg(`<path id="a&#10;b${'x'.repeat(2e6)}" d="M4 4Q"/>`),
    inspected,
    /^a\.svg:1:88: path#a bx{57}…: path data can't be read: [^\n]*$/,
  ],
  [
    'a job in Latin-1',
    'a.job.json',
    () => Buffer.from(JSON.stringify(aJob({ name: 'M\u00f6we' })), 'latin1'),
    (file) => ['make', file],
    /^a\.job\.json:1: is not text in UTF-8, so letters with accents would be lost; save it in UTF-8$/,
  ],
  [
    'a key that all objects have',
    'a.job.json',
    () => '{"name":"a","blank":"cup.blank.json","__proto__":{"name":"b"}}',
    (file) => ['make', file],
    /__proto__: unknown key/,
  ],
  [
    'a length past all',
    'a.job.json',
    () => '{"name":"a","blank":"cup.blank.json","seam":{"overlap":1e999}}',
    (file) => ['make', file],
    /overlap: Infinity is not a length/,
  ],
  [
    'a font in WOFF2 that says it is large',
    'a.woff2',
    () => woff2(0xffffff00),
    lettered,
    /WOFF2 file, which is not read/,
  ],
  [
    'a hundred thousand coats',
    'a.job.json',
    () => JSON.stringify({ name: 'a', blank: 'cup.blank.json', coats: many(1e5, { thickness: 0.1 }) }),
    (file) => ['make', file],
    /coats: has 100000 in its list; up to 200/,
  ],
  [
    'a hundred thousand stations',
    'a.blank.json',
    () => JSON.stringify({ stations: many(1e5, { height: 1, across: 60 }) }),
    (file) => ['unroll', file, '--out', 'out'],
    /stations: has 100000 in its list; up to 200/,
  ],
  ...(
    [
      [
        'as many repeats around as degrees',
        { artwork: { file: 'dots.svg', around: 360 } },
        /finer than a blade cuts; up to 50000/,
      ],
      [
        'more areas than a cutter cuts in a day',
        { artwork: { file: 'dots.svg', around: 200 } },
        /would be \d+ areas, which no cutter cuts in a day; up to 60000 are laid/,
      ],
      [
        'more letters than a vessel has room for',
        {
          lettering: many(21, { text: 'Tern '.repeat(99), capHeight: 4, at: { turn: 0.5, along: 60 } }),
        },
        /lettering: come to 10395 letters; up to 10000 are laid on one vessel/,
      ],
      [
        'steps of a hundredth of a mm',
        { artwork: { file: 'dots.svg', repeat: { a: [0.01, 0], b: [0, 0.01] } } },
        /larger steps/,
      ],
      [
        'strips of a hundredth of a mm',
        { relief: { every: 0.01, clear: 0.01 } },
        /relief.every: 0.01 mm is narrower/,
      ],
      [
        'film that is none under 30 mm',
        { film: { minWidth: 30 }, artwork: { file: 'dots.svg', mend: true } },
        /minWidth: 30 is over 10 mm/,
      ],
      [
        'film of no width that could be cut',
        { film: { minWidth: 1e-308 }, artwork: { file: 'dots.svg' } },
        /minWidth: 1e-308 is under 0.001 mm, which cannot be meant; check the unit, or give 0$/,
      ],
      [
        'gaps of none',
        { film: { minGap: 1e-7 }, artwork: { file: 'dots.svg' } },
        /minGap: 1e-7 is under 0.001 mm/,
      ],
      [
        'a backing of 400 mm',
        { artwork: { file: 'dots.svg' }, layers: { backing: { grow: 400 } } },
        /grow: 400 is over 100 mm/,
      ],
    ] as const
  ).map(
    ([what, keys, says]) =>
      [what, 'a.job.json', () => JSON.stringify(aJob(keys)), (file: string) => ['make', file], says] as const,
  ),
  [
    'two thousand drawings to be looked at together',
    'a.svg',
    () => svg(square),
    (file) => ['inspect', ...Array.from({ length: 2000 }, () => file)],
    /^1999 drawings would be laid over the first, each films of its own; up to 200 are/,
  ],
  [
    'a job nested a million deep',
    'a.job.json',
    () => '['.repeat(1e6),
    (file) => ['make', file],
    /over 64 deep/,
  ],
];

/** The head of a font as WOFF2 packs it, with the size that it says to unpack to. Source: W3C, WOFF File Format 2.0, section 4.1. */
function woff2(size: number): Uint8Array {
  const head = Buffer.alloc(2000);
  head.write('wOF2', 0);
  head.writeUInt32BE(0x10000, 4);
  head.writeUInt32BE(size, 16);
  return head;
}

const font = () =>
  readFileSync(
    join(
      projectFolder,
      'node_modules/@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf',
    ),
  );

test(
  'whatever is made to do harm is refused in words, writes nothing, and takes neither 10 s nor 2 GB',
  patience,
  async () => {
    for (const [what, file, content, args, says] of hostile) {
      writeFileSync(workshop.at(file), content());
      if (file === 'gigabyte.csv') truncateSync(workshop.at(file), 1e9);
      const words = args(file);
      const before = workshop.state();
      const { status, lines, took } = await run(words, { cwd: workshop.folder });
      expect([what, status, lines.join('\n').slice(0, mostSaid)]).toEqual([
        what,
        2,
        expect.stringMatching(says),
      ]);
      expect([what, lines.join('\n').length <= mostSaid]).toEqual([what, true]);
      expect([what, workshop.state()]).toEqual([what, before]);
      expectAtMost(took?.cpuSeconds ?? Number.NaN, 10, `processor time for ${what}, s`);
      expectAtMost((took?.peakBytes ?? Number.NaN) / 1e9, 2, `memory up to ${what}, GB`);
    }
  },
);

test('scripts in a drawing reach no file that is written', patience, async () => {
  const act = 'gulls.steal()';
  workshop.write(
    'acts.svg',
    svg(
      `<script>${act}</script><path onload="${act}" onclick="${act}" d="M4 4H36V36H4Z"/><a href="javascript:${act}"><circle cx="20" cy="2" r="1"/></a>`,
    ),
  );
  const { status } = await run(laid('acts.svg'), { cwd: workshop.folder });
  expect(status).toBeLessThan(2);
  const files = readdirSync(workshop.at('out'), { recursive: true, encoding: 'utf8' });
  expect(files).toEqual(expect.arrayContaining(['wrap.cut.svg', 'rolled.svg', 'job-sheet.html']));
  expect(files.filter((file) => /gulls|javascript:/.test(workshop.read(`out/${file}`)))).toEqual([]);
});
