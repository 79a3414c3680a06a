// `seamwright collar` and `--print`, as a maker runs them.
import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { expectWithin } from '../closeness.ts';
import { byId, elementsOf, pathsOf } from './delivered.ts';
import { patience, run, Workshop } from './run.ts';

const shop = new Workshop();
afterAll(() => shop.clear());

const cup = {
  name: 'cup',
  stations: [
    { height: 0, across: 62 },
    { height: 150, across: 86 },
  ],
  footRound: 6,
  lipRound: 1.5,
};
shop.write('tapered.blank.json', JSON.stringify(cup));
shop.write('handle.blank.json', JSON.stringify({ ...cup, handle: { spans: 40, keepOff: 4 } }));
shop.write(
  'flat.blank.json',
  JSON.stringify({
    stations: [
      { height: 0, across: 60 },
      { height: 60, across: 150 },
    ],
  }),
);

const collar = (...args: string[]) => run(['collar', ...args], { cwd: shop.folder });

describe('collar', () => {
  test('gives every edge of the flat band, on its own side of the line', patience, async () => {
    const { status, out } = await collar('tapered.blank.json', '--out', 'all', '--json');
    expect(status).toBe(0);
    const report = JSON.parse(out);
    expect(report).toEqual(JSON.parse(shop.read('all/collar.report.json')));
    const lean = Math.atan(12 / 150);
    const [foot, lip] = report.collar;
    // Tangent points of the rounds, as the contract gives them.
    expectWithin(foot.along, 6 / Math.tan(Math.PI / 4 + lean / 2), 1e-9);
    expectWithin(lip.along, 150 / Math.cos(lean) - 1.5 / Math.tan(Math.PI / 4 - lean / 2), 1e-9);
    expect([foot.edge, lip.edge, foot.width, lip.width]).toEqual(['lower', 'upper', 20, 20]);
    expectWithin(foot.girth, Math.PI * 62 + 2 * Math.PI * foot.along * Math.sin(lean), 1e-9);
    expectWithin(foot.length, foot.girth + Math.PI * 0.1 * Math.cos(lean), 1e-9);
    expectWithin(foot.height, foot.along * Math.cos(lean), 1e-9);
    // rho (1 / cos phi - 1), phi the sector's angle; rho for the paper's mid-thickness.
    const [rho, phi] = [foot.length / (2 * Math.PI * Math.sin(lean)), 2 * Math.PI * Math.sin(lean)];
    expectWithin(foot.straightStripClimb, rho * (1 / Math.cos(phi) - 1), 1e-9);
    expect(report.files.map(({ file }: { file: string }) => file)).toEqual([
      'collar.cut.svg',
      'collar.guide.svg',
      'collar.print.pdf',
      'collar.report.json',
    ]);
  });

  test('cuts the outline alone and shows the rest on the guide, in the same place', patience, async () => {
    expect((await collar('tapered.blank.json', '--height', '1 1/2in', '--out', 'one')).status).toBe(0);
    const [cut, guide] = ['cut', 'guide'].map((kind) => elementsOf(shop.read(`one/collar.${kind}.svg`)));
    if (!cut || !guide) return expect.fail('no files');
    expect(cut.filter(({ name }) => name === 'path')).toHaveLength(1);
    expect(byId(cut, 'collar')).toBe(byId(guide, 'collar'));
    expect(byId(cut, 'collar')).not.toBe('');
    // Three plumb lines at the quarters and two scale squares; the seam at both ends; one level line; words.
    expect(pathsOf(guide, 'register')).toHaveLength(5);
    expect(pathsOf(guide, 'seam')).toHaveLength(2);
    expect(pathsOf(guide, 'trim')).toHaveLength(1);
    expect(pathsOf(guide, 'note').length).toBeGreaterThan(15);
    expect(JSON.parse(shop.read('one/collar.report.json')).collar[0].height).toBeCloseTo(38.1, 9);
  });

  test('gives the same bytes each time, the print too', patience, async () => {
    for (const folder of ['first', 'second'])
      await collar('tapered.blank.json', '--along', '40', '--paper-size', 'letter', '--out', folder);
    for (const file of ['collar.cut.svg', 'collar.guide.svg', 'collar.print.pdf', 'collar.report.json'])
      expect(readFileSync(shop.at(`second/${file}`)).equals(readFileSync(shop.at(`first/${file}`)))).toBe(
        true,
      );
  });

  test('runs from one side of a handle to the other', patience, async () => {
    const { out } = await collar('handle.blank.json', '--along', '60', '--out', 'handle', '--json');
    const [entry] = JSON.parse(out).collar;
    expectWithin(entry.girth - entry.length, 48, 0.5);
  });

  test('coats under the paper make it longer', patience, async () => {
    const [bare, coated] = await Promise.all(
      [[], ['--coat', '0.3', '--coat', '0.2']].map(async (coats, i) => {
        const { out } = await collar(
          'tapered.blank.json',
          '--along',
          '60',
          ...coats,
          '--out',
          `c${i}`,
          '--json',
        );
        return JSON.parse(out).collar[0];
      }),
    );
    expectWithin(coated.length - bare.length, 2 * Math.PI * 0.5 * Math.cos(Math.atan(12 / 150)), 1e-9);
  });

  test('says that a straight strip does not go round a wide bowl', patience, async () => {
    const { out } = await collar('flat.blank.json', '--along', '30', '--out', 'bowl', '--json');
    expect(JSON.parse(out).collar[0]).toMatchObject({ straightStripClimb: null, straightStripBow: null });
    const { out: said } = await collar('flat.blank.json', '--along', '30', '--out', 'bowl');
    expect(said).toContain('a straight-cut strip does not go round this wall at all');
  });

  test("that reaches onto a rounded edge wants the maker's eye", patience, async () => {
    const { status, lines } = await collar(
      'tapered.blank.json',
      '--along',
      '15',
      '--edge',
      'upper',
      '--out',
      'eye',
    );
    expect(status).toBe(1);
    expect(lines.join('\n')).toMatch(/15 mm up the wall.*onto a rounded edge/);
    // 15 mm of wall are left below, so the strip is that wide and no more.
    expect(JSON.parse(shop.read('eye/collar.report.json')).collar[0].width).toBeCloseTo(15, 9);
  });
});

describe("what can't be had is refused in one line, and nothing is written", () => {
  test.each([
    { args: ['--height', '400'], says: /--height: 400 mm is past the lip; the wall is 150 mm high/ },
    { args: ['--along', '2', '--edge', 'upper'], says: /--edge.*only 2 mm of wall; use --edge lower/ },
    { args: ['--edge', 'top'], says: /--edge: "top" is no edge of a collar; give upper or lower/ },
    { args: ['--width', '3'], says: /--width: 3 mm is too narrow/ },
    { args: ['--width', '0'], says: /--width: "0" is no size/ },
    {
      args: ['--paper-size', 'a9'],
      says: /--paper-size: "a9" is no paper size here; give a4, a3, letter or tabloid, or a size with its unit/,
    },
    {
      args: Array.from({ length: 25 }, (_, i) => ['--height', String(20 + i)]).flat(),
      says: /--height: asks for 25 collars; up to 24 are drawn in one go/,
    },
    { args: ['--overlap', '900'], says: /--overlap: 900 mm is more than the least girth/ },
  ])('$args', patience, async ({ args, says }) => {
    const { status, lines } = await collar('tapered.blank.json', ...args, '--out', 'refused');
    expect(status).toBe(2);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(says);
    expect(shop.state().join('\n')).not.toContain('refused');
  });
});

test('unroll --print adds the template at true size on paper', patience, async () => {
  const { status, out } = await run(['unroll', 'tapered.blank.json', '--print', '--out', 'print', '--json'], {
    cwd: shop.folder,
  });
  expect(status).toBe(0);
  expect(JSON.parse(out).files).toContainEqual({ file: 'template.print.pdf', role: 'print' });
  expect(readFileSync(shop.at('print/template.print.pdf'), 'latin1')).toMatch(/^%PDF-/);
});

test('make and help load no PDF writer', patience, async () => {
  const watch = [
    '--import',
    `data:text/javascript,${encodeURIComponent(
      "import { register } from 'node:module'; register('data:text/javascript,' + encodeURIComponent(`export async function load(url, context, next) { if (url.includes('/pdfkit/')) throw new Error('pdfkit is loaded'); return next(url, context); }`));",
    )}`,
  ];
  const options = { cwd: shop.folder, node: watch };
  expect((await run(['--help'], options)).status).toBe(0);
  expect((await run(['unroll', 'tapered.blank.json', '--out', 'plain'], options)).status).toBe(0);
  // The watch itself works: a print does load it.
  expect((await run(['unroll', 'tapered.blank.json', '--print', '--out', 'plain'], options)).status).toBe(70);
});
