// Film by area: the lateral area of a frustum, pi (D + d) / 2 s (Dr. Math 55270 and the mensuration texts in tests/outside).
import { expect, test } from 'vitest';
import { filmNeeded } from '../../src/job/film-needed.ts';
import { flatWall } from '../../src/unroll/flat-wall.ts';
import { outline, templateOf } from '../../src/unroll/template.ts';

const sine = 0.08;
const wrap = outline(
  templateOf(flatWall(37, sine, 60), {
    band: { from: 0, to: 120 },
    trim: { lip: 0, foot: 0 },
    overlap: 0,
  }),
);

test('a wrap without overlap and trims takes the area of its wall', () => {
  const [foot, lip] = [37 - 60 * sine, 37 + 60 * sine];
  expect(filmNeeded([wrap], {}).area).toBeCloseTo(Math.PI * (foot + lip) * 120, 2);
});

test('a batch takes no fewer sheets than its area needs, and its waste is what is left over', () => {
  const sheet = { across: 300, up: 600, margin: 10 };
  const { area, batch } = filmNeeded([wrap], { sheet, batch: 7 });
  expect(batch?.sheets).toBeGreaterThanOrEqual(Math.ceil((7 * area) / (280 * 580)));
  const used = 280 * (580 * ((batch?.sheets ?? 0) - 1) + (batch?.lastUsed ?? 0));
  expect(batch?.waste).toBeCloseTo(1 - (7 * area) / used, 9);
});

test('a sheet that takes no piece is not counted in', () => {
  expect(filmNeeded([wrap], { sheet: { across: 200, up: 100, margin: 6 } }).batch).toBeUndefined();
});
