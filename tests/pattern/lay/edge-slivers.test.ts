// What a cut leaves is too small exactly where the checks of film would say so: rounding makes no sliver.
import { expect, test } from 'vitest';
import { filmFaults } from '../../../src/cut/checks/film-faults.ts';
import { isTooSmall } from '../../../src/pattern/lay/edge-slivers.ts';
import { box } from '../../geometry/drawn.ts';

const film = { minPiece: 4, minWidth: 1 };
const limits = { ...film, minGap: 0.4, minAngle: 0.5, step: 0.025 };

test.each([
  [4, 'small-piece', false],
  [3.9999, 'small-piece', false],
  [3.99, 'small-piece', true],
])('a square of %f mm²: %s', (area, rule, isFault) => {
  const side = Math.sqrt(area);
  const faults = filmFaults([{ contours: [box(0, 0, side, side)] }], { limits, tolerance: 0.002 });
  expect(faults.some((fault) => fault.rule === rule)).toBe(isFault);
  expect(isTooSmall(film, area, side)).toBe(isFault);
});

test.each([
  [1, false],
  [0.9999, false],
  [0.98, true],
])('a bar %f mm high', (high, isFault) => {
  const faults = filmFaults([{ contours: [box(0, 0, 20, high)] }], { limits, tolerance: 0.002 });
  expect(faults.some(({ rule }) => rule === 'thin-film')).toBe(isFault);
  expect(isTooSmall(film, 20 * high, high)).toBe(isFault);
});
