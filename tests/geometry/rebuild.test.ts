// Curves from traced runs. Truth: the nodes and curves that the test draws.
import { expect, test } from 'vitest';
import type { Segment } from '../../src/geometry/contour.ts';
import { distance } from '../../src/geometry/point.ts';
import { jointOf, runSegments } from '../../src/geometry/rebuild.ts';
import type { Run } from '../../src/geometry/traced.ts';

const at = { x: 0, y: 0 };
const run = (source: number, t0: number, t1: number): Run => ({
  source,
  segment: 0,
  t0,
  t1,
  from: at,
  to: at,
});

/** Two curves of a pattern and its copy whose nodes lie 0.008 mm apart, side by side: where they meet is nowhere drawn. */
const curves: readonly Segment[] = [
  { kind: 'cubic', from: { x: 0, y: 0 }, c1: { x: 1, y: 0.2 }, c2: { x: 3, y: 0.2 }, to: { x: 4, y: 0 } },
  {
    kind: 'cubic',
    from: { x: 4.003, y: 0.0074 },
    c1: { x: 5, y: -0.2 },
    c2: { x: 7, y: 0 },
    to: { x: 8, y: 0 },
  },
];
const segmentOf = ({ source }: Run): Segment => curves[source] ?? { kind: 'line', from: at, to: at };

test('runs that end within rounding of their nodes meet where they would if they ended on them', () => {
  // A ten-thousandth of a curve 4 mm long is 0.0004 mm. The joint stood 0.004 mm off then: one end of a wrap had the one, the other the other.
  const exact = jointOf(run(0, 0, 1), run(1, 0, 1), segmentOf);
  for (const [before, after] of [
    [1, 0.0001],
    [0.9999, 0],
    [0.9999, 0.0001],
    [0.99995, 0.0004],
  ] as const) {
    const joint = jointOf(run(0, 0, before), run(1, after, 1), segmentOf);
    expect(distance(joint.point, exact.point)).toBe(0);
    expect([joint.before, joint.after]).toEqual([1, 0]);
  }
});

test('what ends farther from its node ends where it was cut', () => {
  const { before, after } = jointOf(run(0, 0, 0.99), run(1, 0.01, 1), segmentOf);
  expect(before).toBeLessThan(1);
  expect(after).toBeGreaterThan(0);
});

test('a run of next to no length is not lost', () => {
  const runs = [run(0, 0.2, 0.2003), run(1, 0, 1)];
  const joint = jointOf(runs[0] ?? run(0, 0, 1), runs[1] ?? run(1, 0, 1), segmentOf);
  const start = { point: at, before: 0, after: 0.2 };
  expect(runSegments(runs, [start, joint, { point: at, before: 1, after: 0 }], segmentOf)).toHaveLength(2);
});
