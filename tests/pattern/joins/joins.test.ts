// What a tile misses its copies by is how far its art was moved: truth is by construction.
import { describe, expect, test } from 'vitest';
import type { Tile } from '../../../src/artwork/tile.ts';
import { type Contour, polygon, type Shape } from '../../../src/geometry/contour.ts';
import { joinTolerance } from '../../../src/geometry/tolerance.ts';
import { joinsOf } from '../../../src/pattern/joins/joins.ts';
import { type Lattice, latticeOf } from '../../../src/pattern/lattice/lattice.ts';
import { box, circle, randomFrom } from '../../geometry/drawn.ts';
import { cropOf, motifsIn } from '../a-crop.ts';
import { height, shape, wavyStripe, width, withCopies } from '../art.ts';

const tileOf = (...shapes: Shape[]): Tile => ({
  width,
  height,
  layers: [{ name: '#123456', colour: '#123456', shapes }],
});

const latticeWith = (given: { drop?: number; shift?: number } = {}): Lattice =>
  latticeOf({ across: width, up: height, drop: given.drop ?? 0, shift: given.shift ?? 0 });

const plain = latticeWith();

describe('a tile joins', () => {
  test.each([
    { what: 'whose shapes are drawn on both sides', shapes: withCopies(shape(circle({ x: 0, y: 10 }, 6))) },
    { what: 'whose shapes cross a corner', shapes: withCopies(shape(box(-5, -4, 12, 9))) },
    { what: 'whose border no shape reaches', shapes: [shape(circle({ x: 20, y: 15 }, 6))] },
    {
      what: 'whose rounds touch the border, small and large',
      shapes: [shape(circle({ x: 5, y: 15 }, 5)), shape(circle({ x: width - 12, y: 14 }, 12))],
    },
    { what: 'that is filled from edge to edge', shapes: [shape(box(0, 0, width, height))] },
    { what: 'whose sides stand a rounding off the border', shapes: [shape(box(0.004, 8, width - 0.008, 5))] },
    { what: 'with a stripe that waves over the border', shapes: [wavyStripe(8, 5)] },
  ])('$what', ({ shapes }) => {
    const { joins, mismatch, open } = joinsOf(tileOf(...shapes), plain);
    expect({ joins, open }).toEqual({ joins: true, open: [] });
    expect(mismatch).toBeLessThan(joinTolerance);
  });

  test('that is cut at its border, whichever way its shapes were cut', () => {
    const random = randomFrom(4);
    const lattice = { a: { x: width, y: 0 }, b: { x: 0, y: height } };
    const given = { lattice, motifs: motifsIn(lattice, 6, random), width, height, random };
    for (const cut of [true, false])
      expect(joinsOf(tileOf(...cropOf({ ...given, cut, at: { x: 13, y: 7 } })), plain).joins).toBe(true);
  });

  test('only with the drop, or the shift, it was drawn for', () => {
    // A bar that leaves at the right 15 mm above where it comes in at the left; and one that does so from top to bottom.
    const dropped = tileOf(shape(box(-1, 20, 11, 4)), shape(box(30, 5, 11, 4)));
    expect(joinsOf(dropped, latticeWith({ drop: 15 })).joins).toBe(true);
    expect(joinsOf(dropped, plain).joins).toBe(false);
    const shifted = tileOf(shape(box(12, -1, 4, 9)), shape(box(7, 22, 4, 9)));
    expect(joinsOf(shifted, latticeWith({ shift: 5 })).joins).toBe(true);
    expect(joinsOf(shifted, plain).joins).toBe(false);
  });

  test('by a lattice that is smaller than what it shows', () => {
    const lattice: Lattice = { a: { x: 17, y: 2 }, b: { x: -3, y: 14 } };
    const random = randomFrom(8);
    const shapes = cropOf({ lattice, motifs: motifsIn(lattice, 3, random), width, height, random });
    expect(joinsOf(tileOf(...shapes), lattice).joins).toBe(true);
    expect(joinsOf(tileOf(...shapes), plain).joins).toBe(false);
  });
});

describe('film that ends on a border', () => {
  // Tiles of 40 by 30 mm; two bars that end there as bars end inside.
  const bars = (...rest: Shape[]) => tileOf(shape(box(0, 6, 12, 4)), shape(box(20, 18, 12, 4)), ...rest);

  test('was drawn to, where its sides are those that stand inside, on one grid with the borders', () => {
    const { joins, open, sides } = joinsOf(bars(), plain);
    expect({ joins, open }).toEqual({ joins: true, open: [] });
    expect(sides.map(({ border, length }) => [border, length])).toEqual([['side', expect.closeTo(4, 6)]]);
  });

  test('was cut, where the borders stand off the grid', () => {
    const off = tileOf(shape(box(0, 6, 11.83, 4)), shape(box(19.83, 18, 12, 4)));
    expect(joinsOf(off, plain)).toMatchObject({ joins: false, sides: [] });
  });

  test('was cut, where no outline inside arrives at a side as it does there', () => {
    const wedge = polygon([
      { x: 0, y: 14 },
      { x: 6, y: 15 },
      { x: 0, y: 17 },
    ]);
    const { open, sides } = joinsOf(bars(shape(wedge)), plain);
    expect([open, sides].map((list) => list.map(({ length }) => length))).toEqual([
      [expect.closeTo(3, 3)],
      [expect.closeTo(4, 6)],
    ]);
  });

  test('was cut, where it was drawn on past the border', () => {
    expect(joinsOf(bars(shape(box(32, 24, 10, 4))), plain)).toMatchObject({ joins: false });
  });
});

describe('a border is known to be where it was drawn', () => {
  // A bar along the whole of the lower border, which stands on no grid with the upper one.
  const bar = shape(box(0, 26.31, 40, 3.69));
  const round = (x: number, y: number): Shape => shape(circle({ x, y }, 3));
  /** One side flat on a border from x to 8 mm on, its corners there round: they run into it. */
  const flat = (x: number, y: number, middle: number): Shape =>
    shape(box(x, y, 8, 4.13), circle({ x, y: middle }, 3), circle({ x: x + 8, y: middle }, 3));
  const [above, below] = [flat(24, 0, 3), flat(8, 25.87, 27)];

  test('by slanting outlines that meet there, or by rounds that end on both of its lines', () => {
    expect(joinsOf(tileOf(wavyStripe(8, 5)), plain).placed).toMatchObject({ side: true });
    expect(joinsOf(tileOf(above, below), plain).placed).toMatchObject({ level: true });
  });

  test('not by rounds that end on one of its lines: a crop may begin where they do', () => {
    const { joins, sides, placed } = joinsOf(tileOf(round(12, 3), round(28, 3), bar), plain);
    expect([joins, sides.length > 0]).toEqual([true, true]);
    expect(placed).toMatchObject({ level: false });
    expect(joinsOf(tileOf(below), plain).placed).toMatchObject({ level: false });
  });
});

describe('a tile does not join', () => {
  test('by a round that goes past its border by a twentieth of a mm', () => {
    expect(joinsOf(tileOf(shape(circle({ x: 4.95, y: 15 }, 5))), plain).joins).toBe(false);
  });

  test('by as much as its outlines are off, at the place where they are', () => {
    const bars = [shape(box(-1, 10, 11, 4)), shape(box(30, 10.5, 11, 4))];
    const { joins, mismatch, open } = joinsOf(tileOf(...bars), plain);
    expect(joins).toBe(false);
    expect(mismatch).toBeCloseTo(0.5, 6);
    // The left end shows at the top, the right end at the bottom: each once.
    expect(open.map(({ border, at, length }) => [border, at.x, at.y, length])).toEqual(
      expect.arrayContaining([
        ['side', 0, expect.closeTo(10.25, 6), expect.closeTo(0.5, 6)],
        ['side', width, expect.closeTo(14.25, 6), expect.closeTo(0.5, 6)],
      ]),
    );
  });

  test('by the way a narrow line has to go, not by its width', () => {
    const lines = [shape(box(-1, 10, 11, 0.4)), shape(box(30, 13, 11, 0.4))];
    expect(joinsOf(tileOf(...lines), plain).mismatch).toBeCloseTo(3, 6);
  });

  test('by the whole width of film that nothing meets', () => {
    const { open } = joinsOf(tileOf(shape(box(12, -2, 7, 10))), plain);
    expect(open).toEqual([
      {
        layer: '#123456',
        border: 'level',
        at: { x: expect.closeTo(15.5, 6), y: 0 },
        length: expect.closeTo(7, 6),
        miss: expect.closeTo(7, 6),
        ends: false,
      },
    ]);
  });

  test('where film ends on its border: a side drawn there, or a cut, that is told apart from what was drawn past it', () => {
    const endsOf = (x: number) => joinsOf(tileOf(shape(box(x, 8, 6, 7))), plain).open.map(({ ends }) => ends);
    expect(endsOf(width - 6)).toEqual([true]);
    expect(endsOf(width - 5)).toEqual([false]);
    // A line along one border, met in part by what crosses it; and two bars that miss each other there.
    const among = (...shapes: Shape[]) => {
      const { open, sides } = joinsOf(tileOf(...shapes), plain);
      return [...open, ...sides].map(({ ends }) => ends);
    };
    expect(among(shape(box(0, 0, 1, height)), shape(box(0, 12, width, 2)))).toEqual([true, true]);
    expect(among(shape(box(0, 8, 20, 6)), shape(box(20, 10, 20, 6)))).toEqual([false, false]);
  });

  test('where another colour goes on', () => {
    const [left, right] = [shape(box(-1, 10, 11, 4)), shape(box(30, 10, 11, 4))];
    const tile: Tile = {
      width,
      height,
      layers: [
        { name: '#111111', colour: '#111111', shapes: [left] },
        { name: '#222222', colour: '#222222', shapes: [right] },
      ],
    };
    const told = joinsOf(tile, plain).open.map(({ layer, instead }) => [layer, instead]);
    expect(told.sort()).toEqual([
      ['#111111', '#222222'],
      ['#222222', '#111111'],
    ]);
  });

  test('by what rounding to a tenth would hide: a twentieth of a mm', () => {
    const bars = [shape(box(-1, 10, 11, 4)), shape(box(30, 10.05, 11, 4))];
    expect(joinsOf(tileOf(...bars), plain).mismatch).toBeCloseTo(0.05, 6);
  });
});

test('an outline that meets its copy at an angle is told as a bend, and by how much', () => {
  // A roof: its two slopes meet at the border at 30 degrees to the level each.
  const rise = (width / 2) * Math.tan(Math.PI / 6);
  const roof = (y: number): Contour =>
    polygon([
      { x: 0, y: y + rise },
      { x: width / 2, y },
      { x: width, y: y + rise },
      { x: width, y: y + rise + 3 },
      { x: width / 2, y: y + 3 },
      { x: 0, y: y + rise + 3 },
    ]);
  const { joins, kinks } = joinsOf(tileOf(shape(roof(5))), plain);
  expect(joins).toBe(true);
  expect(kinks).toHaveLength(4);
  expect(kinks[0]?.angle).toBeCloseTo(Math.PI / 3, 4);
});
