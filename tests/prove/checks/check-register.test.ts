// Where the middle of a layer is, as far as places written to a ten-thousandth of a millimetre tell.
import { expect, test } from 'vitest';
import type { Contour } from '../../../src/geometry/contour.ts';
import { registerChecks } from '../../../src/prove/checks/check-register.ts';
import { coverOf } from '../../../src/prove/written/centre.ts';
import { box } from '../../geometry/drawn.ts';

/** The rows that fail of a layer made as the first shapes and read back as the others. */
function failing(made: readonly Contour[], read: readonly Contour[]): string[] {
  const { area, middle } = coverOf(
    made.map((contour) => [contour]),
    { x: 0, y: 0 },
  );
  const layer = { layer: 'film', piece: 1, area, middle: { right: middle.x, up: middle.y } };
  const shapes = read.map((contour) => [contour]);
  const piece = { number: 1, shift: { x: 0, y: 0 }, layers: [{ name: 'film', shapes }] };
  return registerChecks([piece], { layers: [layer] })
    .filter(({ pass }) => !pass)
    .map(({ rule }) => rule);
}

test('hairs at both ends of a wrap have their middle no truer than their edges are written', () => {
  // 0.01444 by 6 mm, 300 mm apart: written, one is 0.0144 and the other 0.0145 mm wide.
  const made = [box(0, 0, 0.01444, 6), box(300, 0, 0.01446, 6)];
  expect(failing(made, [box(0, 0, 0.0144, 6), box(300, 0, 0.0145, 6)])).toEqual([]);
  // A step of the last digit moves their middle; a hundredth of a millimetre is none.
  expect(failing(made, [box(0, 0, 0.0144, 6), box(300, 0, 0.0245, 6)])).toEqual(['register', 'art-whole']);
});

test('a dot off by two hundredths of a millimetre is told', () => {
  expect(failing([box(10, 10, 1, 1)], [box(10.02, 10, 1, 1)])).toEqual(['register']);
  expect(failing([box(10, 10, 1, 1)], [box(10.009, 10, 1, 1)])).toEqual([]);
});
