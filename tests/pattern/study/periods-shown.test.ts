import { expect, test } from 'vitest';
import { periodsShown } from '../../../src/pattern/study/repeat-study.ts';

// By hand: as many columns as steps around go into the width, as many rows as steps up go into the height.
test.each([
  ['straight', { a: { x: 34, y: 0 }, b: { x: 0, y: 29 } }],
  ['half drop', { a: { x: 34, y: 14.5 }, b: { x: 0, y: 29 } }],
  ['drop the other way', { a: { x: 34, y: -10 }, b: { x: 0, y: 29 } }],
  ['brick', { a: { x: 34, y: 0 }, b: { x: 17, y: 29 } }],
])('a crop of 56 by 47 mm shows as much of a repeat told as 34 by 29 mm, %s', (_, period) => {
  const { across, up } = periodsShown({ width: 56, height: 47 }, period);
  expect(across).toBeCloseTo(56 / 34, 12);
  expect(up).toBeCloseTo(47 / 29, 12);
});
