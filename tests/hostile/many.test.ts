// Lists as long as the maker's art: none is handed to one call as its arguments. Drawings of 130,000 shapes ended so, as faults of ours.
import { expect, test } from 'vitest';
import { readTile } from '../../src/artwork/tile.ts';
import { edgeChords } from '../../src/cut/checks/edge-chords.ts';
import { edgeDiscs } from '../../src/cut/checks/edge-discs.ts';
import { joinedOutlines } from '../../src/cut/checks/join-lines.ts';
import { openLines } from '../../src/cut/checks/line-faults.ts';
import { narrowRuns } from '../../src/cut/checks/narrow-runs.ts';
import { mendFilm } from '../../src/cut/mend/mend.ts';
import { chorded, type Source } from '../../src/geometry/chords.ts';
import { combine } from '../../src/geometry/combine.ts';
import { line, polygon } from '../../src/geometry/contour.ts';
import { regionsOfRings } from '../../src/geometry/nested-rings.ts';
import type { Point } from '../../src/geometry/point.ts';
import { sourcesApart } from '../../src/geometry/sources-apart.ts';
import { boxedShapes } from '../../src/pattern/film/film-along.ts';
import { bordersOf, filmBeyond } from '../../src/pattern/joins/border-lines.ts';
import { rowEnds } from '../../src/pattern/lattice/bare-rows.ts';
import { tileText } from '../artwork/a-tile.ts';
import { pastRoom, withLittleStack } from '../little-stack.ts';
import { pictureEngine } from '../pictures/compare.ts';

const many = Array.from({ length: pastRoom }, (_, i) => i);
const columns = Math.ceil(Math.sqrt(pastRoom));
/** Places in rows and columns 4 apart, in a square that begins at 0. */
const places = many.map((i): Point => ({ x: 4 * (i % columns), y: 4 * Math.floor(i / columns) }));
const edge = 4 * columns;
const box = ({ x, y }: Point, width: number, height = width): readonly Point[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];
const limits = { minWidth: 0.1, minGap: 0.1, minPiece: 4, minAngle: (20 * Math.PI) / 180, step: 0.05 };

test('with little stack a list of so many is too long for one call', () => {
  expect(() => withLittleStack(() => Math.max(...many))).toThrow(RangeError);
});

test.each([
  ['shapes of one colour', (data: string) => `<path d="${data}"/>`],
  [
    'shapes of one clip path',
    (data: string) =>
      `<clipPath id="c"><path d="${data}"/></clipPath><path clip-path="url(#c)" d="M0 0H${edge}V${edge}H0Z"/>`,
  ],
])('%s', async (_, bodyOf) => {
  const { normalise } = await pictureEngine();
  const body = bodyOf(places.map(({ x, y }) => `M${x} ${y}h1v1h-1z`).join(''));
  const text = tileText(body, `width="${edge}mm" height="${edge}mm" viewBox="0 0 ${edge} ${edge}"`);
  const { tile } = withLittleStack(() => readTile(text, 'tile.svg', normalise));
  expect(tile?.layers[0]?.shapes).toHaveLength(pastRoom);
});

test('islands in one hole', () => {
  const frame = [box({ x: -20, y: -20 }, edge + 40), [...box({ x: -10, y: -10 }, edge + 20)].reverse()];
  const rings = [...frame, ...places.map((at) => box(at, 2))];
  expect(withLittleStack(() => regionsOfRings(rings))).toHaveLength(1 + pastRoom);
});

test('shapes that a window cuts, each by itself and in one chain', () => {
  const sourceOf = (corners: readonly Point[]): Source => ({
    chords: chorded(polygon(corners), 0.01),
    by: { x: 0, y: 0 },
    isEdge: () => false,
  });
  const window = [sourceOf(box({ x: -1, y: 0.5 }, 5 * pastRoom))];
  const row = (step: number) => many.map((i) => sourceOf(box({ x: step * i, y: 0 }, 1)));
  const clip = { operation: 'intersection', fill: 'nonzero', tolerance: 0.01 } as const;
  expect(withLittleStack(() => combine(row(4), window, clip))).toHaveLength(pastRoom);
  expect(withLittleStack(() => sourcesApart(row(0.9), window, 0.01)).others).toEqual(many);
});

test('film past one border', () => {
  const drawn = boxedShapes(many.map((i) => ({ contours: [polygon(box({ x: 4 * i, y: -0.5 }, 1))] })));
  const frame = { width: 4 * pastRoom, height: 50 };
  const lattice = { a: { x: frame.width, y: 0 }, b: { x: 0, y: frame.height } };
  const lower = bordersOf(frame).filter(({ outward }) => outward.y > 0);
  const beyond = lower.map((border) => withLittleStack(() => filmBeyond({ drawn, frame, lattice }, border)));
  expect(beyond.flat()).toHaveLength(pastRoom);
});

test('heights of shapes', () => {
  const standing = many.map((i) => ({ from: i / pastRoom, to: i / pastRoom + 0.1 }));
  // From 0 to 1.1 in rows 10 high: the middle of the gap is at 5.55.
  expect(withLittleStack(() => rowEnds(standing, 10))).toEqual([expect.closeTo(0.555, 3)]);
});

test('segments of one line that is open', () => {
  const at = (i: number): Point => ({ x: 50 * Math.cos(i / 1000), y: 50 * Math.sin(i / 1000) });
  const segments = many.map((i) => line(at(i), at(i + 1)));
  const drawn = { id: undefined, colour: '#000000', contours: [{ closed: false, segments }] };
  const joined = withLittleStack(() => joinedOutlines([drawn], 100));
  expect(joined[0]?.outline.segments).toHaveLength(pastRoom + 1);
});

test('narrow runs along one contour', () => {
  const comb = many.flatMap((i): Point[] => {
    const x = 3 * i;
    return [
      { x, y: 4 },
      { x, y: 6 },
      { x: x + 0.5, y: 6 },
      { x: x + 0.5, y: 4 },
    ];
  });
  const shape = { contours: [polygon([{ x: 3 * pastRoom, y: 0 }, { x: 0, y: 0 }, ...comb].reverse())] };
  const chords = edgeChords([shape], { side: 'film', tolerance: 0.002, longest: 1 });
  const discs = edgeDiscs(chords, 1);
  // Up and down each tooth.
  expect(withLittleStack(() => narrowRuns(chords, discs, 1)).length).toBeGreaterThanOrEqual(pastRoom);
});

test('mends', () => {
  const specks = places.map((at) => ({ contours: [polygon(box(at, 1.5))] }));
  expect(withLittleStack(() => mendFilm(specks, limits)).mends).toHaveLength(pastRoom);
});

test('ends of open lines close together: each is told the nearest, not held against all', () => {
  // Strokes 0.1 long, 0.15 from one to the next: each ends 0.05 from the next of its row.
  const strokes = many.map((i) => {
    const [x, y] = [0.15 * (i % columns), 0.15 * Math.floor(i / columns)];
    const segments = [line({ x, y }, { x: x + 0.1, y })];
    return { id: undefined, colour: '#000000', contours: [{ closed: false, segments }] };
  });
  const gaps = new Set(openLines(strokes).map(({ nearest }) => nearest?.toFixed(6)));
  expect([...gaps]).toEqual(['0.050000']);
});
