// A stencil that holds together: islands tied, counted by Clipper 6's own nesting of what is left.
import { describe, expect, test } from 'vitest';
import { narrowPlaces } from '../../../src/cut/checks/local-width.ts';
import { bridgedShapes } from '../../../src/cut/mend/bridges.ts';
import { polygon, reverseContour, type Shape } from '../../../src/geometry/contour.ts';
import { holdsPoint } from '../../../src/geometry/inside.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { expectWithin } from '../../closeness.ts';
import { box, circle } from '../../geometry/drawn.ts';
import { folderOf } from '../a-folder.ts';

const areaOf = (shapes: readonly Shape[]) => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);
const hole = (x: number, y: number, radius: number) => circle({ x, y }, radius);

// Between circles of radii R and r a straight bridge w wide takes the area between their chords: 2 sides, closed form below.
test('a ring is tied by two bridges as wide as asked, and falls into two halves', () => {
  const [R, r, w] = [10, 7, 1];
  const ring: Shape = { contours: [circle({ x: 0, y: 0 }, R), hole(0, 0, r)] };
  const { shapes, islands, bridges } = bridgedShapes([ring], w);
  expect({ islands, bridges }).toEqual({ islands: 1, bridges: 2 });
  expect(shapes.map(({ contours }) => contours.length)).toEqual([1, 1]);
  // Integral of sqrt(q^2 - x^2) over the bridge's width.
  const under = (q: number) => (w / 2) * Math.sqrt(q * q - (w * w) / 4) + q * q * Math.asin(w / 2 / q);
  expectWithin(areaOf([ring]) - areaOf(shapes), 2 * (under(R) - under(r)), 0.01);
});

// A bridge that began at the island's corner used to hold it by a part of its width.
test('bridges of a square hold it by their whole width, away from its corners', () => {
  const opening: Shape = { contours: [box(0, 0, 24, 24), reverseContour(box(6, 6, 12, 12))] };
  const { shapes, bridges } = bridgedShapes([opening], 1.2);
  expect(bridges).toBe(2);
  expect(narrowPlaces(shapes, { side: 'gap', limit: 1.19, tolerance: 0.002 })).toEqual([]);
  expectWithin(areaOf([opening]) - areaOf(shapes), 2 * 6 * 1.2, 0.01);
});

// Between a circle and one inside it, off its middle by e, the gap is R - r - e at the narrowest: straight below here, y up.
test('a gap that widens little by little is tied where it is narrowest', () => {
  const [R, r, e] = [12, 7, 1];
  const corners = Array.from({ length: 240 }, (_, i) => {
    const a = (2 * Math.PI * i) / 240;
    return { x: r * Math.cos(a), y: r * Math.sin(a) - e };
  });
  const disc: Shape = { contours: [circle({ x: 0, y: 0 }, R), reverseContour(polygon(corners))] };
  const { shapes } = bridgedShapes([disc], 1);
  // Places in the middle of the gap where it is wider by 0.02 at most: e (1 - cos 0.2).
  const below = Array.from({ length: 41 }, (_, i) => (i - 20) / 100).map((a) => ({
    x: ((R + r - e) / 2) * Math.sin(a),
    y: -e - ((R + r - e) / 2) * Math.cos(a),
  }));
  expect(shapes).toHaveLength(2);
  expect(below.some((p) => !shapes.some((shape) => holdsPoint(shape, p)))).toBe(true);
});

test('islands beside one another are tied to the film around, whatever they are tied to first', () => {
  const opening: Shape = { contours: [box(0, 0, 60, 30), hole(20, 15, 6), hole(34, 15, 6), hole(47, 15, 5)] };
  const { shapes, bridges } = bridgedShapes([opening], 1);
  expect(shapes.every(({ contours }) => contours.length === 1)).toBe(true);
  expect(bridges).toBeGreaterThanOrEqual(6);
});

test('an opening without an island is left as it is', () => {
  const opening: Shape = { contours: [box(0, 0, 10, 10)] };
  expect(bridgedShapes([opening], 1)).toMatchObject({ islands: 0, bridges: 0 });
  expectWithin(areaOf(bridgedShapes([opening], 1).shapes), 100, 1e-9);
});

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 60 },
    { height: 90, across: 70 },
  ],
};
const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="36mm" viewBox="0 0 40 36"><g fill="#1d4e63" fill-rule="evenodd">
  <path d="M8 8H32V28H8ZM12 12V24H28V12Z"/><path d="M36 14A4 4 0 0 1 44 14A4 4 0 0 1 36 14ZM38 14A2 2 0 0 0 42 14A2 2 0 0 0 38 14Z"/>
  <path d="M-4 14A4 4 0 0 1 4 14A4 4 0 0 1 -4 14ZM-2 14A2 2 0 0 0 2 14A2 2 0 0 0 -2 14Z"/></g></svg>`;
const made = (rest: object, art = tile) =>
  folderOf({
    blank: cup,
    job: { band: { from: 8, to: 80 }, film: { use: 'mask' }, ...rest },
    artwork: { around: 5 },
    tile: art,
  });

describe('a patterned mask', () => {
  test('is one piece as a stencil, and closes around the cup as before', async () => {
    const [loose, tied] = await Promise.all([made({}), made({ stencil: { bridge: 1.2 } })]);
    expect(tied.failed()).toEqual([]);
    expect(tied.report.proof?.checks.find(({ rule }) => rule === 'stencil-holds')?.value).toBe(0);
    expect(tied.report.weeding?.stays.pieces).toBe(1);
    expect(loose.report.weeding?.stays.pieces).toBeGreaterThan(10);
    expect(tied.report.checks.find(({ rule }) => rule === 'bridges')?.says).toContain('1.2 mm');
    const files = ['wrap.cut.svg', 'wrap.guide.svg'].map((file) => [file, loose.texts[file] ?? '']);
    expect(tied.failed(Object.fromEntries(files))).toContain('stencil-holds');
  });

  test('keeps its openings but for the bridges, however large they are, and refuses a net', async () => {
    // Bars 3 mm wide; two bridges of 1.2 mm across each of the five by two frames of a band, and more at its edges.
    const frame = tile.replace('M8 8H32V28H8ZM12 12V24H28V12Z', 'M6 3H34V33H6ZM9 6V30H31V6Z');
    const [loose, tied] = await Promise.all([made({}, frame), made({ stencil: { bridge: 1.2 } }, frame)]);
    expect(tied.failed()).toEqual([]);
    const less = (loose.report.weeding?.waste.area ?? 0) - (tied.report.weeding?.waste.area ?? 0);
    expect(less).toBeGreaterThan(5 * 2 * 2 * 3 * 1.2 * 0.9);
    expect(less).toBeLessThan(5 * 3 * 4 * 3 * 1.2 * 1.3);
    const net = tile.replace('M8 8H32V28H8ZM12 12V24H28V12Z', 'M0 8H40V28H0ZM12 12V24H28V12Z');
    await expect(made({ stencil: {} }, net)).rejects.toThrow(/in a net/);
  });
});

test('letters with counters hold too, told one by one; a decal is no stencil', async () => {
  const lettering = [{ text: 'Boat', capHeight: 20, at: { turn: 0.5, along: 45 } }];
  const words = (rest: object) =>
    folderOf({ blank: cup, job: { lettering, film: { use: 'mask', minWidth: 0.8 }, stencil: {}, ...rest } });
  const { report, failed } = await words({});
  expect(failed()).toEqual([]);
  expect(report.checks.find(({ rule }) => rule === 'bridges')?.says).toMatch(
    /4 islands are tied by 8 bridges, 0.8 mm/,
  );
  await expect(words({ film: { use: 'decal' } })).rejects.toThrow(/is for a mask/);
});
