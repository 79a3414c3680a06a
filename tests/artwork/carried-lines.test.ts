// Lines drawn up to a tile's border and no farther. The wedges that they leave open are known by hand; Clipper 6 tells areas.
import { expect, test } from 'vitest';
import { withLinesCarried } from '../../src/artwork/carried-lines.ts';
import type { Painted } from '../../src/artwork/covered.ts';
import { readTile } from '../../src/artwork/tile.ts';
import type { Contour } from '../../src/geometry/contour.ts';
import type { Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { studyOf } from '../../src/job/closing/choose-way.ts';
import { expectWithin } from '../closeness.ts';
import { clipperArea } from '../geometry/libraries.ts';
import { pictureEngine } from '../pictures/compare.ts';

const [width, height] = [30, 20];
const frame = [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: height },
  { x: 0, y: height },
];

/** A contour as points so close that a chord is off by less than 1e-4 mm. */
const ringOf = ({ segments }: Contour): readonly Point[] =>
  segments.flatMap((s) => Array.from({ length: s.kind === 'line' ? 1 : 100 }, (_, i) => pointAt(s, i / 100)));

/** Lines 2 mm wide on a tile of 30 by 20 mm, as read; what they cover of it, mm²; and whether they meet their copies. */
async function read(lines: string, isRepeated = true) {
  const { normalise } = await pictureEngine();
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="20mm" viewBox="0 0 300 200"><g fill="none" stroke="#17566b" stroke-width="20">${lines}</g></svg>`;
  const { tile, findings } = readTile(svg, 'rope.svg', normalise, { isRepeated });
  const art = tile.layers.flatMap(({ shapes }) => shapes.flatMap(({ contours }) => contours));
  return {
    covers: clipperArea('intersection', art.map(ringOf), [frame], 'nonzero'),
    isCarried: findings.some(({ rule }) => rule === 'lines-carried'),
    joins: studyOf(tile, { kind: 'grid', drop: 0, shift: 0 }).joins,
  };
}

/** Out over the right border upwards at 45 degrees, and in at the left the same. */
const wave = '<path d="M0 50C50 0 100 0 150 50S250 100 300 50"/>';

test('a wave that ends askew on the border goes on over it, and meets its copies', async () => {
  const [carried, drawn] = [await read(wave), await read(wave, false)];
  expect(drawn).toMatchObject({ isCarried: false, joins: false });
  expect(carried).toMatchObject({ isCarried: true, joins: true });
  // The end is square to a line at 45 degrees: a wedge with legs of half its width is open at each border. The line bends on
  // its way, by a radius of 21 mm at its end, which takes off a 40th of a mm over a leg.
  expectWithin(carried.covers - drawn.covers, 2 * (1 * 1 * 0.5), 0.03);
});

test('so does one over the top, and one over a corner', async () => {
  expect(await read('<path d="M100 0C60 60 140 140 100 200"/>')).toMatchObject({
    isCarried: true,
    joins: true,
  });
  expect(await read('<path d="M0 0 300 200"/>')).toMatchObject({ isCarried: true, joins: true });
});

test.each([
  ['its ends stand square to the border', '<path d="M0 50C50 50 100 20 150 20S250 50 300 50"/>'],
  ['the line turns on its way over', '<path d="M0 50 150 150 300 50"/>'],
  ['it is wider there', '<path d="M0 50 150 120"/><path d="M150 -20 300 50" stroke-width="30"/>'],
  ['it is of another colour', '<path d="M0 50 150 120"/><path d="M150 -20 300 50" stroke="#d4532f"/>'],
  ['it ends short of the border', '<path d="M2 50C50 0 100 0 150 50S250 100 300 50"/>'],
  ['it is dashed', wave.replace('/>', ' stroke-dasharray="30 10"/>')],
  ['its pen draws wider one way', wave.replace('/>', ' transform="scale(1 .5)"/>')],
])('it is left as drawn where %s', async (_, lines) => {
  const { covers, isCarried } = await read(lines);
  expect(isCarried).toBe(false);
  expect(covers).toBe((await read(lines, false)).covers);
});

test('lines past counting, which nobody draws by hand, are left as they are at once', () => {
  const line: Painted = {
    id: undefined,
    colour: '#17566b',
    copies: [],
    clips: [],
    by: { width: 1, cap: 'butt', join: 'miter', miterLimit: 4 },
    data: 'M0 0L30 20',
    toMm: { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 },
  };
  const few = [line];
  expect(withLinesCarried(few, { width, height }, 'rope.svg').painted.length).toBe(13);
  const many = Array.from({ length: 4000 }, () => line);
  expect(withLinesCarried(many, { width, height }, 'rope.svg').painted).toBe(many);
});
