// Film parted into art and ground, and the time that weeding takes. Areas in closed form, and held against Clipper 6
// (clipper-lib), which combines everything where ours leaves most shapes as they are.
import { describe, expect, test } from 'vitest';
import { partedFilm } from '../../../src/cut/films/parted-film.ts';
import { weededFilm, weedingPlaces, weedingRates, weedingRule } from '../../../src/cut/films/weeding.ts';
import { parsePathData } from '../../../src/drawing/path-data.ts';
import { type Affine, compose, moveContour, rotation, translation } from '../../../src/geometry/affine.ts';
import type { Shape } from '../../../src/geometry/contour.ts';
import { directed, shapeArea } from '../../../src/geometry/measure.ts';
import { filledShapes } from '../../../src/geometry/regions.ts';
import { expectWithin } from '../../closeness.ts';
import { chordPoints } from '../../geometry/drawn.ts';
import { clipperArea } from '../../geometry/libraries.ts';

const sheet = parsePathData('M0 0H100V60H0Z');
const shapesOf = (data: string): Shape[] => filledShapes(parsePathData(data), 'evenodd', 0.003);
const areaOf = (shapes: readonly Shape[]) => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);
const ringsOf = (shapes: readonly Shape[], sagitta = 0.0005) =>
  shapes.flatMap((shape) => directed(shape).map((contour) => chordPoints(contour, sagitta)));

/** A frame with a frame in it with a square in that, a square that leaves the sheet, a bar across it, one beside it. */
const art = shapesOf(
  'M10 10H40V40H10ZM14 14H36V36H14ZM18 18H32V32H18ZM21 21H29V29H21ZM23 23H27V27H23ZM95 50H110V55H95ZM60 -5H65V65H60ZM120 0H130V10H120Z',
);

describe('film within its outline', () => {
  const { art: kept, ground } = partedFilm(sheet, art);

  test('is parted into pieces: what lies in a hole, in a hole, and what a bar parts', () => {
    // The two frames, the square in them, what is left of the square at the edge, the bar.
    expect(kept).toHaveLength(5);
    // Around the frames left of the bar, right of it, and in each of the two frames.
    expect(ground).toHaveLength(4);
  });

  test('has the areas of the closed form, and all of it is one or the other', () => {
    const frames = 30 * 30 - 22 * 22 + (14 * 14 - 8 * 8) + 4 * 4;
    expectWithin(areaOf(kept), frames + 5 * 5 + 5 * 60, 0.01);
    expectWithin(areaOf(kept) + areaOf(ground), 100 * 60, 0.01);
  });

  test('of rows of copies, nodes of all on one level with those of others, loses none', () => {
    const rings = Array.from({ length: 12 }, (_, i) => [5 + 7 * (i % 4), 5 + 7 * Math.floor(i / 4)]);
    const round = (x = 0, y = 0, r = 1) =>
      `M${x} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
    // In a frame that meets the edge, so that several pieces of ground may hold each.
    const drawn = shapesOf(
      `M-1 -1H40V40H-1ZM1 1H36L37 5L38 12L37 19V38H1Z${rings.map(([x, y]) => round(x, y, 2) + round((x ?? 0) + 1, y)).join('')}`,
    );
    const { art: kept, ground } = partedFilm(sheet, drawn);
    expectWithin(areaOf(kept) + areaOf(ground), 100 * 60, 0.05);
    expect(ground.find(({ contours }) => contours.length === 13)).toBeDefined();
  });

  test('is what another library makes of it, for curves too', () => {
    const drawn = shapesOf(
      'M20 20C30 5 50 5 50 20C50 40 30 40 20 20ZM30 20C32 16 40 16 40 20C40 24 32 24 30 20ZM80 -4C95 0 110 20 96 30C85 20 75 10 80 -4ZM60 40C70 30 80 45 66 50C62 48 61 44 60 40Z',
    );
    const parted = partedFilm(sheet, drawn);
    const rings = ringsOf(sheet.map((contour) => ({ contours: [contour] })));
    expectWithin(areaOf(parted.art), clipperArea('intersection', ringsOf(drawn), rings, 'nonzero'), 0.05);
    expectWithin(areaOf(parted.ground), clipperArea('difference', rings, ringsOf(drawn), 'nonzero'), 0.05);
  });
});

test('a net over the edge of the film keeps the holes that nothing cuts, and what lies in them', () => {
  const hole = (x: number, y: number) =>
    `M${x} ${y}C${x + 2} ${y - 3} ${x + 5} ${y - 3} ${x + 6} ${y + 1}V${y + 6}H${x}Z`;
  const holes = Array.from({ length: 96 }, (_, i) => hole(-4 + 9 * (i % 12), 3 + 9 * Math.floor(i / 12)));
  const net = shapesOf(`M-8 -2H108V75H-8Z${holes.join('')}M34 23H36V25H34Z`);
  const parted = partedFilm(sheet, net);
  // A hundred curves: chords of the usual sagitta would take 0.2 mm² off them.
  const drawn = ringsOf(net, 0.00005);
  const rings = ringsOf(sheet.map((contour) => ({ contours: [contour] })));
  expectWithin(areaOf(parted.art), clipperArea('intersection', drawn, rings, 'nonzero'), 0.05);
  expectWithin(areaOf(parted.ground), clipperArea('difference', rings, drawn, 'nonzero'), 0.05);
  // 12 by 7 holes show, the last row by a hair; the one with a square in it is one piece with a hole.
  expect(parted.ground).toHaveLength(84);
  expect(parted.ground.filter(({ contours }) => contours.length === 2)).toHaveLength(1);
  expect(parted.art).toHaveLength(2);
});

describe('weeding', () => {
  const squares = shapesOf('M10 10H20V20H10ZM50 10H53V20H50Z');
  const parted = partedFilm(sheet, squares);

  test('of a mask is the negative of a decal', () => {
    const [decal, mask] = [weededFilm(parted, 'decal'), weededFilm(parted, 'mask')];
    expect(mask.stays).toEqual(decal.waste);
    expect(mask.waste).toEqual(decal.stays);
  });

  test('takes the time of its rule', () => {
    const film = weededFilm(parted, 'decal');
    const total = weedingPlaces(film).places.reduce((sum, { seconds }) => sum + seconds, 0);
    expectWithin(total, film.seconds, 1e-9);
    // One piece of waste; edges of 40 and 26 mm; only the second square is under 1 cm².
    expectWithin(total, weedingRule.piece + (40 + 26) / weedingRule.edge + weedingRule.hold, 1e-9);
  });

  test('is graded along a straight edge by the closed form', () => {
    const wide = partedFilm(sheet, shapesOf('M30 10H70V50H30Z'));
    const [edge = []] = weedingRates(weededFilm(wide, 'decal'));
    const middles = edge.filter(({ at }) => Math.abs(at.x - 50) < 8 || Math.abs(at.y - 30) < 8);
    expect(middles.length).toBeGreaterThan(40);
    // The integral of 1 - (x / r)^2 from -r to r is 4 r / 3; half of r^2 pi is a square cm.
    for (const { seconds } of middles)
      expectWithin(seconds, (4 * Math.sqrt(200 / Math.PI)) / 3 / weedingRule.edge, 0.003);
  });

  test('grades motifs alike alike, wherever they lie and however they are turned', () => {
    const motif = shapesOf('M0 0C4 -5 9 -4 12 1C9 6 3 7 0 0ZM3 0H8V3H3ZM13 3H15V5H13Z');
    const laid = (m: Affine) =>
      motif.map(({ contours }) => ({ contours: contours.map((c) => moveContour(m, c)) }));
    const first = laid(translation(21, 25));
    const copy = laid(compose(rotation(0.7), translation(70.3, 24.9)));
    for (const use of ['decal', 'mask'] as const) {
      const rates = weedingRates(weededFilm(partedFilm(sheet, [...first, ...copy]), use));
      const [one, other] = [rates.slice(0, rates.length / 2), rates.slice(rates.length / 2)].map((half) =>
        half.flatMap((edge) => edge.map(({ seconds }) => seconds)),
      );
      expect(one?.length).toBeGreaterThan(40);
      expect(Math.max(...(one ?? []))).toBeGreaterThan(2);
      expect(one?.length).toBe(other?.length);
      one?.forEach((seconds, i) => {
        expectWithin(other?.[i] ?? Number.NaN, seconds, 0.01);
      });
    }
  });
});
