// What a line cuts of film against closed forms: chords of circles, bars, and what lies on one another.
import { expect, test } from 'vitest';
import { reverseContour } from '../../../src/geometry/contour.ts';
import { filmCut } from '../../../src/pattern/seam/film-crossed.ts';
import { expectWithin } from '../../closeness.ts';
import { box, circle } from '../../geometry/drawn.ts';

const upright = (x: number) => {
  const points = Array.from({ length: 101 }, (_, i) => ({ x, y: i }));
  return { points, first: 10, last: 90 };
};
const layer = (...contours: ReturnType<typeof box>[]) => ({
  shapes: contours.map((c) => ({ contours: [c] })),
});

test('a line through a circle cuts its chord', () => {
  const { crossings, length } = filmCut(upright(3), [layer(circle({ x: 0, y: 50.3 }, 7, 16))]);
  expect(crossings).toBe(1);
  expectWithin(length, 2 * Math.sqrt(49 - 9), 0.01);
});

test('a hole is no film', () => {
  const ring = {
    shapes: [
      { contours: [circle({ x: 0, y: 50.3 }, 7, 16), reverseContour(circle({ x: 0, y: 50.3 }, 4, 16))] },
    ],
  };
  const { crossings, length } = filmCut(upright(0), [ring]);
  expect(crossings).toBe(2);
  expectWithin(length, 6, 0.01);
});

test('layers on one another are cut once, and what lies past the counted part not at all', () => {
  const bars = [
    layer(box(-5, 20.5, 10, 4)),
    layer(box(-5, 22.5, 10, 4)),
    layer(box(-5, 2, 10, 4), box(-5, 88, 10, 4)),
  ];
  const { crossings, length } = filmCut(upright(0), bars);
  expect(crossings).toBe(2);
  expectWithin(length, 6 + 2, 1e-9);
});

test('a line beside all film cuts none', () => {
  expect(filmCut(upright(9), [layer(box(-5, 20, 10, 4))])).toEqual({ crossings: 0, length: 0 });
});
