// Whether a tile joins: yes, no, or that it can't be told from the tile alone. Truth is how the test draws it.
import { expect, test } from 'vitest';
import type { Shape } from '../../src/geometry/contour.ts';
import { freeStudyOf } from '../../src/pattern/study/repeat-study.ts';
import { box, circle } from '../geometry/drawn.ts';

const told = (shapes: readonly Shape[], width = 40, height = 30) => {
  const tile = { width, height, layers: [{ name: 'ink', colour: '#123456', shapes }] };
  const { joins, isDoubtful } = freeStudyOf(tile, { a: { x: width, y: 0 }, b: { x: 0, y: -height } });
  return isDoubtful ? 'cannot be told' : joins;
};

const dot = (x: number, y: number, r = 3): Shape => ({ contours: [circle({ x, y }, r)] });

test('rounds that go on across both pairs of borders tell that it joins', () => {
  expect(told([dot(0, 11), dot(40, 11), dot(17, 0, 4), dot(17, 30, 4)])).toBe(true);
});

test('of one motif inside, or of bars that run straight across, nobody can tell how far apart copies stand', () => {
  expect(told([{ contours: [box(11, 9, 13, 8)] }, dot(31, 20, 2.7)])).toBe('cannot be told');
  expect(told([{ contours: [box(0, 9.3, 40, 4.1)] }, { contours: [box(12.7, 0, 5.9, 30)] }])).toBe(
    'cannot be told',
  );
});

test('film that only ends on a border may be a side drawn there', () => {
  expect(told([{ contours: [box(0, 7.3, 9.1, 8)] }, dot(27, 20.3, 5)])).toBe('cannot be told');
});

test('a round that is cut off, its other part nowhere, does not join for sure', () => {
  expect(told([dot(1, 11), dot(25, 17, 4)])).toBe(false);
});
