// A vessel shown upside down: artwork, items and lettering are laid on their heads, and their places are still told in the drawing.
import { expect, test } from 'vitest';
import { turnedTile } from '../../src/artwork/tile-layer.ts';
import { latticeOf } from '../../src/pattern/lattice/lattice.ts';
import { artPlace } from '../../src/pattern/lay/art-place.ts';
import { expectWithin } from '../closeness.ts';
import { folderOf } from './a-folder.ts';
import { madeOf } from './a-job.ts';

const can = {
  use: 'other',
  stations: [
    { height: 0, across: 50 },
    { height: 40, across: 50 },
  ],
};
/** A mark in the top left corner of its tile: it tells which way round it is. */
const mark = `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><path d="M2 2H10V5H5V10H2Z"/></svg>`;
const upside = { shown: 'upside-down' };

test('an item and letters are turned half round about their own places', async () => {
  const typed = {
    blank: can,
    files: { 'mark.svg': mark },
  };
  const job = {
    items: [{ file: 'mark.svg', across: 16, at: { turn: 0.5, along: 20 } }],
    lettering: [{ text: 'Tern', capHeight: 8, at: { turn: 0.25, along: 20 } }],
  };
  const [plain, turned] = await Promise.all([
    madeOf({ ...typed, job }),
    madeOf({ ...typed, job: { ...job, ...upside } }),
  ]);
  for (const kind of ['items', 'lettering'] as const) {
    const [a, b] = [plain, turned].map(({ report }) => report[kind]?.[0]?.layers?.[0]);
    expect(Math.abs(a?.middle.right ?? 0)).toBeGreaterThan(0.05);
    expectWithin(b?.middle.right ?? 9, -(a?.middle.right ?? 0), 1e-6);
    expectWithin(b?.middle.up ?? 9, -(a?.middle.up ?? 0), 1e-6);
    expectWithin(b?.area ?? 0, a?.area ?? 9, 1e-6);
  }
  expect(turned.report.checks.map(({ rule }) => rule)).toContain('upside-down');
  expect(plain.report.checks.map(({ rule }) => rule)).not.toContain('upside-down');
});

test('a pattern is laid on its head, by the same repeats, and is proved', async () => {
  const made = await folderOf({ blank: can, tile: mark, job: upside });
  const plain = await folderOf({ blank: can, tile: mark });
  expect(made.failed()).toEqual([]);
  expect(made.report.pattern?.around).toBe(plain.report.pattern?.around);
  const [a, b] = [plain, made].map(({ report }) => report.pattern?.layers[0]?.area ?? 0);
  // The band holds two whole rows: as much film either way up.
  expectWithin(b ?? 0, a ?? 9, 0.05 * (a ?? 9));
  expect(made.texts['wrap.cut.svg']).not.toBe(plain.texts['wrap.cut.svg']);
});

test('a tile turned twice is itself, and a place on it is told where it was drawn', () => {
  const tile = {
    width: 20,
    height: 30,
    layers: [{ name: 'a', colour: '#000000', shapes: [{ contours: [] }] }],
  };
  expect(turnedTile(turnedTile(tile)).layers).toEqual(tile.layers);
  const lay = { around: 60, fromAlong: (along: number) => along };
  const laid = {
    lattice: latticeOf({ across: 20, up: 30, drop: 0, shift: 0 }),
    closing: { n: 3, m: 0, lean: 0, scaleAcross: 1, scaleUp: 1 },
    lay,
  };
  const at = { turn: 0.1, along: 4 };
  const plain = artPlace({ ...laid, tile } as never, at);
  const turned = artPlace({ ...laid, tile: turnedTile(tile) } as never, at);
  expectWithin(plain.x + turned.x, 20, 1e-9);
  expectWithin(plain.y + turned.y, 30, 1e-9);
});
