// Ways with fewer places. Outside: paper measures how far each place lies from the way that is left.
import paper from 'paper';
import { expect, test } from 'vitest';
import { thinned, thinnedRing } from '../../src/geometry/thinned.ts';

paper.setup([1, 1]);

/** A way of many places that winds outward. */
const spiral = Array.from({ length: 400 }, (_, i) => {
  const turn = i / 30;
  return { x: (2 + turn) * Math.cos(turn), y: (2 + turn) * Math.sin(turn) };
});

type Way = readonly { readonly x: number; readonly y: number }[];

function farthest(from: Way, kept: Way, closed: boolean): number {
  const path = new paper.Path({ segments: kept.map(({ x, y }) => [x, y]), closed });
  return Math.max(...from.map(({ x, y }) => path.getNearestPoint([x, y]).getDistance([x, y])));
}

test.each([0.02, 0.2, 1])(
  'no place lies farther than %s mm from what is left of a way, nor of a ring',
  (tolerance) => {
    const way = thinned(spiral, tolerance);
    expect(farthest(spiral, way, false)).toBeLessThanOrEqual(tolerance);
    expect([way[0], way.at(-1)]).toEqual([spiral[0], spiral.at(-1)]);
    expect(way.length).toBeLessThan(spiral.length / 3);
    const ring = spiral.slice(-189);
    const left = thinnedRing(ring, tolerance);
    expect(farthest(ring, left, true)).toBeLessThanOrEqual(tolerance);
    expect(left.length).toBeLessThan(ring.length / 2);
  },
);

test('what is straight is its ends, and what comes back to where it began keeps its far place', () => {
  const straight = [0, 1, 2, 5].map((x) => ({ x, y: x }));
  expect(thinned(straight, 0.01)).toEqual([straight[0], straight[3]]);
  const there = [0, 3, 0].map((x) => ({ x, y: 0 }));
  expect(thinned(there, 0.01)).toEqual(there);
  expect(thinned([], 1)).toEqual([]);
});
