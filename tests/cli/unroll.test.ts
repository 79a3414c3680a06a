// `unroll` and `blank` from files and by flags; help; status 1 where a maker should look.
import { mkdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { expectWithin } from '../closeness.ts';
import { byId, elementsOf, pathsOf, pointsOf, rightOf } from './delivered.ts';
import { patience, type Ran, run, runMany, Workshop } from './run.ts';

const shop = new Workshop();
const flags = [
  '--height',
  '150',
  '--foot-across',
  '62',
  '--lip-girth',
  '270',
  '--foot-round',
  '6',
  '--lip-round',
  '1.5',
];

/** Each run by name; all in one process. */
const lines = {
  help: ['--help'],
  helpOfMake: ['make', '--help'],
  helpOfUnroll: ['help', 'unroll'],
  blankFile: ['blank', 'cup.blank.json', '--json'],
  blankFlags: ['blank', ...flags, '--reading', '0.5', '--json'],
  blankInWords: ['blank', 'cup.blank.json'],
  blankInInches: ['blank', 'cup.blank.json', '--units', 'in'],
  inches: [
    'blank',
    '--units',
    'in',
    '--height',
    '4',
    '--foot-across',
    '3 3/8',
    '--lip-across',
    '85.725mm',
    '--json',
  ],
  unrollFile: ['unroll', 'cup.blank.json', '--json', '--out', 'file'],
  unrollFlags: ['unroll', ...flags, '--json', '--out', 'flags'],
  unrollBand: [
    'unroll',
    'cup.blank.json',
    '--json',
    '--out',
    'band',
    '--band',
    '12..130',
    '--overlap',
    '8',
    '--trim-lip',
    '0',
    '--trim-foot',
    '5',
  ],
  unrollInches: [
    'unroll',
    'cup.blank.json',
    '--json',
    '--out',
    'inches',
    '--units',
    'in',
    '--band',
    '1/2..5',
    '--overlap',
    '1/4',
  ],
  unrollCoats: [
    'unroll',
    'cup.blank.json',
    '--json',
    '--out',
    'coats',
    '--coat',
    '0.4',
    '--coat',
    '0.25mm',
    '--film',
    '0.1',
  ],
  unrollRound: ['unroll', 'cup.blank.json', '--json', '--out', 'round', '--band', '2..130'],
  unrollHere: ['unroll', ...flags],
} as const;

let ran: Readonly<Record<keyof typeof lines, Ran>>;
const reportOf = (name: keyof typeof lines) => JSON.parse(ran[name].out);
beforeAll(async () => {
  const names = Object.keys(lines) as (keyof typeof lines)[];
  const all = await runMany(
    names.map((name) => lines[name]),
    shop.folder,
  );
  ran = Object.fromEntries(names.map((name, index) => [name, all[index]])) as typeof ran;
}, 300_000);
afterAll(() => shop.clear());

describe('help', () => {
  test('goes to standard output with status 0, and says what each status means', () => {
    expect(ran.help.status).toBe(0);
    expect(ran.help.lines).toEqual([]);
    for (const word of ['make', 'unroll', 'blank', 'Status: 0 done; 1 ', '; 2 refused', '70 a fault of ours'])
      expect(ran.help.out).toContain(word);
  });

  test('of a command names the flags of the contract', () => {
    expect(ran.helpOfMake.status).toBe(0);
    for (const flag of ['--json', '--out', '--units', '--debug']) expect(ran.helpOfMake.out).toContain(flag);
    for (const flag of [
      '--band',
      '--coat',
      '--film',
      '--overlap',
      '--trim-lip',
      '--trim-foot',
      '--lip-girth',
      '--foot-round',
    ])
      expect(ran.helpOfUnroll.out).toContain(flag);
  });

  test('is shown on standard error, with status 2, where no command was given', patience, async () => {
    const { status, out, lines: said } = await run([], { cwd: shop.folder });
    expect([status, out, said[0]]).toEqual([2, '', 'Usage: seamwright [options] [command]']);
  });
});

describe('blank', () => {
  test('by flags is the same as by file', () => {
    expect(reportOf('blankFlags').blank).toEqual(reportOf('blankFile').blank);
    expect(ran.blankFlags.status).toBe(0);
  });

  test('by a file gives the wall of the readings', () => {
    const { blank, checks } = reportOf('blankFile');
    // tan a = (lip radius - foot radius) / height; the slant by Pythagoras.
    const rise = 270 / (2 * Math.PI) - 31;
    expectWithin(blank.halfAngleDeg, (Math.atan2(rise, 150) * 180) / Math.PI, 1e-9);
    expectWithin(blank.along, Math.hypot(rise, 150), 1e-9);
    expect(checks).toEqual([]);
  });

  test('reads numbers without a unit in the unit of --units, and others in their own', () => {
    const { blank } = reportOf('inches');
    expect(blank.wall).toBe('cylinder');
    expectWithin(blank.along, 4 * 25.4, 1e-9);
    // 3 3/8 in is 85.725 mm exactly.
    expectWithin(blank.girthAt[0].girth, Math.PI * 85.725, 1e-9);
  });

  test('in words is in the unit asked for', () => {
    expect(ran.blankInWords.out).toContain('150.5 mm along');
    expect(ran.blankInInches.out).toContain('5.924 in along');
  });
});

describe('unroll', () => {
  test('by flags gives the same piece as by file, and writes beside where it is run', () => {
    expect(reportOf('unrollFlags').template).toEqual(reportOf('unrollFile').template);
    expect(shop.read('flags/template.cut.svg')).toBe(shop.read('file/template.cut.svg'));
    expect(shop.read('out/template.cut.svg')).toBe(shop.read('file/template.cut.svg'));
    expect(ran.unrollHere.out).toContain('written to out: template.cut.svg, template.guide.svg, report.json');
  });

  test('prints the report it writes', () => {
    expect(JSON.parse(shop.read('file/report.json'))).toEqual(reportOf('unrollFile'));
    expect(reportOf('unrollFile').pattern).toBeUndefined();
    expect(ran.unrollFile.status).toBe(0);
  });

  test('takes a band, overlap and trims', () => {
    const { template } = reportOf('unrollBand');
    expect(template.band).toEqual({ from: 12, to: 130 });
    expect([template.overlap, template.trim]).toEqual([8, { lip: 0, foot: 5 }]);
    const guide = elementsOf(shop.read('band/template.guide.svg'));
    const finish = pointsOf(byId(guide, 'seam-finish'));
    const past = pointsOf(pathsOf(guide, 'outline')[0] ?? '').map((point) => rightOf(point, finish));
    expectWithin(Math.max(...past), 8, 2e-4);
    const [[x0, y0] = [0, 0], [x1, y1] = [0, 0]] = finish;
    expectWithin(Math.hypot(x1 - x0, y1 - y0), 118, 2e-4, 'length of the seam line, mm');
  });

  test('takes lengths in inches', () => {
    const { template } = reportOf('unrollInches');
    expectWithin(template.band.from, 12.7, 1e-12);
    expectWithin(template.band.to, 127, 1e-12);
    expectWithin(template.overlap, 6.35, 1e-12);
    expect(template.trim).toEqual({ lip: 3, foot: 3 });
  });

  test('adds every coat: the wall grows along its normal, the sheet is sized on its mid-thickness', () => {
    const [coated, bare] = [reportOf('unrollCoats'), reportOf('unrollFile')];
    const a = (coated.blank.halfAngleDeg * Math.PI) / 180;
    // A slant radius is radius / sin a; the radius grows by thickness times cos a.
    const grown = ((0.4 + 0.25 + 0.1 / 2 - 0.08 / 2) * Math.cos(a)) / Math.sin(a);
    expectWithin(coated.template.innerRadius - bare.template.innerRadius, grown, 1e-9);
    expectWithin(coated.template.outerRadius - bare.template.outerRadius, grown, 1e-9);
    const rulesOf = (checks: readonly { rule: string; level: string }[]) =>
      checks.map(({ rule, level }) => [rule, level]);
    expect(rulesOf(coated.checks)).toContainEqual(['coat-caution', 'note']);
    // A plain template decorates nothing yet, so that it reaches the lip is only noted.
    expect(rulesOf(bare.checks)).toEqual([['lip-zone', 'note']]);
  });

  test('ends with 1 where the band reaches onto the rounded foot: made, but look', () => {
    expect(ran.unrollRound.status).toBe(1);
    expect(ran.unrollRound.lines).toEqual([
      expect.stringMatching(/^look: --band: reaches .* past where the wall is flat/),
    ]);
    expect(shop.read('round/template.cut.svg')).toContain('<svg');
  });
});

describe('from any folder', () => {
  test('with spaces and letters of other scripts in its name', patience, async () => {
    mkdirSync(shop.at('my cups – чашки'));
    shop.write('my cups – чашки/b.json', shop.read('cup.blank.json'));
    const { status, out } = await run(['unroll', 'b.json', '--json'], { cwd: shop.at('my cups – чашки') });
    expect(status).toBe(0);
    expect(JSON.parse(out).template).toEqual(reportOf('unrollFile').template);
    expect(shop.read('my cups – чашки/out/template.cut.svg')).toBe(shop.read('file/template.cut.svg'));
  });
});
