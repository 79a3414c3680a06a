// The drop that a tile was drawn for is read off its borders: truth is how it was drawn.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readTile, type Tile } from '../../../src/artwork/tile.ts';
import { polygon, type Shape } from '../../../src/geometry/contour.ts';
import { steppedLattice } from '../../../src/pattern/joins/border-drop.ts';
import { freeStudyOf } from '../../../src/pattern/study/repeat-study.ts';
import { box, circle, randomFrom } from '../../geometry/drawn.ts';
import { madeOf } from '../../job/a-job.ts';
import { pictureEngine } from '../../pictures/compare.ts';
import { cropOf, motifsIn } from '../a-crop.ts';
import { height, shape, width } from '../art.ts';

const tileOf = (...shapes: Shape[]): Tile => ({
  width,
  height,
  layers: [{ name: '#123456', colour: '#123456', shapes }],
});

test('the sample of terns, drawn for a half drop of 30 mm', async () => {
  const { normalise } = await pictureEngine();
  const file = join(import.meta.dirname, '../../../samples/pot/terns.svg');
  const { tile } = readTile(readFileSync(file, 'utf8'), 'terns.svg', normalise);
  expect(steppedLattice(tile)).toEqual({ a: { x: 56, y: 30 }, b: { x: 0, y: -60 } });
  const study = freeStudyOf(tile, { a: { x: 56, y: 0 }, b: { x: 0, y: -60 } });
  expect([study.joins, study.stepped]).toEqual([true, true]);
});

test('is laid by make, which says so', async () => {
  const bars = [3, 9].flatMap((y) => [`M-1 ${y}h11v3h-11Z`, `M30 ${y + 15}h11v3h-11Z`]).join('');
  const size = 'width="40mm" height="30mm" viewBox="0 0 40 30"';
  const tile = `<svg xmlns="http://www.w3.org/2000/svg" ${size}><path d="${bars}"/></svg>`;
  const { report, proof } = await madeOf({
    blank: {
      stations: [
        { height: 0, across: 76 },
        { height: 90, across: 76 },
      ],
    },
    tile,
  });
  expect(report.checks.find(({ rule }) => rule === 'way-taken')?.says).toMatch(
    /with a half drop of 15\.00 mm/,
  );
  expect(report.checks.filter(({ rule }) => rule === 'does-not-join')).toEqual([]);
  expect(proof.pass).toBe(true);
});

test('two bars that leave at the right 9 mm above where they come in; and two that do so from top to bottom', () => {
  const bars = [10, 18].flatMap((y) => [shape(box(-1, y, 11, 3)), shape(box(30, y - 9, 11, 3))]);
  expect(steppedLattice(tileOf(...bars))?.a.y).toBeCloseTo(-9, 9);
  const posts = [12, 20].flatMap((x) => [shape(box(x, -1, 3, 9)), shape(box(x - 5, 22, 3, 9))]);
  expect(steppedLattice(tileOf(...posts))?.b.x).toBeCloseTo(5, 9);
});

test('half a brick that one leaf alone tells: its outlines stand half the width to either side', () => {
  const leaf = (x: number, y: number): Shape =>
    shape(
      polygon(
        [0, 1, 2, 3].map((k) => ({
          x: x + 4 * Math.cos(1.3 + (k * Math.PI) / 2),
          y: y + 5 * Math.sin(1.3 + (k * Math.PI) / 2),
        })),
      ),
    );
  const leaves = [leaf(9, 2), leaf(9 + width / 2, height + 2), leaf(31, 1), leaf(31 - width / 2, height + 1)];
  expect(steppedLattice(tileOf(...leaves))).toEqual({
    a: { x: width, y: 0 },
    b: { x: -width / 2, y: -height },
  });
});

test('none in a crop, and none where nothing crosses a border', () => {
  const random = randomFrom(5);
  const lattice = { a: { x: 31, y: 4 }, b: { x: -3, y: 23 } };
  const shapes = cropOf({ lattice, motifs: motifsIn(lattice, 6, random), width, height, random });
  expect(steppedLattice(tileOf(...shapes))).toBeUndefined();
  expect(steppedLattice(tileOf(shape(circle({ x: 20, y: 15 }, 6))))).toBeUndefined();
});
