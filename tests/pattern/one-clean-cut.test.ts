import { describe, expect, it } from 'vitest';
import { box, randomFrom } from '../geometry/drawn.ts';
import { differenceArea, expectedArea, expectWrapArea, madeArea, makeWrap, type WrapCase } from './a-wrap.ts';
import { art, height, moveShape, shape, width } from './art.ts';
import { doubledLength, shapeFaults } from './faults.ts';

const sineOf = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);

type Setting = Omit<WrapCase, 'shapes' | 'width' | 'height'>;

/** Small vessels, so that the slow way stays quick: two to four tiles around. */
const small = { radius: 20, band: { from: 10, to: 46 } };

const grids: Readonly<Record<string, Setting>> = {
  'a cylinder': { ...small },
  'a cylinder but for 1e-8 rad': { ...small, sine: 1e-8 },
  'a cone wide at the lip, 8 degrees': { ...small, sine: sineOf(8), around: 3 },
  'a cone wide at the foot, conformal': { ...small, sine: -sineOf(8), around: 3, lay: 'conformal' },
  'a flat cone of 30 degrees, conformal': { ...small, radius: 30, sine: 0.5, around: 4, lay: 'conformal' },
  'one repeat around': { radius: 7, band: { from: 10, to: 30 }, around: 1, sine: 0.05 },
  'an overlap wider than a repeat': { ...small, around: 4, overlap: 45 },
  'a butt seam': { ...small, overlap: 0, sine: 0.05 },
  'a handle': { ...small, clear: 9, sine: 0.05 },
};

const lattices: Readonly<Record<string, Setting>> = {
  'a half drop': { ...small, drop: 15, around: 4 },
  'a half drop that leans': { ...small, drop: 15, around: 3 },
  'bricks on a cone': { ...small, shift: 20, around: 3, sine: 0.1 },
  'a slanting drop on a cone': { ...small, drop: 7.3, around: 3, sine: -0.1 },
  'a general lattice': { ...small, lattice: { a: { x: 37.3, y: -4.1 }, b: { x: 9.2, y: -33.7 } }, around: 3 },
  'a step smaller than the tile': { ...small, lattice: { a: { x: 31.3, y: 0 }, b: { x: 0, y: -22.7 } } },
  'a step larger than the tile': { ...small, lattice: { a: { x: 47.7, y: 0 }, b: { x: 0, y: -36 } } },
};

// Areas by clipper-lib 6.4.2 (A. Johnson's Clipper 6), from fine polygons of every copy, mapped point by point.
// Every art goes around a cylinder, a cone, and a leaning half drop; of the rest each takes every third.
const settings = Object.entries({ ...grids, ...lattices }).map(([name, setting], place) => {
  const all = ['a cylinder', 'a cone wide at the lip, 8 degrees', 'a half drop that leans'].includes(name);
  return { name, setting, arts: art.filter((_, i) => all || i % 3 === place % 3) };
});

describe.each(settings)('the art of a tile around $name', ({ name, setting, arts }) => {
  it.each(arts)('holds the area of all its copies, cut once: $name', ({ draw, joins }) => {
    const made = makeWrap({ shapes: draw(randomFrom(7)), width, height, ...setting });
    const shapes = made.wrap.layers[0]?.shapes ?? [];
    expect(shapes.length).toBeGreaterThan(0);
    expectWrapArea(made);
    expect(shapeFaults(shapes)).toEqual([]);
    expect(doubledLength(made.contours)).toBeLessThan(0.05);
    if (name in grids) expect(made.wrap.mismatches.length === 0).toBe(joins);
  });
});

describe('the slow way the areas are held against', () => {
  it('sees a shape that is missing, and one in another place', () => {
    const one = shape(box(5, 5, 12, 8));
    const made = makeWrap({ shapes: [one], width, height, ...small });
    const other = makeWrap({ shapes: [moveShape({ x: 0.1, y: 0 }, one)], width, height, ...small });
    expect(differenceArea(made)).toBeLessThan(0.1);
    expect(differenceArea({ ...made, contours: other.contours })).toBeGreaterThan(5);
    expect(madeArea({ ...made, contours: made.contours.slice(1) })).toBeLessThan(expectedArea(made) - 50);
  });

  it('sees a line that is cut twice', () => {
    const [one, other] = [box(0, 0, 10, 10), box(10, 3, 5, 5)];
    expect(doubledLength([one, other])).toBeGreaterThan(9.9);
    expect(doubledLength([one, box(10.1, 3, 5, 5)])).toBe(0);
  });
});
