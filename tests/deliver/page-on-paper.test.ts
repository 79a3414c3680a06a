// A page laid out on paper: everything within the margins, tables with their head on every sheet, pictures where they are put.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { loadFont } from '../../src/artwork/text/lettering.ts';
import { flatPicture } from '../../src/deliver/flat-picture.ts';
import { pageOnPaper } from '../../src/deliver/page-on-paper.ts';
import { papers } from '../../src/deliver/paper.ts';
import { columnsOf } from '../../src/deliver/paper-table.ts';
import type { Block, Page } from '../../src/deliver/write-page.ts';
import { writePdf } from '../../src/deliver/write-pdf.ts';
import type { DrawnGroup } from '../../src/drawing/drawing.ts';
import { hullBox } from '../../src/geometry/box.ts';
import type { Contour } from '../../src/geometry/contour.ts';
import { tightBox } from '../../src/geometry/measure.ts';
import { expectWithin } from '../closeness.ts';
import { pictureEngine } from '../pictures/compare.ts';
import { renderedPdf } from './rendered-pdf.ts';

const font = createRequire(import.meta.url).resolve(
  '@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf',
);
const words = loadFont(readFileSync(font));
/** Told apart from the plain ones by their size alone. */
const bold: typeof words = (text, em) => words(text, 1.05 * em);

const a4 = papers[0] ?? { name: 'a4', across: 210, up: 297 };

const red = flatPicture({
  width: 20,
  height: 10,
  rgb: Uint8Array.from({ length: 600 }, (_, i) => (i % 3 === 0 ? 255 : 0)),
});

const laidOut = (blocks: readonly Block[]) => {
  const facts = [
    { says: 'vessel', is: long },
    { says: 'how many', is: '3' },
    { says: 'seam', is: '6 mm of overlap' },
    { says: 'made by', is: '' },
  ];
  const page: Page = {
    title: 'A cup',
    lead: 'one vessel',
    facts,
    sections: [{ heading: 'All of it', blocks }],
  };
  return pageOnPaper(page, {
    paper: a4,
    words,
    bold,
    pictureOf: (file) => (file === 'red.svg' ? red : undefined),
  });
};

const long = 'lay the level paper arc, and lay the film to it from the middle outwards; '.repeat(4);
const rows = Array.from({ length: 100 }, (_, i) => [String(i + 1), i % 7 === 0 ? long : 'cut the film', '']);
const table: Block = { kind: 'table', head: ['', 'do', 'yours'], rows };
const everything: readonly Block[] = [
  { kind: 'words', text: long },
  { kind: 'list', items: [long, 'short'], numbered: true },
  { kind: 'ticks', items: [long, 'short'] },
  { kind: 'links', items: [{ file: 'wrap.cut.svg', says: 'what the blade follows' }] },
  { kind: 'picture', file: 'red.svg', says: 'a red field' },
  {
    kind: 'pictures',
    items: ['one', 'two', 'three'].map((says) => ({ file: 'red.svg', says: `${says}: ${long}` })),
  },
  table,
  { ...table, ticks: true, rows: rows.slice(0, 9) },
  { kind: 'caution', items: [long, 'short'] },
  {
    kind: 'timeline',
    spans: [
      { says: 'lay the base clear', from: 0, to: 0.5, isWait: false },
      { says: 'wait 12 h', from: 0.5, to: 12.5, isWait: true },
    ],
  },
];

describe('a page on paper', () => {
  const sheets = laidOut(everything);

  test('takes as many sheets as it needs, everything within their margins of 15 mm', () => {
    expect(sheets.length).toBeGreaterThan(2);
    for (const { marks, pictures = [] } of sheets) {
      const [foot, ...rest] = marks;
      const boxes = rest.flatMap(({ paths }) => paths.map(({ contours }) => hullBox(contours)));
      const all = [
        ...boxes,
        ...pictures.map(({ x, y, width, height }) => ({
          minX: x,
          minY: y,
          maxX: x + width,
          maxY: y + height,
        })),
      ];
      expect(foot?.paths).toHaveLength(1);
      for (const { minX, minY, maxX, maxY } of all) {
        expect(minX).toBeGreaterThanOrEqual(15 - 0.01);
        expect(minY).toBeGreaterThanOrEqual(15 - 0.01);
        expect(maxX).toBeLessThanOrEqual(210 - 15 + 0.01);
        expect(maxY).toBeLessThanOrEqual(297 - 15 + 0.01);
      }
    }
  });

  test('repeats the head of a table on every sheet that the table goes on to', () => {
    const [, ...others] = laidOut([table]);
    expect(others.length).toBeGreaterThan(1);
    // Each begins with the head's two words, told by how many curves each of their letters has.
    const curves = (contours: readonly Contour[] = []) => contours.map(({ segments }) => segments.length);
    for (const { marks } of others)
      expect(marks.slice(2, 4).map(({ paths: [path] }) => curves(path?.contours))).toEqual(
        ['do', 'yours'].map((text) => curves(bold(text, 2.9))),
      );
  });

  test('leaves no row and no item alone at the end of a sheet or on top of the next; short tables stay whole', () => {
    /** A square of 3 mm. */
    const isBox = ({ role, paths }: DrawnGroup): boolean => {
      const { minX, maxX, minY, maxY } = hullBox(paths.flatMap(({ contours }) => contours));
      return role === 'outline' && Math.abs(maxX - minX - 3) < 1e-6 && Math.abs(maxY - minY - 3) < 1e-6;
    };
    const under = (lines: number, block: Block) =>
      laidOut([...Array.from({ length: lines }, (): Block => ({ kind: 'words', text: 'a line' })), block]);
    /** Boxes to tick on each sheet that has any, under so many lines. */
    const boxesUnder = (lines: number, block: Block): readonly number[] =>
      under(lines, block)
        .map(({ marks }) => marks.filter(isBox).length)
        .filter((count) => count > 0);
    const short = (count: number): Block => ({
      kind: 'table',
      head: ['', 'do'],
      ticks: true,
      rows: rows.slice(1, 1 + count),
    });
    const ticks: Block = { kind: 'ticks', items: ['one', 'two'] };
    const parted = { table: 0 };
    const ends = { least: 24, most: 34 };
    for (let lines = ends.least; lines <= ends.most; lines++) {
      expect(boxesUnder(lines, ticks)).toEqual([2]);
      expect(boxesUnder(lines, short(4))).toEqual([4]);
      const long = boxesUnder(lines, short(9));
      expect(Math.min(...long)).toBeGreaterThan(1);
      parted.table += long.length > 1 ? 1 : 0;
    }
    expect(parted.table).toBeGreaterThan(0);
    // The end of a sheet lies between.
    expect([ends.least, ends.most].map((lines) => under(lines, ticks).length)).toEqual([1, 2]);
  });

  test('is the same bytes each time', async () => {
    const drawing = { width: 210, height: 297, groups: [] };
    const some = everything.filter(({ kind }) => kind !== 'table');
    const [one, two] = await Promise.all([1, 2].map(() => writePdf(drawing, laidOut(some), 'A cup')));
    expect(Buffer.from(one ?? []).equals(Buffer.from(two ?? []))).toBe(true);
  });

  // PDFium, which shares nothing with us.
  test('shows a picture where it is put, true to its colour', async () => {
    const pages = laidOut([{ kind: 'picture', file: 'red.svg', says: 'a red field' }]);
    const [placed] = pages[0]?.pictures ?? [];
    const [shown] = await renderedPdf(
      await writePdf({ width: 210, height: 297, groups: [] }, pages, 'A cup'),
    );
    if (!placed || !shown) throw new Error('there is one picture on one page');
    expect(shown.kinds).toContain('image');
    // Red or blue first, as the renderer likes; nothing else on the page is strong in one and not in another.
    const isRed = (x: number, y: number) => {
      const i = 4 * (y * shown.widthPx + x);
      const [a = 0, b = 0, c = 0] = [0, 1, 2].map((k) => shown.pixels[i + k]);
      return b < 60 && Math.max(a, c) > 200;
    };
    const middle = {
      x: Math.round((placed.x + placed.width / 2) * shown.pxPerMm.x),
      y: Math.round((placed.y + placed.height / 2) * shown.pxPerMm.y),
    };
    const across = Array.from({ length: shown.widthPx }, (_, x) => isRed(x, middle.y));
    const down = Array.from({ length: shown.heightPx }, (_, y) => isRed(middle.x, y));
    const [left, right] = [across.indexOf(true), across.lastIndexOf(true) + 1];
    const [top, bottom] = [down.indexOf(true), down.lastIndexOf(true) + 1];
    expectWithin(left / shown.pxPerMm.x, placed.x, 0.1);
    expectWithin(right / shown.pxPerMm.x, placed.x + placed.width, 0.1);
    expectWithin(top / shown.pxPerMm.y, placed.y, 0.1);
    expectWithin(bottom / shown.pxPerMm.y, placed.y + placed.height, 0.1);
  });
});

test('see-through pixels are on white, by another reader', async () => {
  const { onWhite } = await pictureEngine();
  const half =
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 2"><path fill="#f00" fill-opacity="0.2" d="M0 0H2V2H0Z"/></svg>';
  const { png, aspect } = flatPicture(onWhite(half, 4));
  expect(aspect).toBe(0.5);
  expect(png[25]).toBe(2);
  const shown = PNG.sync.read(Buffer.from(png)).data;
  // A fifth of red and four fifths of white; beside it nothing is drawn.
  expect([...shown.subarray(0, 4)]).toEqual([255, 204, 204, 255]);
  expect([...shown.subarray(8, 12)]).toEqual([255, 255, 255, 255]);
});

test('columns fill the width; what is narrow keeps its own, and one to write in has room', () => {
  const columns = columnsOf(
    [
      ['', 'do', 'yours'],
      ['1', long, ''],
      ['2', 'cut', ''],
    ],
    180,
    { words, em: 2.9 },
  );
  const last = columns.at(-1);
  expectWithin((last?.x ?? 0) + (last?.width ?? 0), 180, 1e-9);
  expect(last?.width).toBe(22);
  expect(columns[0]?.width).toBeLessThan(4);
});

test('the foot of a page has its number in it, however long the title', () => {
  const page: Page = { title: 'a name that goes on and on '.repeat(9), lead: '', sections: [] };
  const [sheet] = pageOnPaper(page, { paper: a4, words, bold, pictureOf: () => undefined });
  const reach = (sheet?.marks ?? []).flatMap(({ paths }) =>
    paths.map(({ contours }) => tightBox(contours).maxX),
  );
  expect(Math.max(...reach)).toBeLessThan(a4.across);
});
