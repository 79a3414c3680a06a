// Layers of a job from end to end: spread once a period, closed around the cup, and put to the proof as files.
import { describe, expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import { writeSvg } from '../../src/deliver/write-svg.ts';
import { movedGroups } from '../../src/drawing/drawing.ts';
import { translation } from '../../src/geometry/affine.ts';
import { directed } from '../../src/geometry/measure.ts';
import { NearestFinder } from '../../src/geometry/nearest.ts';
import { expectAtMost, expectWithinPart } from '../closeness.ts';
import { chordPoints } from '../geometry/drawn.ts';
import { clipperArea } from '../geometry/libraries.ts';
import { folderOf } from './a-folder.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 90, across: 74 },
  ],
};
const [sea, sand, sun] = ['#17566b', '#d8b26a', '#d4532f'];
/**
 * A band of sea that goes on across the tile's sides, sand that meets it edge to edge, and suns that lie on both: one of them
 * crosses the border and is drawn at either side.
 */
const shore = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path d="M0 8H40V16C38 18 36 16 34 16H6C4 16 2 14 0 16Z" fill="${sea}"/>
  <path d="M34 16V24H6V16Z" fill="${sand}"/>
  <path d="M0 8l4 6h-8Z M40 8l4 6h-8Z" fill="${sun}"/><circle cx="20" cy="20" r="5" fill="${sun}"/></svg>`;
const made = (layers?: object, rest: object = {}) =>
  folderOf({
    blank: cup,
    job: { band: { from: 15, to: 55 }, film: { thickness: 0 }, ...(layers ? { layers } : {}), ...rest },
    tile: shore,
    artwork: { around: 6 },
  });

/** Chords of a layer's shapes, holes running the other way. */
const ringsOf = (text: string, layer: string) =>
  readSvg(text, 'wrap.cut.svg')
    .groups.filter((group) => group.layer === layer)
    .flatMap(({ paths }) =>
      paths.flatMap((shape) => directed(shape).map((contour) => chordPoints(contour, 0.001))),
    );

/** Area that shows of a layer when others lie over it, by Clipper 6, mm². */
const shows = (text: string, layer: string, above: readonly string[]): number =>
  clipperArea(
    'difference',
    ringsOf(text, layer),
    above.flatMap((name) => ringsOf(text, name)),
    'nonzero',
  );

const plainJob = made();

describe.each([
  ['stacked and spread', { spread: 0.4 }],
  ['stacked and choked', { spread: -0.4 }],
  ['knocked out', { style: 'knocked-out' }],
  ['knocked out and spread', { style: 'knocked-out', spread: 0.3 }],
])('%s', (_, layers) => {
  const both = Promise.all([plainJob, made(layers)]);

  test('closes around the cup and holds in every check', async () => {
    const [, { report, failed }] = await both;
    expect(failed()).toEqual([]);
    expectAtMost(report.pattern?.seamGap?.position ?? Number.NaN, 0.01);
    expect(report.pattern?.joins).toBe(true);
  });

  // Clipper 6 (clipper-lib, BSL-1.0), an engine of its own: what shows of each colour is what showed of it as drawn.
  test('shows what the drawing shows, within a thousandth of its area', async () => {
    const [plain, films] = (await both).map(({ texts }) => texts['wrap.cut.svg'] ?? '');
    for (const [layer, above] of [
      [sea, [sand, sun]],
      [sand, [sun]],
      [sun, []],
    ] as const)
      expectWithinPart(shows(films ?? '', layer, above), shows(plain ?? '', layer, above), 1e-3, layer);
  });

  test('changes the films that lie under others', async () => {
    const [plain, films] = (await both).map(({ report }) => report.pattern?.layers ?? []);
    const area = (of: typeof plain, name: string) => of?.find(({ layer }) => layer === name)?.area ?? 0;
    expect(Math.abs(area(films, sea) - area(plain, sea))).toBeGreaterThan(20);
    expectWithinPart(area(films, sun), area(plain, sun), 1e-6);
  });
});

describe('an order of the maker', () => {
  test('stacks the colours by it, shows the drawing all the same, and puts an underlay and a backing under all', async () => {
    const order = [{ colour: sun, spread: 0.2 }, sea, sand];
    const { texts, report, failed } = await made({
      order,
      underlay: { choke: 0.3 },
      backing: { grow: 2, smooth: 2 },
    });
    const cut = texts['wrap.cut.svg'] ?? '';
    const layers = readSvg(cut, 'wrap.cut.svg').groups.flatMap(({ layer }) => layer ?? []);
    expect(layers).toEqual(['backing', 'underlay', sun, sea, sand]);
    expect(failed()).toEqual([]);
    const plain = (await plainJob).texts['wrap.cut.svg'] ?? '';
    expectWithinPart(shows(cut, sun, [sea, sand]), shows(plain, sun, []), 1e-3);
    expectWithinPart(shows(cut, sand, []), shows(plain, sand, [sun]), 1e-3);
    expect(report.checks.filter(({ rule }) => rule === 'painting-order').length).toBeGreaterThan(0);
    expect(report.checks.find(({ rule }) => rule === 'spread-on-taper')?.where.key).toBe('layers.spread');
  });

  test('names colours that the drawings have, each once', async () => {
    await expect(made({ order: ['#123456'] })).rejects.toThrow(
      /"#123456" is no colour of this job's drawings/,
    );
    await expect(made({ order: [sun, sun] })).rejects.toThrow(/is there before/);
    await expect(made({ spread: '20mm' })).rejects.toThrow(/up to 10 mm either way/);
  });
});

test('an item of several colours has films of its own', async () => {
  const { report, failed } = await folderOf({
    blank: cup,
    job: {
      layers: { style: 'knocked-out', spread: 0.2, backing: { grow: 3, smooth: 2 } },
      items: [{ file: 'shore.svg', across: 40, at: { turn: 0.5, along: 45 } }],
    },
    files: { 'shore.svg': shore },
  });
  const [item] = report.items ?? [];
  expect(item?.layers.map(({ layer }) => layer)).toEqual([
    'item-1 backing',
    `item-1 ${sea}`,
    `item-1 ${sand}`,
    `item-1 ${sun}`,
  ]);
  expect(failed()).toEqual([]);
});

describe('a cut file for each layer', () => {
  const each = made({ style: 'knocked-out', spread: 0.3, files: 'each' });
  const names = [sea, sand, sun].map((colour) => `wrap-${colour?.slice(1)}.cut.svg`);
  const moved = (text: string, by: number) => {
    const drawing = readSvg(text, 'x');
    const groups = drawing.groups.flatMap((group) =>
      group.role === 'artwork' ? movedGroups([group], translation(by, 0)) : [group],
    );
    return writeSvg({ ...drawing, groups }, { title: 'x', filled: false });
  };

  test('has a safe name, is listed with its layer, and takes the place of the one for all', async () => {
    const { report, texts, failed } = await each;
    const cuts = (report.files ?? []).filter(({ role }) => role === 'cut');
    expect(cuts.map(({ file, layer }) => [file, layer])).toEqual([
      [names[0], sea],
      [names[1], sand],
      [names[2], sun],
    ]);
    expect(texts['wrap.cut.svg']).toBeUndefined();
    expect(failed()).toEqual([]);
    expect(report.proof?.checks.find(({ rule }) => rule === 'layers-in-register')?.value).toBeLessThan(1e-3);
  });

  test('has the marks and the outline of the guide, clear of the art', async () => {
    const { texts } = await each;
    const inFile = (file: string, role: string) =>
      readSvg(texts[file] ?? '', file)
        .groups.filter((group) => group.role === role)
        .flatMap(({ paths }) => paths);
    const { width, height } = readSvg(texts[names[0] ?? ''] ?? '', 'x');
    // The guide's squares stand below the page of a cut file, where no blade should go.
    const onPage = ({ x, y }: { x: number; y: number }) => x >= 0 && y >= 0 && x <= width && y <= height;
    const marks = inFile('wrap.guide.svg', 'register').filter(({ contours }) =>
      contours.every(({ segments }) => segments.every(({ from }) => onPage(from))),
    );
    expect(marks.length).toBeGreaterThan(8);
    for (const file of names) {
      expect(inFile(file, 'register')).toEqual(marks);
      expect(inFile(file, 'outline')).toEqual(inFile('wrap.guide.svg', 'outline'));
      const art = inFile(file, 'artwork').flatMap(({ contours }) => contours);
      const finder = new NearestFinder(art);
      const ends = marks.flatMap(({ contours }) =>
        contours.flatMap(({ segments }) => segments.map(({ from }) => from)),
      );
      expect(ends.filter((p) => finder.find(p, 0.5))).toEqual([]);
    }
  });

  test.each([0, 1, 2])('that is moved by a tenth of a mm is named by the proof (%d)', async (i) => {
    const { texts, failed } = await each;
    const name = names[i] ?? '';
    expect(failed({ [name]: moved(texts[name] ?? '', 0.1) })).toContain('layers-in-register');
    expect(failed({ [name]: moved(texts[name] ?? '', 0.001) })).toEqual([]);
  });

  test('that is missing, or stretched on its page, is named', async () => {
    const { texts, failed } = await each;
    const [name = ''] = names;
    const wide = (texts[name] ?? '').replace(
      /width="([\d.]+)mm"/,
      (_, mm) => `width="${Number(mm) * 1.01}mm"`,
    );
    expect(failed({ [name]: wide })).toContain('layers-in-register');
    expect(failed({ [name]: '' })).toContain('register');
  });
});

test('layers of one colour are one film on sheets, whatever has them, unless they lie on one another', async () => {
  const dot = (fill: string | undefined) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm"><circle cx="10mm" cy="10mm" r="8mm" fill="${fill}"/></svg>`;
  const item = (file: string, turn: number) => ({ file, across: 20, at: { turn, along: 40 }, apart: true });
  const sheets = (rest: object) =>
    folderOf({
      blank: cup,
      job: {
        items: [item('a.svg', 0.2), item('a.svg', 0.7), item('b.svg', 0.5)],
        sheet: { across: 300, up: 300, margin: 5 },
        ...rest,
      },
      files: { 'a.svg': dot(sea), 'b.svg': dot('#ffffff') },
    });
  const films = ({ report }: Awaited<ReturnType<typeof sheets>>) =>
    new Set(report.sheets?.map(({ film }) => film));
  const plain = await sheets({});
  expect(films(plain)).toEqual(new Set([sea, '#ffffff']));
  expect(plain.failed()).toEqual([]);
  const over = await sheets({ layers: { underlay: { choke: 0.3 } } });
  expect(films(over)).toEqual(new Set([sea, '#ffffff', '#ffffff (2)']));
  expect(over.failed()).toEqual([]);
});

test('the films are shown in their order, the lowest at the bottom', async () => {
  const { files } = await folderOf(
    {
      blank: cup,
      job: { band: { from: 15, to: 30 }, layers: { order: [sun, sea, sand] } },
      tile: shore,
      artwork: { around: 6 },
    },
    { pictures: true },
  );
  const picture = String(files.find(({ file }) => file === 'layers.svg')?.content);
  const seen = [
    ...picture.matchAll(
      /<g data-layer="(\d)" transform="matrix\(1 0 [-.\d]+ [.\d]+ [-.\d]+ ([-.\d]+)\)">[\s\S]*?<path fill="(#(?!fff)[0-9a-f]{6})"/g,
    ),
  ];
  expect(seen.map(([, number, , colour]) => [number, colour])).toEqual([
    ['1', sun],
    ['2', sea],
    ['3', sand],
  ]);
  const heights = seen.map(([, , y]) => Number(y));
  expect(heights).toEqual([...heights].sort((a, b) => b - a));
});
