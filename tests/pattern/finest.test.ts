// Finer repeats of tiles that join: what a tile has no room to show twice, its copies show. Truth is how the test draws it.
import { describe, expect, test } from 'vitest';
import { moveContour, translation } from '../../src/geometry/affine.ts';
import { type Contour, polygon, type Shape } from '../../src/geometry/contour.ts';
import type { Point } from '../../src/geometry/point.ts';
import { cellArea } from '../../src/pattern/lattice/lattice.ts';
import { isSameLattice } from '../../src/pattern/lattice/same-lattice.ts';
import { trueRepeat } from '../../src/pattern/repeat/true-repeat.ts';
import { freeStudyOf } from '../../src/pattern/study/repeat-study.ts';
import { blob, box, circle, randomFrom } from '../geometry/drawn.ts';

interface Drawn {
  readonly shapes: readonly Shape[];
  readonly width: number;
  readonly height: number;
}

const studied = ({ shapes, width, height }: Drawn) =>
  freeStudyOf(
    { width, height, layers: [{ name: 'ink', colour: '#123456', shapes }] },
    { a: { x: width, y: 0 }, b: { x: 0, y: -height } },
  );

/** Copies of a motif at places of a tile, and where they reach past its border at those of its copies. */
function spread(motif: readonly Contour[], places: readonly Point[], width: number, height: number): Shape[] {
  const around = [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j) => ({ x: i * width, y: j * height })));
  return places.flatMap((place) =>
    around.map((by) => ({
      contours: motif.map((contour) => moveContour(translation(place.x + by.x, place.y + by.y), contour)),
    })),
  );
}

/** A motif like no other, 9 mm across: a ragged round with two dots. */
const motif = (): readonly Contour[] => [
  blob(randomFrom(5), { x: 0, y: 0 }, 3.2),
  circle({ x: 4.1, y: 0.7 }, 0.8),
  circle({ x: -1.2, y: 4.3 }, 0.5),
];

/** The walls of a honeycomb as one net: cells `side` mm, walls `wall` mm, two cells to the rectangle around them. */
function honeycomb(side: number, wall: number): Drawn {
  const [width, height] = [Math.sqrt(3) * side, 3 * side];
  const inner = side - wall / Math.sqrt(3);
  const cell = ({ x, y }: Point): Contour =>
    polygon(
      [0, 1, 2, 3, 4, 5].map((k) => {
        const turn = Math.PI / 6 + (k * Math.PI) / 3;
        return { x: x + inner * Math.cos(turn), y: y + inner * Math.sin(turn) };
      }),
    );
  // Cells of the net as holes of a sheet: those that the border cuts reach past it.
  const middles = [-1, 0, 1, 2].flatMap((i) =>
    [-1, 0, 1].flatMap((j) => [
      { x: i * width, y: j * height },
      { x: (i + 0.5) * width, y: (j + 0.5) * height },
    ]),
  );
  const sheet = polygon([
    { x: -width, y: -height },
    { x: -width, y: 2 * height },
    { x: 2 * width, y: 2 * height },
    { x: 2 * width, y: -height },
  ]);
  return { shapes: [{ contours: [sheet, ...middles.map(cell)] }], width, height };
}

describe('a tile that joins goes by the finest lattice it has', () => {
  // Source: International Tables for Crystallography A, centred rectangular nets: the conventional cell holds two points (from memory).
  test('of a honeycomb that is drawn as one net, two cells to the tile', () => {
    const net = honeycomb(8, 1.2);
    const { joins, period } = studied(net);
    expect(joins).toBe(true);
    expect(period?.confidence).toBeGreaterThan(0.9);
    const [x, y] = [net.width / 2, net.height / 2];
    expect(period && isSameLattice(period, { a: { x, y }, b: { x: x, y: -y } }, 1e-6)).toBe(true);
  });

  test('of a damask: one motif half a drop from the next, each cut by the border', () => {
    const places = [
      { x: 1, y: 2 },
      { x: 16, y: 22 },
    ];
    const { joins, isDoubtful, period } = studied({
      shapes: spread(motif(), places, 30, 40),
      width: 30,
      height: 40,
    });
    expect([joins, isDoubtful]).toEqual([true, false]);
    expect(period && isSameLattice(period, { a: { x: 15, y: 20 }, b: { x: 15, y: -20 } }, 1e-6)).toBe(true);
  });

  test.each([
    [1, 2],
    [2, 1],
    [2, 2],
    [3, 2],
    [1, 5],
    [7, 3],
  ])('of %i by %i copies of a motif', (across, up) => {
    const [width, height] = [12 * across, 11 * up];
    const places = Array.from({ length: across * up }, (_, k) => ({
      x: 12 * (k % across) + 3,
      y: 11 * Math.floor(k / across) + 10,
    }));
    const { joins, period } = studied({ shapes: spread(motif(), places, width, height), width, height });
    expect(joins).toBe(true);
    expect(period && isSameLattice(period, { a: { x: 12, y: 0 }, b: { x: 0, y: 11 } }, 1e-6)).toBe(true);
    expect(period?.confidence).toBeGreaterThan(0.9);
  });

  test('of motifs that cross no border: how far apart they stand within tells that copies stand as far', () => {
    const shapes = [
      { x: 7, y: 8 },
      { x: 22, y: 23 },
    ].map((middle): Shape => ({ contours: [circle(middle, 4)] }));
    const { joins, isDoubtful, period } = studied({ shapes, width: 30, height: 30 });
    expect([joins, isDoubtful]).toEqual([true, false]);
    expect(period && cellArea(period)).toBeCloseTo(450, 6);
    // A crop that shows them as far from its borders as they are not from one another tells nothing.
    expect(studied({ shapes, width: 30, height: 33 }).isDoubtful).toBe(true);
  });
});

describe('and by its own where anything differs', () => {
  const places = [
    { x: 3, y: 10 },
    { x: 15, y: 10 },
  ];
  const area = ({ shapes, width, height }: Drawn): number => {
    const { period } = studied({ shapes, width, height });
    return period && period.confidence > 0.9 ? cellArea(period) : width * height;
  };

  test.each([
    ['a dot more', [{ contours: [circle({ x: 20, y: 3 }, 0.3)] }]],
    ['a dot more on a border', spread([circle({ x: 0, y: 0 }, 0.3)], [{ x: 0, y: 3 }], 24, 11)],
    ['a line', [{ contours: [box(19.6, 0, 0.3, 11)] }]],
  ] as const)('%s', (_, more) => {
    const drawn = { shapes: spread(motif(), places, 24, 11), width: 24, height: 11 };
    expect(area(drawn)).toBeCloseTo(132, 6);
    expect(area({ ...drawn, shapes: [...drawn.shapes, ...more] })).toBeCloseTo(264, 6);
  });

  test('a motif a tenth of a mm off', () => {
    const off = [places[0] ?? { x: 0, y: 0 }, { x: 15.1, y: 10 }];
    expect(area({ shapes: spread(motif(), off, 24, 11), width: 24, height: 11 })).toBeCloseTo(264, 6);
  });
});

// Copies drawn with other nodes share no landmarks; what is found first is a multiple of the lattice, level and upright.
test('a crop of more than a period shows the finest lattice too where copies have other nodes', () => {
  const rounds = (x: number, y: number, pieces: number): Shape[] =>
    [
      { dx: 0, dy: 0, r: 3 },
      { dx: 4.6, dy: 1.9, r: 1.1 },
      { dx: -1.7, dy: 4.4, r: 0.7 },
    ].map(({ dx, dy, r }) => ({ contours: [circle({ x: x + dx, y: y + dy }, r, pieces)] }));
  const shapes = [-1, 0, 1, 2].flatMap((i) =>
    [-1, 0, 1, 2].flatMap((j) => [
      ...rounds(24 * i + 3, 20 * j + 4, 8),
      ...rounds(24 * i + 15, 20 * j + 14, 12),
    ]),
  );
  const [found] = trueRepeat([{ shapes }], { width: 35, height: 33 });
  expect(found && isSameLattice(found, { a: { x: 12, y: 10 }, b: { x: 12, y: -10 } }, 0.01)).toBe(true);
  expect(found?.confidence).toBeGreaterThan(0.9);
});
