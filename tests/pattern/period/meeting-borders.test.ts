// Borders of a traced period made to meet: its copies, united by Clipper 6 (clipper-lib), then have no step where they join.
import { expect, test } from 'vitest';
import { polygon } from '../../../src/geometry/contour.ts';
import type { Lattice } from '../../../src/pattern/lattice/lattice.ts';
import { withMeetingBorders } from '../../../src/pattern/period/meeting-borders.ts';
import { expectAtMost } from '../../closeness.ts';
import { clipperOffset } from '../../geometry/libraries.ts';

const lattice: Lattice = { a: { x: 20, y: 0 }, b: { x: 0, y: 10 } };
const window = polygon([
  { x: -0.0001, y: -0.0001 },
  { x: 20.0001, y: -0.0001 },
  { x: 20.0001, y: 10.0001 },
  { x: -0.0001, y: 10.0001 },
]);

/** A bar across the period: from so high to so high on the left, and on the right; the sides of it on the borders are marked. */
const bar = (left: readonly [number, number], right: readonly [number, number]) => ({
  contour: polygon([
    { x: -0.0001, y: left[0] },
    { x: 20.0001, y: right[0] },
    { x: 20.0001, y: right[1] },
    { x: -0.0001, y: left[1] },
  ]),
  borders: new Set([1, 3]),
});

/** Corners of three copies side by side, united by Clipper 6, that lie inside: where an edge makes a step. */
const steps = (period: readonly { readonly contour: ReturnType<typeof polygon> }[]): number => {
  const copies = [0, 20, 40].flatMap((x) =>
    period.map(({ contour }) => contour.segments.map(({ from }) => ({ x: from.x + x, y: from.y }))),
  );
  const [ring = []] = clipperOffset(copies, 0.00001, 0.000001);
  const upright = ring.filter((p, i) => {
    const q = ring[(i + 1) % ring.length];
    return q && p.x > 1 && p.x < 59 && Math.abs(q.x - p.x) < 0.001 && Math.abs(q.y - p.y) > 0.001;
  });
  return upright.length;
};

test('outlines that arrive within a pixel of their like are joined, each moved by half', () => {
  const traced = [bar([4, 6], [4.06, 5.98])];
  expect(steps(traced)).toBeGreaterThan(0);
  const met = withMeetingBorders(traced, window, lattice, 0.125);
  expect(steps(met)).toBe(0);
  const ys = met.flatMap(({ contour }) => contour.segments.map(({ from }) => from.y));
  for (const [i, wanted] of [4.03, 4.03, 5.99, 5.99].entries())
    expectAtMost(Math.abs((ys[i] ?? 0) - wanted), 1e-9);
});

test('what is farther apart than the slack, or has no like, stays where it was traced', () => {
  const traced = [bar([4, 6], [4.3, 5.98]), bar([8, 9], [8.01, 9.5])];
  const met = withMeetingBorders(traced, window, lattice, 0.125);
  expect(met.map(({ contour }) => contour.segments.map(({ from }) => Number(from.y.toFixed(4))))).toEqual([
    [4, 4.3, 5.99, 5.99],
    [8.005, 8.005, 9.5, 9],
  ]);
});
