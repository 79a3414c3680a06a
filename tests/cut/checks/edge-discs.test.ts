// How much of an edge is looked at for the discs of film: its own shape's alone, however many shapes stand close by.
import { expect, test } from 'vitest';
import { type EdgeChords, edgeChords, type Side } from '../../../src/cut/checks/edge-chords.ts';
import { edgeDiscs } from '../../../src/cut/checks/edge-discs.ts';
import type { Shape } from '../../../src/geometry/contour.ts';
import { circle } from '../../geometry/drawn.ts';

/** Dots 0.3 mm across, 0.5 mm from one to the next, so many in rows of 20. */
const dots = (count: number): Shape[] =>
  Array.from({ length: count }, (_, i) => {
    const middle = { x: 0.5 * (i % 20), y: 0.5 * Math.floor(i / 20) };
    return { contours: [circle(middle, 0.15)] };
  });

/** How often the lengths of chords are asked for while discs 1 mm across are grown: once for every edge that a disc may meet. */
function looks(shapes: readonly Shape[], side: Side): number {
  const chords = edgeChords(shapes, { side, tolerance: 0.002, longest: 1 });
  let count = 0;
  const length = new Proxy(chords.length, {
    get(target, key) {
      if (typeof key === 'string' && /^\d+$/.test(key)) count++;
      return Reflect.get(target, key, target);
    },
  });
  edgeDiscs({ ...chords, length } satisfies EdgeChords, 1);
  return count;
}

test('of 400 dots close together as much is looked at in film as of 400 alone', () => {
  expect(looks(dots(400), 'film')).toBe(400 * looks(dots(1), 'film'));
});

test('in a gap the edges of other shapes are looked at too', () => {
  expect(looks(dots(2), 'gap')).toBeGreaterThan(2 * looks(dots(1), 'gap'));
});
