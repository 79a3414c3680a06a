// Prints at true size, measured on what an independent renderer (PDFium) makes of the bytes.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import { loadFont } from '../../src/artwork/text/lettering.ts';
import { pagesOf } from '../../src/deliver/pages.ts';
import { papers } from '../../src/deliver/paper.ts';
import { writePdf } from '../../src/deliver/write-pdf.ts';
import { lineWidth } from '../../src/deliver/write-svg.ts';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { movePoint } from '../../src/geometry/affine.ts';
import { boxesMeet, boxOfPoints } from '../../src/geometry/box.ts';
import { polygon } from '../../src/geometry/contour.ts';
import { tightBox } from '../../src/geometry/measure.ts';
import { draftCollars } from '../../src/job/parts/collar.ts';
import { printOf } from '../../src/job/prints/print.ts';
import { paperNamed } from '../../src/job/typed/print-paper.ts';
import { standardCollar } from '../../src/job/typed/resolved-collars.ts';
import { aBlank } from '../blank/a-blank.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';
import { isInk, levelRuns, type Rendered, renderedPdf, topmostBox } from './rendered-pdf.ts';

const font = createRequire(import.meta.url).resolve(
  '@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf',
);
const words = loadFont(readFileSync(font));

const paperOf = paperNamed;

/** A square frame of so many mm as the outline of a piece. */
const frame = (width: number, height: number): Drawing => ({
  width: width + 20,
  height: height + 20,
  groups: [
    {
      role: 'outline',
      paths: [
        {
          contours: [
            polygon([
              { x: 10, y: 10 },
              { x: 10 + width, y: 10 },
              { x: 10 + width, y: 10 + height },
              { x: 10, y: 10 + height },
            ]),
          ],
        },
      ],
    },
  ],
});

const printed = async (drawing: Drawing, paper: string) => {
  const pages = pagesOf(drawing, { paper: paperOf(paper), title: 'a frame', words });
  return { pages, shown: await renderedPdf(await writePdf(drawing, pages, 'a frame')) };
};

/** The rulers are the level lines of the marks' colour in the strip at the foot of the page. */
function expectTrueRulers(page: Rendered): void {
  const runs = levelRuns(page, page.height - 26.5, 90).filter((length) => length < 110);
  expect(runs).toHaveLength(2);
  const [metric, inches] = runs;
  // The pen is round, so it shows half its width past either end.
  expectWithin((metric ?? 0) - lineWidth, 100, 0.1, '100 mm');
  expectWithin((inches ?? 0) - lineWidth, 101.6, 0.1, '4 in');
}

describe('every page', () => {
  test.each([...papers, paperNamed('210x330 mm'), paperNamed('6x9in')])(
    'of $name has its own size and two true rulers',
    async ({ name, across, up }) => {
      // Over one page, and no more pages than that takes.
      const { shown } = await printed(frame(1.2 * up, 60), name);
      expect(shown.length).toBeGreaterThan(1);
      for (const page of shown) {
        const sides = [page.width, page.height].sort((a, b) => a - b);
        expectWithin(sides[0] ?? 0, across, 0.01);
        expectWithin(sides[1] ?? 0, up, 0.01);
        expectTrueRulers(page);
      }
    },
    60_000,
  );
});

test('a frame that fits one page measures true', async () => {
  const { shown } = await printed(frame(180, 240), 'a4');
  expect(shown).toHaveLength(1);
  const [page] = shown;
  if (!page) return expect.fail('no page');
  const box = topmostBox(page);
  expectWithin(box.width - lineWidth, 180, 0.1);
  expectWithin(box.height - lineWidth, 240, 0.1);
}, 60_000);

test('a frame over several pages measures true once the pages are laid over one another', async () => {
  const { pages, shown } = await printed(frame(400, 300), 'a4');
  expect(shown.length).toBeGreaterThan(2);
  // Each corner of the frame is sought in the pixels of the pages that show it, where its page says it is.
  let seen = 0;
  for (const corner of [
    { x: 10, y: 10 },
    { x: 410, y: 310 },
    { x: 410, y: 10 },
    { x: 10, y: 310 },
  ])
    for (const [i, { place, window }] of pages.entries()) {
      const { x, y } = movePoint(place, corner);
      if (x < window.minX || x > window.maxX || y < window.minY || y > window.maxY) continue;
      const page = shown[i];
      if (!page) return expect.fail('no page');
      seen++;
      const inkAt = (dx: number, dy: number) =>
        isInk(page, Math.floor((x + dx) * page.pxPerMm.x), Math.floor((y + dy) * page.pxPerMm.y));
      expect(inkAt(0, 0), `corner on page ${i + 1}`).toBe(true);
      // 0.1 mm outside the line there is nothing.
      const away = 0.1 + lineWidth / 2;
      expect(inkAt(corner.x === 10 ? -away : away, 0)).toBe(false);
      expect(inkAt(0, corner.y === 10 ? -away : away)).toBe(false);
    }
  expect(seen).toBeGreaterThanOrEqual(4);
}, 60_000);

test('neighbouring pages show the same join marks in the 10 mm they share', () => {
  const drawing = frame(400, 300);
  const pages = pagesOf(drawing, { paper: paperOf('a4'), title: 'a frame', words });
  const back = (page: (typeof pages)[number], x: number, y: number) => ({
    x: x - page.place.e,
    y: y - page.place.f,
  });
  const marks = pages.map((page) =>
    (page.marks.find(({ role }) => role === 'register')?.paths ?? []).flatMap(({ contours }) =>
      contours.flatMap(({ segments: [s] }) => {
        if (!s || Math.abs(Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y) - 6) > 1e-9) return [];
        const at = back(page, (s.from.x + s.to.x) / 2, (s.from.y + s.to.y) / 2);
        return [`${at.x.toFixed(6)} ${at.y.toFixed(6)}`];
      }),
    ),
  );
  const counts = new Map<string, Set<number>>();
  marks.forEach((all, page) => {
    for (const mark of all) counts.set(mark, (counts.get(mark) ?? new Set()).add(page));
  });
  expect(counts.size).toBeGreaterThan(3);
  for (const [mark, on] of counts) expect(on.size, mark).toBe(2);
});

test('a long strip is turned where that saves a page, and pages with nothing on them are left out', () => {
  const options = { paper: paperOf('a4'), title: 'a strip', words };
  // 285 mm is longer than either side of the window (190 x 258 and 277 x 171), and shorter than its diagonal.
  const [only, ...more] = pagesOf(frame(285, 12), options);
  expect(more).toEqual([]);
  expect(Math.abs(only?.place.b ?? 0)).toBeGreaterThan(0.05);
  expectWithin(Math.hypot(only?.place.a ?? 0, only?.place.b ?? 0), 1, 1e-12, 'scale');
  const corner: Drawing = {
    ...frame(900, 1200),
    groups: frame(900, 1200).groups.map((group) => ({
      ...group,
      role: 'register' as const,
      paths: [
        { contours: [{ closed: false, segments: group.paths[0]?.contours[0]?.segments.slice(0, 2) ?? [] }] },
      ],
    })),
  };
  // Only two sides of the frame are drawn: the pages inside it hold nothing. As an outline they would be paper to wrap.
  const sides = pagesOf(corner, options).length;
  const whole = pagesOf(frame(900, 1200), options).length;
  expect(sides).toBeLessThan(whole / 2);
});

// Nearly 700 pages took a minute and 1.3 GB; thousands had not ended in three.
test('more pages than anybody tapes together are refused, with what to do', () => {
  const print = () => pagesOf(frame(9400, 3000), { paper: paperOf('a4'), title: 'a pot', words });
  expect(print).toThrow(/some 6\d\d pages of a4, and up to 150 are made; give larger paper/);
});

describe('words and squares that stand apart', () => {
  const options = { paper: paperOf('a4'), title: 'a frame', words };
  /** A frame with a block of lines 168 mm wide below it, as the guides have it. */
  const withWords = (width: number, height: number, high: number): Drawing => {
    const { groups, ...size } = frame(width, height);
    const block = polygon([
      { x: 10, y: height + 20 },
      { x: 178, y: height + 20 },
      { x: 178, y: height + 20 + high },
      { x: 10, y: height + 20 + high },
    ]);
    return {
      ...size,
      groups: [...groups, { role: 'register', apart: true, paths: [{ contours: [block] }] }],
    };
  };
  /** The boxes of what stands apart, page by page. */
  const blocksOf = (pages: ReturnType<typeof pagesOf>) =>
    pages.map(({ marks }) =>
      marks
        .filter(({ apart }) => apart)
        .map(({ paths }) => tightBox(paths.flatMap(({ contours }) => contours))),
    );

  test.each([
    ['below a piece that leaves room there', 200, 100, 40, 1],
    ['below a piece that leaves room once it is moved up', 185, 190, 45, 1],
    ['on a page of their own where there is none', 185, 240, 45, 2],
    ['whole, on one of several pages', 270, 180, 45, 2],
    ['not within a piece, however bare it is', 250, 165, 45, 2],
  ])('stand %s', (_, width, height, high, count) => {
    const pages = pagesOf(withWords(width, height, high), options);
    expect(pages).toHaveLength(count);
    const blocks = blocksOf(pages);
    expect(blocks.flat()).toHaveLength(1);
    pages.forEach(({ window, place }, i) => {
      const [block] = blocks[i] ?? [];
      if (!block) return;
      expectWithin(block.maxX - block.minX, 168, 1e-9);
      expectWithin(block.maxY - block.minY, high, 1e-9);
      for (const [inner, outer] of [
        [block.maxX, window.maxX],
        [block.maxY, window.maxY],
        [window.minX, block.minX],
        [window.minY, block.minY],
      ] as const)
        expectAtMost(inner, outer);
      const corners = [
        movePoint(place, { x: 10, y: 10 }),
        movePoint(place, { x: 10 + width, y: 10 + height }),
      ];
      const piece = boxOfPoints(corners);
      expect(boxesMeet(piece, block)).toBe(false);
    });
  });

  test('are not drawn a second time with the piece', async () => {
    const drawing = withWords(200, 100, 40);
    const [page] = await renderedPdf(await writePdf(drawing, pagesOf(drawing, options), 't'));
    if (!page) return expect.fail('no page');
    // Upper and lower side of the frame, and of the block.
    const sides = levelRuns(page, 0, 150);
    expect(sides).toHaveLength(4);
  }, 60_000);
});

test('a piece that fits one page across is printed so', () => {
  const [page, ...more] = pagesOf(frame(270, 160), { paper: paperOf('a4'), title: 'a frame', words });
  expect(more).toEqual([]);
  expect([page?.width, page?.height]).toEqual([297, 210]);
});

describe('a collar', () => {
  const blanks = [
    {
      name: 'a straight can',
      blank: aBlank([
        { height: 0, across: 66 },
        { height: 110, across: 66 },
      ]),
    },
    {
      name: 'a tapered cup',
      blank: aBlank([
        { height: 0, across: 62 },
        { height: 150, across: 86 },
      ]),
    },
  ];
  test.each(blanks)(
    'of $name measures true on paper',
    async ({ blank }) => {
      const draft = draftCollars({
        ...standardCollar,
        lines: [{ kind: 'along', mm: 40 }],
        coats: 0,
        blank,
        blankFile: 'a blank',
        keyed: (key) => `--${key}`,
        units: 'mm',
        words,
      });
      const bytes = await printOf(draft.guide, 'collar.guide.svg', {
        paper: paperOf('a3'),
        title: 'collar',
        words,
      });
      const [page, ...more] = await renderedPdf(bytes);
      expect(more).toEqual([]);
      if (!page) return expect.fail('no page');
      expectTrueRulers(page);
      // The strip in closed form: radius of the paper's mid-thickness over the taper, see references, 1.
      const [foot, lip] = [0, 1].map((i) => (blank.stations[i]?.reading.mm ?? 0) / 2) as [number, number];
      const height = blank.stations[1]?.position.mm ?? 1;
      const lean = Math.atan((lip - foot) / height);
      const paperRadius = (along: number) => foot + along * Math.sin(lean) + 0.05 * Math.cos(lean);
      const half = Math.PI * Math.sin(lean);
      const box = topmostBox(page);
      const [wide, high] = [box.width - lineWidth, box.height - lineWidth];
      if (lean === 0) {
        expectWithin(wide, 2 * Math.PI * paperRadius(40) + 10, 0.1, 'length');
        expectWithin(high, 20, 0.1, 'width');
        return;
      }
      const [inner, outer] = [paperRadius(40) / Math.sin(lean), paperRadius(60) / Math.sin(lean)];
      // The tab's edge is parallel to the seam, 10 mm on: its corners lie 10 mm further along the level direction.
      const beyond = Math.sqrt(outer * outer - 100);
      const right = beyond * Math.sin(half) + 10 * Math.cos(half);
      const low = Math.sqrt(inner * inner - 100) * Math.cos(half) - 10 * Math.sin(half);
      expectWithin(wide, outer * Math.sin(half) + right, 0.1, 'length');
      expectWithin(high, outer - low, 0.1, 'height');
    },
    60_000,
  );
});

describe('the bytes', () => {
  let first: Uint8Array;
  const drawing = frame(100, 50);
  const write = () => writePdf(drawing, pagesOf(drawing, { paper: paperOf('a4'), title: 't', words }), 't');
  beforeAll(async () => {
    first = await write();
  });

  test('are the same each time', async () => {
    expect(Buffer.from(await write()).equals(Buffer.from(first))).toBe(true);
  });

  test('hold nothing but paths: no picture, and no font, for words are outlines', async () => {
    expect(Buffer.from(first).toString('latin1')).not.toContain('/Type /Font');
    expect((await renderedPdf(first)).map(({ kinds }) => kinds)).toEqual([['path']]);
  });

  test('are refused where a coordinate is not a number', () => {
    const broken = frame(Number.NaN, 50);
    expect(() =>
      writePdf(broken, pagesOf(drawing, { paper: paperOf('a4'), title: 't', words }), 't'),
    ).toThrow(/coordinate/);
  });
});
