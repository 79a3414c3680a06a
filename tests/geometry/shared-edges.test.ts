import { expect, test } from 'vitest';
import { type GridRing, ringArea } from '../../src/geometry/grid-ring.ts';
import { clipPolygons } from '../../src/geometry/polygon-clip.ts';
import { shareAnEdge } from '../../src/geometry/shared-edges.ts';

const ring = (places: readonly (readonly [number, number])[]): GridRing => places.map(([x, y]) => ({ x, y }));

/** Four tiles of a mosaic, edge to edge up its border, and a window that cuts them across three of their common edges. */
const tiles = [
  ring([
    [1375839, 2001222],
    [1500917, 2001222],
    [1500917, 1876144],
    [1366364, 1867389],
    [1375839, 2001218],
  ]),
  ring([
    [1366364, 1867389],
    [1500917, 1876144],
    [1500917, 1751068],
    [1391661, 1741406],
  ]),
  ring([
    [1401761, 2263349],
    [1500917, 2251373],
    [1500917, 2126297],
    [1387252, 2142369],
  ]),
  ring([
    [1387252, 2142369],
    [1500917, 2126297],
    [1500917, 2001218],
    [1375839, 2001218],
    [1375839, 2001222],
  ]),
];
const window = ring([
  [1481180, -131072],
  [1481180, 4194304],
  [-19736, 4194304],
  [-19736, -131072],
]);

test('abutting tiles are one piece where a window cuts them across their common edges', () => {
  const regions = clipPolygons('intersection', tiles, [window], 'nonzero');
  expect(regions.map(({ holes }) => holes.length)).toEqual([0]);
  const outers = regions.map(({ outer }) => outer);
  expect(shareAnEdge(outers)).toBe(false);
  // Each tile cut by itself: they overlap by four units of a level edge at the most.
  const each = tiles.map((tile) => clipPolygons('intersection', [tile], [window], 'nonzero'));
  const areaOf = (all: typeof regions) => all.reduce((sum, { outer }) => sum + ringArea(outer), 0);
  const apart = each.reduce((sum, one) => sum + areaOf(one), 0);
  expect(areaOf(regions) / apart).toBeCloseTo(1, 4);
});

test('two rings share an edge that both go along, one each way', () => {
  const [lower, upper] = [
    ring([
      [0, 0],
      [4, 1],
      [2, -3],
    ]),
    ring([
      [0, 0],
      [1, 5],
      [4, 1],
    ]),
  ];
  const beyond = ring([
    [0, 0],
    [1, 5],
    [5, 1],
  ]);
  expect(shareAnEdge([lower, upper])).toBe(true);
  expect(shareAnEdge([upper, lower])).toBe(true);
  expect(shareAnEdge([[...lower].reverse(), upper])).toBe(false);
  // Another edge that starts where the shared one does hides neither.
  expect(shareAnEdge([beyond, lower, upper])).toBe(true);
  expect(shareAnEdge([lower, beyond])).toBe(false);
  // One that goes out along an edge and back.
  expect(
    shareAnEdge([
      ring([
        [0, 0],
        [8, 0],
        [8, 8],
        [4, 4],
        [8, 8],
        [0, 8],
      ]),
    ]),
  ).toBe(true);
});
