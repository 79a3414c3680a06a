// Films over one another against closed forms, and what shows of a stack against paper's own booleans.
import { describe, expect, test } from 'vitest';
import { backingUnder, type FilmStackOptions, filmStack } from '../../../src/cut/films/film-stack.ts';
import type { Contour, Shape } from '../../../src/geometry/contour.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { expectWithin, expectWithinPart } from '../../closeness.ts';
import { blob, box, circle, randomFrom } from '../../geometry/drawn.ts';
import { paperArea, paperPath } from '../../geometry/libraries.ts';

const total = (shapes: readonly Shape[] = []): number => shapes.reduce((sum, one) => sum + shapeArea(one), 0);
const contoursOf = (shapes: readonly Shape[] = []): Contour[] => shapes.flatMap(({ contours }) => contours);
const layer = (name: string, ...contours: Contour[]) => ({
  name,
  colour: '#17566b',
  shapes: contours.map((contour) => ({ contours: [contour] })),
});
const options = (style: FilmStackOptions['style'], by: number, rest: Partial<FilmStackOptions> = {}) => ({
  style,
  spread: () => by,
  isBackingFilled: true,
  ...rest,
});

// A square of 20 with a disc of radius 5 in its middle.
describe('a disc on a square', () => {
  const [square, disc] = [layer('square', box(0, 0, 20, 20)), layer('disc', circle({ x: 10, y: 10 }, 5, 16))];
  const lower = (style: FilmStackOptions['style'], by: number) =>
    total(filmStack([square, disc], options(style, by))[0]?.shapes);

  test('stacked leaves the square whole, for it goes on under the disc already', () => {
    expectWithin(lower('stacked', 0.5), 400, 1e-6);
  });

  test('knocked out is cut from the square, but for what is to lie under its edge', () => {
    expectWithin(lower('knocked-out', 0), 400 - Math.PI * 25, 0.01);
    expectWithin(lower('knocked-out', 0.5), 400 - Math.PI * 4.5 ** 2, 0.01);
    expectWithin(lower('knocked-out', -0.5), 400 - Math.PI * 5.5 ** 2, 0.01);
  });
});

// Two squares of 20 drawn side by side, the right one above.
describe('squares that meet', () => {
  const [left, right] = [layer('left', box(0, 0, 20, 20)), layer('right', box(20, 0, 20, 20))];
  const films = (style: FilmStackOptions['style'], by: number) =>
    filmStack([left, right], options(style, by));

  test.each(['stacked', 'knocked-out'] as const)(
    '%s: the left one goes on under the right one alone',
    (style) => {
      const [lower, upper] = films(style, 0.5);
      // It ends a quarter mm short of the right one's own edges, at the top and at the bottom.
      expectWithin(total(lower?.shapes), 400 + 0.5 * 19.5, 1e-3);
      expect(lower?.shapes).toHaveLength(1);
      // Square corners stay square: four sides, and four more where it goes on.
      expect(lower?.shapes[0]?.contours[0]?.segments).toHaveLength(8);
      expectWithin(total(upper?.shapes), 400, 1e-6);
    },
  );

  test('knocked out and choked leave a gap', () => {
    expectWithin(total(films('knocked-out', -0.5)[0]?.shapes), 19.5 * 20, 1e-3);
  });

  test('edges that rounding keeps apart are meant to meet', () => {
    const apart = filmStack([left, layer('right', box(20.01, 0, 20, 20))], options('stacked', 0.5));
    expectWithin(total(apart[0]?.shapes), 400 + 0.5 * 19.5, 0.02);
    expect(apart[0]?.shapes).toHaveLength(1);
  });

  test('a film that is only near goes under nothing', () => {
    const apart = filmStack([left, layer('apart', box(20.2, 0, 20, 20))], options('stacked', 0.5));
    expectWithin(total(apart[0]?.shapes), 400, 1e-3);
  });
});

test('choked under what lies over it, a film stays back from its own edge there and nowhere else', () => {
  // A bar of 40 by 10 that ends under a square, 3 mm short of the square's far side.
  const films = filmStack(
    [layer('bar', box(0, 0, 40, 10)), layer('square', box(23, -5, 20, 20))],
    options('stacked', -1),
  );
  // Back by 1 mm: along both sides and at the end, from x = 23 on.
  expectWithin(total(films[0]?.shapes), 23 * 10 + 16 * 8, 1e-3);
});

test('a layer may have a spread of its own', () => {
  const films = filmStack(
    [layer('a', box(0, 0, 10, 10)), layer('b', box(10, 0, 10, 10)), layer('c', box(20, 0, 10, 10))],
    { ...options('stacked', 0), spread: (name) => (name === 'b' ? 1 : 0.25) },
  );
  expectWithin(total(films[0]?.shapes), 100 + 0.25 * 9.75, 1e-3);
  expectWithin(total(films[1]?.shapes), 100 + 9, 1e-3);
});

// Paper (MIT) combines curves by its own means: what shows of each film, less those above it, is what shows of the drawing.
describe.each(['stacked', 'knocked-out'] as const)('blobs %s', (style) => {
  test.each([0, 0.3, ...(style === 'stacked' ? [-0.3] : [])])('and spread by %d show as drawn', (by) => {
    const random = randomFrom(7);
    const drawn = [0, 1, 2].map((k) =>
      layer(`${k}`, ...[0, 1, 2, 3].map((n) => blob(random, { x: 9 * n + 3 * k, y: 5 * k }, 7))),
    );
    const films = filmStack(drawn, options(style, by));
    const plain = filmStack(drawn, options('stacked', 0));
    const shows = (of: typeof films, i: number) =>
      paperArea('difference', contoursOf(of[i]?.shapes), paperUnion(of.slice(i + 1)));
    for (const i of [0, 1, 2]) expectWithinPart(shows(films, i), shows(plain, i), 1e-3, `what shows of ${i}`);
  });
});

/** Outer contours of several layers as one nonzero set; the blobs that are tested with have no holes under others. */
const paperUnion = (layers: readonly { readonly shapes: readonly Shape[] }[]): Contour[] =>
  layers.flatMap(({ shapes }) => contoursOf(shapes));

test('an underlay stays back from all that shows, its corners kept, and lies under it', () => {
  const films = filmStack(
    [layer('a', box(0, 0, 10, 10)), layer('b', box(10, 0, 10, 10))],
    options('stacked', 0, { underlay: { choke: 0.5, colour: '#ffffff' } }),
  );
  expect(films.map(({ name }) => name)).toEqual(['underlay', 'a', 'b']);
  expectWithin(total(films[0]?.shapes), 19 * 9, 1e-3);
  expect(films[0]?.shapes[0]?.contours[0]?.segments).toHaveLength(4);
});

// Steiner's formula for what is grown; closing up the corner between two discs is held by the tests of offsets.
test('a backing goes past all, smoothed, and without holes under a motif', () => {
  const ring: Shape = { contours: [circle({ x: 0, y: 0 }, 10, 16), circle({ x: 0, y: 0 }, 7, 16)] };
  expectWithin(total(backingUnder([ring], { grow: 2, smooth: 1 }, true)), Math.PI * 144, 0.05);
  expectWithin(total(backingUnder([ring], { grow: 2, smooth: 1 }, false)), Math.PI * (144 - 25), 0.05);
  const bars = [box(0, 0, 20, 4), box(0, 10, 20, 4)].map((contour) => ({ contours: [contour] }));
  const smooth = backingUnder(bars, { grow: 2, smooth: 3 }, true);
  expect(smooth).toHaveLength(1);
  expect(paperPath(contoursOf(smooth)).area).toBeGreaterThan(20 * 14);
});
