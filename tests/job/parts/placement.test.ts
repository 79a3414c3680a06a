// Paper templates for motifs, measured on what an independent renderer (PDFium) makes of their prints.
import { describe, expect, test } from 'vitest';
import { readSvg } from '../../../src/deliver/read-svg.ts';
import { lineWidth } from '../../../src/deliver/write-svg.ts';
import { boxesMeet } from '../../../src/geometry/box.ts';
import { tightBox } from '../../../src/geometry/measure.ts';
import { placesOf } from '../../../src/job/parts/part.ts';
import { printFiles } from '../../../src/job/prints/prints.ts';
import { paperNamed } from '../../../src/job/typed/print-paper.ts';
import { expectWithin } from '../../closeness.ts';
import { isInk, type Rendered, renderedPdf, topmostBox } from '../../deliver/rendered-pdf.ts';
import { box } from '../../geometry/drawn.ts';
import { madeOf } from '../a-job.ts';

const bar = `<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="20mm" viewBox="0 0 30 20"><path d="M0 0H30V20H0Z"/></svg>`;

/** Film goes on past the art by this, paper past the film; mm. */
const [past, rim] = [6, 12];

interface Case {
  readonly across: readonly [number, number];
  readonly at: { readonly turn: number; readonly along: number };
  readonly handle?: { readonly spans: number };
}

/** The print of the template of a bar of 30 by 20 mm, without words: its one page. */
async function printed({ across: [foot, lip], at, handle }: Case): Promise<Rendered> {
  const { parts } = await madeOf({
    blank: {
      use: 'other',
      stations: [
        { height: 0, across: foot },
        { height: 100, across: lip },
      ],
      ...(handle ? { handle } : {}),
    },
    job: {
      coats: [{ name: 'clear', thickness: 0.3 }],
      film: { thickness: 0.1 },
      items: [{ file: 'bar.svg', across: 30, at }],
    },
    files: { 'bar.svg': bar },
  });
  const paper = paperNamed('a4');
  const [file, ...more] = await printFiles({ paper }, placesOf(parts), 'test', () => []);
  expect(more).toEqual([]);
  expect(file).toMatchObject({ file: 'item-1.place.print.pdf', role: 'print' });
  if (typeof file?.content === 'string' || !file) throw new Error('no print');
  const [page, ...pages] = await renderedPdf(file.content);
  if (!page || pages.length > 0) throw new Error('one page is meant');
  return page;
}

/** Ink within 0.1 mm of where a line should be crossed, going level or upright over it. */
function expectLine(
  page: Rendered,
  { x, y }: { x: number; y: number },
  way: 'level' | 'upright',
  what: string,
) {
  const { x: across, y: up } = page.pxPerMm;
  const found: number[] = [];
  const reach = 1;
  for (let by = -reach; by <= reach; by += 0.01) {
    const [atX, atY] = way === 'level' ? [x + by, y] : [x, y + by];
    if (isInk(page, Math.floor(atX * across), Math.floor(atY * up))) found.push(by);
  }
  expect(found.length, `${what}: a line`).toBeGreaterThan(0);
  const [first = Number.NaN] = found;
  expectWithin((first + (found.at(-1) ?? Number.NaN)) / 2, 0, 0.1, what);
}

/** Left and top of the topmost thing on the page, mm: the middle of its outermost lines. */
function cornerOf(page: Rendered) {
  let [left, top] = [Number.POSITIVE_INFINITY, -1];
  const last = topmostBox(page).height * page.pxPerMm.y;
  for (let y = 0; y < page.heightPx && (top < 0 || y < top + last); y++)
    for (let x = 0; x < page.widthPx; x++)
      if (isInk(page, x, y)) {
        if (top < 0) top = y;
        left = Math.min(left, x);
      }
  return { left: left / page.pxPerMm.x + lineWidth / 2, top: top / page.pxPerMm.y + lineWidth / 2 };
}

/** Words as bars, half their size a letter wide, from what hangs below their line to the tops of their capitals. */
const bars = (text: string, em: number) => [box(0, -0.7 * em, 0.5 * em * text.length, 0.95 * em)];

describe('the paper template of a motif', () => {
  test.each([
    ['near the foot', { turn: 0.2, along: 17 }],
    ['near the lip', { turn: 0.8, along: 83.5 }],
  ])('%s: the words of its edge stay off the window', async (_, at) => {
    const stations = [
      { height: 0, across: 72 },
      { height: 100, across: 88 },
    ];
    const { parts } = await madeOf({
      blank: { use: 'other', stations },
      job: { items: [{ file: 'bar.svg', across: 30, at }] },
      files: { 'bar.svg': bar },
      words: bars,
    });
    const { groups } = readSvg(parts[0]?.place?.() ?? '', 'a template');
    const boxes = (role: string, id?: string) =>
      groups
        .filter((group) => group.role === role)
        .flatMap(({ paths }) => paths.filter((path) => id === undefined || path.id === id))
        .map(({ contours }) => tightBox(contours));
    const [window, ...windows] = boxes('outline', 'window');
    const [paper] = boxes('outline', 'placement');
    if (!window || !paper || windows.length > 0) throw new Error('a template has one window');
    const onPaper = boxes('note').filter((words) => boxesMeet(words, paper));
    // At least the words of the edge; letters of half a millimetre are none.
    expect(onPaper.some(({ minX, maxX }) => maxX - minX > 8)).toBe(true);
    expect(onPaper.filter((words) => boxesMeet(words, window))).toEqual([]);
  });

  test.each<readonly [string, Case, number]>([
    ['left of its front, from the seam', { across: [80, 80], at: { turn: 0.25, along: 40 } }, 0],
    [
      'from the side of a handle',
      { across: [80, 80], at: { turn: 0.25, along: 40 }, handle: { spans: 30 } },
      15,
    ],
  ])('on a straight can, %s: its window stands true from side and foot', async (_, blank, beside) => {
    const page = await printed(blank);
    const { left, top } = cornerOf(page);
    const box = topmostBox(page);
    // The girth at mid-thickness of the film, over the coat: pi (d + 2 (0.3 + 0.05)).
    const plumb = 0.25 * Math.PI * 80.7 - beside;
    expectWithin(box.width - lineWidth, plumb + 15 + past + rim, 0.1, 'width of the paper');
    expectWithin(box.height - lineWidth, 40 + 10 + past + rim, 0.1, 'height of the paper');
    const foot = top + box.height - lineWidth;
    const aside = { x: left + plumb + 9, y: foot - 45 };
    expectLine(page, { ...aside, x: left + plumb }, 'level', 'plumb line');
    expectLine(page, { x: left + plumb - 15 - past, y: aside.y }, 'level', 'left side of the window');
    expectLine(page, { x: left + plumb + 15 + past, y: aside.y }, 'level', 'right side of the window');
    expectLine(page, { ...aside, y: foot - 30 + past }, 'upright', 'lower side of the window');
    expectLine(page, { ...aside, y: foot - 50 - past }, 'upright', 'upper side of the window');
  });

  test.each<readonly [string, Case]>([
    ['foot', { across: [62, 86], at: { turn: 0.2, along: 40 } }],
    ['lip', { across: [62, 86], at: { turn: 0.8, along: 70 } }],
  ])('on a tapered cup is held by the %s, in closed form', async (edge, blank) => {
    const page = await printed(blank);
    const { left, top } = cornerOf(page);
    // Polar about the cone's point: a place at slant distance r and a turn from the plumb line lies at that angle times sin a.
    const lean = Math.atan(12 / 100);
    const length = 100 / Math.cos(lean);
    const radius = (along: number) => (31 + along * Math.sin(lean) + 0.35 * Math.cos(lean)) / Math.sin(lean);
    // The paper's end lies where its mid-thickness, 0.35 mm off the wall, meets the plane of foot or lip.
    const base = (edge === 'foot' ? 0 : length) + 0.35 * Math.tan(lean);
    const away = 2 * Math.PI * 0.2 * Math.sin(lean) * (edge === 'foot' ? -1 : 1);
    const place = radius(blank.at.along);
    const polar = (r: number, angle: number) => ({ x: r * Math.sin(angle), y: place - r * Math.cos(angle) });
    const corner = { x: 15 + past, y: 10 + past };
    const heights = [-1, 1].map((sign) => Math.hypot(corner.x, place + sign * corner.y));
    const [low, high] =
      edge === 'foot'
        ? [radius(base), Math.max(...heights) + rim]
        : [Math.min(...heights) - rim, radius(base)];
    const sides = [polar(low, away), polar(high, away)].map(({ x }) => x);
    const wide = corner.x + rim;
    const minX = edge === 'foot' ? Math.min(...sides) : -wide;
    const maxX = edge === 'foot' ? wide : Math.max(...sides);
    const minY = place - high;
    const maxY = Math.max(polar(low, away).y, place - Math.sqrt(low * low - wide * wide));
    const box = topmostBox(page);
    expectWithin(box.width - lineWidth, maxX - minX, 0.1, 'width of the paper');
    expectWithin(box.height - lineWidth, maxY - minY, 0.1, 'height of the paper');
    const onPage = ({ x, y }: { x: number; y: number }) => ({ x: left + x - minX, y: top + y - minY });
    expectLine(page, onPage({ x: 0, y: 13 }), 'level', 'plumb line');
    expectLine(page, onPage({ x: 7, y: corner.y }), 'upright', 'lower side of the window');
    expectLine(page, onPage({ x: 7, y: -corner.y }), 'upright', 'upper side of the window');
    expectLine(page, onPage({ x: -corner.x, y: 7 }), 'level', 'left side of the window');
    expectLine(page, onPage({ x: corner.x, y: 7 }), 'level', 'right side of the window');
    expectLine(page, onPage(polar((low + high) / 2, away)), 'level', 'side on the seam');
    const edgeAt = polar(edge === 'foot' ? low : high, away / 2);
    expectLine(page, onPage(edgeAt), 'upright', `edge at the ${edge}`);
  });

  test('over the seam lies across it, with the seam line drawn', async () => {
    const page = await printed({ across: [80, 80], at: { turn: 0.02, along: 40 } });
    const { left, top } = cornerOf(page);
    const box = topmostBox(page);
    expectWithin(box.width - lineWidth, 30 + 2 * past + 2 * rim, 0.1, 'width of the paper');
    const seam = left + 15 + past + rim - 0.02 * Math.PI * 80.7;
    // It is dashed: 6 mm long, 1.2 apart.
    const { x: across, y: up } = page.pxPerMm;
    const inked = Array.from({ length: 80 }, (_, i) => top + 2 + i * 0.1).filter((y) =>
      isInk(page, Math.floor(seam * across), Math.floor(y * up)),
    );
    expect(inked.length).toBeGreaterThan(40);
  });

  // They stood in the window, and were cut out with it.
  test('over the seam says so on the paper, not in its window', async () => {
    const said: string[] = [];
    const { parts } = await madeOf({
      blank: { use: 'other', stations: [0, 100].map((height) => ({ height, across: 80 })) },
      job: { items: [{ file: 'bar.svg', across: 60, at: { turn: 0.02, along: 50 } }] },
      files: { 'bar.svg': bar },
      words: (text, em) => {
        said.push(text);
        return [box(0, 0, (text.length * em) / 2, em * 0.7)];
      },
    });
    const groups = readSvg(placesOf(parts)[0]?.guide ?? '', 'place.svg').groups;
    const contours = (role: string) =>
      groups.filter((group) => group.role === role).flatMap(({ paths }) => paths);
    const window = contours('outline').find(({ id }) => id === 'window')?.contours ?? [];
    expect(said).toContain('this line on the seam line');
    const seam = tightBox(contours('seam').flatMap((path) => path.contours));
    const beside = contours('note')
      .map((path) => tightBox(path.contours))
      .filter(
        ({ minX, maxX, minY, maxY }) =>
          maxX > seam.minX - 8 && minX < seam.maxX + 8 && minY > seam.minY && maxY < seam.maxY,
      );
    expect(beside.length).toBeGreaterThan(0);
    expect(beside.filter((words) => boxesMeet(words, tightBox(window)))).toEqual([]);
  });

  const stepped = {
    use: 'other',
    wall: 'stepped',
    stations: [
      { height: 0, across: 60 },
      { height: 40, across: 60 },
      { height: 60, across: 80 },
      { height: 110, across: 80 },
    ],
  };
  const partsOn = async (blank: object, across: number, along: number) =>
    (
      await madeOf({
        blank,
        job: {
          film: { thickness: 0.1, stretch: 0.4 },
          items: [{ file: 'bar.svg', across, at: { turn: 0.25, along } }],
        },
        files: { 'bar.svg': bar },
      })
    ).parts;

  test('on the upper stretch of a stepped wall is held by the lip, as on a can of that size', async () => {
    // Up the wall: 40, then the slope of 10 by 20 mm, then 50 more to the lip.
    const length = 40 + Math.hypot(10, 20) + 50;
    const parts = await partsOn(stepped, 30, length - 25);
    const [file] = await printFiles({ paper: paperNamed('a4') }, placesOf(parts), 'test', () => []);
    if (!file || typeof file.content === 'string') throw new Error('no print');
    const [page] = await renderedPdf(file.content);
    if (!page) throw new Error('one page is meant');
    const box = topmostBox(page);
    expectWithin(box.width - lineWidth, 0.25 * Math.PI * 80.1 + 15 + past + rim, 0.1, 'width of the paper');
    expectWithin(box.height - lineWidth, 25 + 10 + past + rim, 0.1, 'height of the paper');
  });

  test('is held by a level line at the end of the stretch it lies on, and is none where it lies on none', async () => {
    // 6 mm high on the slope of 22.4 mm.
    expect(placesOf(await partsOn(stepped, 9, 51))).toHaveLength(1);
    expect(placesOf(await partsOn(stepped, 60, 51))).toEqual([]);
  });
});
