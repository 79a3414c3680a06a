// What `inspect` says of artwork on the whole: pieces, length of the cut, sizes, and film that is a mask.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Normalise } from '../../../src/artwork/svg/svg-normalise.ts';
import { type InspectInput, inspect, inspectionLines } from '../../../src/job/inspect/inspect.ts';
import { standardCutter, standardFilm } from '../../../src/job/typed/material.ts';
import { refusalsOf } from '../../blank/a-blank.ts';
import { expectWithin, expectWithinPart } from '../../closeness.ts';
import { blob, randomFrom } from '../../geometry/drawn.ts';
import { exactData, librarianLength } from '../../geometry/libraries.ts';
import { pictureEngine } from '../../pictures/compare.ts';

let normalise: Normalise;
beforeAll(async () => {
  ({ normalise } = await pictureEngine());
});

const svg = (body: string, size = 'width="100mm" height="60mm" viewBox="0 0 100 60"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${body}</svg>`;
const inspected = (text: string, rest: Partial<InspectInput> = {}) =>
  inspect({ content: text, file: 'a.svg', film: standardFilm, cutter: standardCutter, normalise, ...rest });

const slotted = '<path d="M10 10H40V40H25.15V20H24.85V40H10Z"/>';

describe('artwork on the whole', () => {
  test('is cut for as long as svg-path-properties measures its outlines', () => {
    const random = randomFrom(3);
    const shapes = [10, 30, 50, 70, 90].map((x) => exactData([blob(random, { x, y: 30 }, 9)]));
    const { report } = inspected(svg(shapes.map((d) => `<path d="${d}"/>`).join('')));
    const length = shapes.reduce((sum, d) => sum + librarianLength(d), 0);
    expectWithinPart(report.cutLength, length, 1e-4);
    expect(report.pieces).toBe(5);
    const half = inspected(svg(shapes.map((d) => `<path d="${d}"/>`).join('')), { across: 50 }).report;
    expectWithinPart(half.cutLength, length / 2, 1e-4);
  });

  test('is one piece where shapes of one colour overlap or touch, and pieces apart in two colours', () => {
    const two = (colour: string) =>
      inspected(svg(`<path d="M10 10H30V30H10Z"/><path fill="${colour}" d="M30 10H50V30H30Z"/>`)).report;
    expect(two('#000').pieces).toBe(1);
    expectWithin(two('#000').cutLength, 120, 1e-6);
    expect(two('#a00').pieces).toBe(2);
    expectWithin(two('#a00').cutLength, 160, 1e-6);
  });

  test('is counted as far as it lies in its frame: a quarter of a disc on a corner, by its closed form', () => {
    const disc = (x: number, y: number) => `<circle cx="${x}" cy="${y}" r="12"/>`;
    const { report } = inspected(
      svg(`${disc(0, 0)}${disc(50, 30)}${disc(50, 90)}<path d="M130 10H131V11H130Z"/>`),
    );
    expect(report.pieces).toBe(2);
    expectWithinPart(report.cutLength, 24 * Math.PI + 6 * Math.PI + 24, 5e-4);
    expectWithinPart(report.weeding?.stays.area ?? 0, 144 * Math.PI + 36 * Math.PI, 5e-4);
    expect(report.checks).toEqual([]);
  });

  test('is clean, and says so', () => {
    const clean = inspected(svg('<path d="M10 10H40V40H10Z"/>'));
    expect(clean.report.checks).toEqual([]);
    expect(inspectionLines(clean).join('\n')).toContain('nothing stands against cutting it');
  });
});

test('a text whose font is not there is told, and no letters that stand in for its own are measured', () => {
  // Letters of another font were measured for it, and told as too thin.
  const plain = new Uint8Array(
    readFileSync(
      createRequire(import.meta.url).resolve(
        '@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf',
      ),
    ),
  );
  const square = '<path d="M60 10H90V40H60Z"/>';
  const text = (family: string) =>
    svg(`${square}<text x="4" y="18" font-family="${family}" font-size="9">SHORE</text>`);
  const { report } = inspected(text('Invented Hand'), { fonts: [plain] });
  expect(report.checks.map(({ rule }) => rule)).toEqual(['text']);
  expect(report.checks[0]?.says).toMatch(/"Invented Hand".*no text is measured here until then/);
  expect(report.pieces).toBe(1);
  expectWithin(report.cutLength, 120, 1e-6);
  expect(inspected(text('Atkinson Hyperlegible'), { fonts: [plain] }).report.pieces).toBe(6);
});

describe('film that is a mask', () => {
  const mask = { ...standardFilm, use: 'mask' as const };

  test("has the artwork's gaps for its film, and the artwork for its waste", () => {
    const [decal] = inspected(svg(slotted)).report.checks;
    expect(decal?.rule).toBe('thin-gap');
    const [film, ...others] = inspected(svg(slotted), { film: mask }).report.checks;
    expect(film?.rule).toBe('thin-film');
    expectWithin(film?.size ?? 0, 0.3, 1e-3);
    expect(others).toEqual([]);
  });

  test('has islands for its pieces', () => {
    const ring = '<path fill-rule="evenodd" d="M10 10H50V50H10ZM20 20H40V40H20Z"/>';
    expect(inspected(svg(ring), { film: mask }).report.pieces).toBe(2);
    expect(inspected(svg(ring)).report.pieces).toBe(1);
  });
});

describe('places are told', () => {
  test("in the drawing's own mm where it has a size, else in the size that is given", () => {
    const across = { across: 50 };
    const place = (text: string) => inspected(text, across).report.checks[0];
    const sized = place(svg(slotted));
    expectWithin(sized?.where.x ?? 0, 25, 0.01);
    expectWithin(sized?.size ?? 0, 0.15, 1e-3);
    const sizeless = place(svg(slotted, 'viewBox="0 0 100 60"'));
    expectWithin(sizeless?.where.x ?? 0, 12.5, 0.01);
    expectWithin(sizeless?.size ?? 0, 0.15, 1e-3);
  });

  test('a size that is missing is asked about only where none is given', () => {
    const text = svg('<path d="M10 10H400V400H10Z"/>', 'viewBox="0 0 500 500"');
    expect(inspected(text).report.checks.map(({ rule }) => rule)).toEqual(['no-size']);
    expect(inspected(text, { across: 100 }).report.checks).toEqual([]);
  });
});

test('art that can not be read is refused', () => {
  expect(refusalsOf(() => inspected('no drawing')).map(({ rule }) => rule)).toEqual(['unreadable']);
  expect(refusalsOf(() => inspected(svg('<path d="M0 0L50 0 oops Z"/>'))).map(({ rule }) => rule)).toEqual([
    'broken-path',
  ]);
});

// Of a hundred drawings nothing was told until all were read.
test('of drawings laid over one another each is told as it is read', () => {
  const [lower, upper] = ['#17566b', '#aa0000'].map((fill) =>
    svg(`<path fill="${fill}" d="M10 10H40V40H10Z"/>`),
  );
  const said: string[] = [];
  const over = ['b.svg', 'c.svg'].map((file) => ({ content: upper ?? '', file }));
  inspected(lower ?? '', { over, next: (says) => said.push(says) });
  expect(said.slice(0, 4)).toEqual([
    'reading a.svg',
    'reading b.svg',
    'reading c.svg',
    'uniting what is drawn',
  ]);
});
