// Where curves that all but touch cross. A line so deep in a circle cuts a chord off it whose ends are √(2 r depth − depth²) from its middle.
import { expect, test } from 'vitest';
import {
  type Affine,
  compose,
  inverse,
  moveContour,
  movePoint,
  rotation,
  translation,
} from '../../src/geometry/affine.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { filledShapes } from '../../src/geometry/regions.ts';
import { chordTolerance } from '../../src/geometry/tolerance.ts';
import { expectWithin } from '../closeness.ts';
import { box, circle } from './drawn.ts';

const radius = 0.87;

/** The nodes of a disc and a bar that it reaches into, moved as one, united and moved back. The disc's own nodes begin at an angle. */
function nodesOf(depth: number, angle: number, motion: Affine): readonly Point[] {
  const disc = moveContour(rotation(angle), circle({ x: 0, y: 0 }, radius, 8));
  const bar = box(-3, radius - depth, 6, 1);
  const moved = [disc, bar].map((contour) => moveContour(motion, contour));
  const back = inverse(motion);
  return filledShapes(moved, 'nonzero', chordTolerance)
    .flatMap(({ contours }) => contours)
    .flatMap(({ segments }) => segments.map(({ from }) => movePoint(back, from)));
}

const offBy = (nodes: readonly Point[], at: Point): number =>
  Math.min(...nodes.map((node) => distance(node, at)));

/** Turned and moved as copies of a motif around a cup are. */
const copy = (i: number): Affine => compose(rotation(0.4 * i), translation(20 * i, -7 * i));
const some = Array.from({ length: 24 }, (_, i) => i);

test.each([0.004, 0.02])('a disc %d mm deep in a bar is joined to it by the whole chord', (depth) => {
  const half = Math.sqrt(2 * radius * depth - depth * depth);
  for (const i of some)
    for (const x of [half, -half])
      expectWithin(
        offBy(nodesOf(depth, 0.07 * i, copy(i)), { x, y: radius - depth }),
        0,
        0.001,
        `how far an end of the chord is from any node, copy ${i}`,
      );
});

// Chords stand off by more than the depth and cross wherever: from there the curves' own crossing was found in one copy and not in the next.
test.each([0.0018, 0.0022, 0.003])(
  'a disc %d mm deep in a bar is joined to it alike in every copy',
  (depth) => {
    for (const i of some) {
      const angle = 0.07 * i;
      const first = nodesOf(depth, angle, copy(0));
      for (const j of some) {
        const nodes = nodesOf(depth, angle, copy(j));
        expect(nodes).toHaveLength(first.length);
        for (const at of first)
          expectWithin(offBy(nodes, at), 0, 0.001, `how far a node is from its like, copy ${j}, ${i}`);
      }
    }
  },
);
