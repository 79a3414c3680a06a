// Film parted into art and ground, and the time that weeding takes. Areas in closed form, and held against Clipper 6
// (clipper-lib), which combines everything where ours leaves most shapes as they are.
import { describe, expect, test } from 'vitest';
import { partedFilm } from '../../src/cut/parted-film.ts';
import { weededFilm, weedingRule, weedingSquares } from '../../src/cut/weeding.ts';
import { parsePathData } from '../../src/drawing/path-data.ts';
import type { Shape } from '../../src/geometry/contour.ts';
import { directed, shapeArea } from '../../src/geometry/measure.ts';
import { filledShapes } from '../../src/geometry/regions.ts';
import { expectWithin } from '../closeness.ts';
import { chordPoints } from '../geometry/drawn.ts';
import { clipperArea } from '../geometry/libraries.ts';

const sheet = parsePathData('M0 0H100V60H0Z');
const shapesOf = (data: string): Shape[] => filledShapes(parsePathData(data), 'evenodd', 0.003);
const areaOf = (shapes: readonly Shape[]) => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);
const ringsOf = (shapes: readonly Shape[]) =>
  shapes.flatMap((shape) => directed(shape).map((contour) => chordPoints(contour, 0.0005)));

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

describe('weeding', () => {
  const squares = shapesOf('M10 10H20V20H10ZM50 10H53V20H50Z');
  const parted = partedFilm(sheet, squares);

  test('of a mask is the negative of a decal', () => {
    const [decal, mask] = [weededFilm(parted, 'decal'), weededFilm(parted, 'mask')];
    expect(mask.stays).toEqual(decal.waste);
    expect(mask.waste).toEqual(decal.stays);
  });

  test('takes the time of its rule, each part where it is', () => {
    const { places } = weededFilm(parted, 'decal');
    const total = places.reduce((sum, { seconds }) => sum + seconds, 0);
    // One piece of waste; edges of 40 and 26 mm; only the second square is under 1 cm².
    expectWithin(total, weedingRule.piece + (40 + 26) / weedingRule.edge + weedingRule.hold, 1e-9);
    const cells = weedingSquares(places, 10);
    const at = (x: number, y: number) => cells.find((cell) => cell.x === x && cell.y === y)?.seconds ?? 0;
    // Its lower side, 3 mm, lies in the square below.
    expectWithin(at(50, 10), weedingRule.hold + (26 - 3) / weedingRule.edge, 1e-9);
    expectWithin(
      cells.reduce((sum, { seconds }) => sum + seconds, 0),
      total,
      1e-9,
    );
  });
});
