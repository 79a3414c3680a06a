// Whether all of a tile recurs by a finer step. Truth is how the test draws it.
import { describe, expect, test } from 'vitest';
import { moveContour, translation } from '../../../src/geometry/affine.ts';
import type { Shape } from '../../../src/geometry/contour.ts';
import { recursThroughout } from '../../../src/pattern/study/recurs-throughout.ts';
import { box, circle } from '../../geometry/drawn.ts';

const tile = { width: 60, height: 40 };
const own = { a: { x: 60, y: 0 }, b: { x: 0, y: -40 } };
const finer = { a: { x: 30, y: 0 }, b: { x: 0, y: 20 } };
const recurs = (shapes: readonly Shape[], steps = finer) =>
  recursThroughout([{ shapes }], tile, { own, finer: steps }, 0.05);

/** Four squares and four dots, which repeat by half the tile each way. */
const shapes: readonly Shape[] = [3, 33].flatMap((x) =>
  [4, 24].flatMap((y) => [
    { contours: [box(x, y, 12, 9)] },
    { contours: [circle({ x: x + 20, y: y + 5 }, 3)] },
  ]),
);

describe('of a tile that repeats by half of its size', () => {
  test('all recurs, and by the tile itself', () => {
    expect(recurs(shapes)).toBe(true);
    expect(recurs(shapes, own)).toBe(true);
  });

  test('not where one dot more is drawn, or one is left out, or larger by a tenth', () => {
    expect(recurs([...shapes, { contours: [circle({ x: 18, y: 19 }, 0.5)] }])).toBe(false);
    expect(recurs(shapes.slice(0, -1))).toBe(false);
    expect(recurs([...shapes.slice(0, -1), { contours: [circle({ x: 53, y: 29 }, 3.3)] }])).toBe(false);
  });

  test('nor by a step that it does not have', () => {
    expect(recurs(shapes, { a: { x: 20, y: 0 }, b: { x: 0, y: 20 } })).toBe(false);
  });

  test('all recurs where motifs cross the borders, which show them in two parts', () => {
    const parts = [box(0, 10, 4, 6), box(56, 10, 4, 6), box(26, 10, 8, 6)];
    const rows = [0, 20].flatMap((down) =>
      parts.map((part) => ({ contours: [moveContour(translation(0, down), part)] })),
    );
    expect(recurs([...shapes, ...rows])).toBe(true);
  });
});
