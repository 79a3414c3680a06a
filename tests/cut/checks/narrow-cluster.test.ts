// Many narrow runs that face one another in one cluster, as those of a stipple do.
import { expect, test } from 'vitest';
import { edgeChords } from '../../../src/cut/checks/edge-chords.ts';
import { NarrowCluster } from '../../../src/cut/checks/narrow-cluster.ts';
import type { NarrowRun } from '../../../src/cut/checks/narrow-runs.ts';

const chords = edgeChords([], { side: 'gap', tolerance: 0.01, longest: 1 });

/** Runs that widen from a rounded end, three discs each. */
const roundedRuns = (count: number): readonly NarrowRun[] =>
  Array.from({ length: count }, (_, i) => ({
    discs: [3 * i, 3 * i + 1, 3 * i + 2],
    at: [0, 0.2, 0.4],
    start: 'blunt',
    finish: 'open',
    from: 0,
    to: 0.4,
    ring: false,
    contour: 0,
  }));

test('tips of many thousand runs are told as one', () => {
  const count = 30_000;
  const zeros = Array.from({ length: 3 * count }, () => 0);
  const radius = zeros.map((_, d) => 0.05 + 0.1 * (d % 3));
  const discs = { chord: zeros, at: zeros, x: zeros, y: zeros, facing: zeros, touched: zeros, radius };
  const runs = roundedRuns(count);
  const places = new NarrowCluster(chords, discs, runs, {
    limit: 1,
    cusps: false,
    keepsDiscs: true,
  }).places();
  const [point, ...others] = places.filter(({ kind }) => kind === 'point');
  expect([point?.width.toFixed(6), point?.discs.length, others]).toEqual(['0.100000', 3 * count, []]);
});
