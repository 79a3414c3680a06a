// What rounding leaves where two edges all but coincide, taken off; areas held against Clipper 6 (clipper-lib).
import { expect, test } from 'vitest';
import { cubic, line, type Segment } from '../../src/geometry/contour.ts';
import { ringSegments } from '../../src/geometry/rebuild.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import type { Run } from '../../src/geometry/traced.ts';
import { expectWithin } from '../closeness.ts';
import { chordPoints } from './drawn.ts';
import { clipperArea } from './libraries.ts';

const arc = cubic({ x: 0, y: 0 }, { x: 3, y: 2 }, { x: 7, y: 2 }, { x: 10, y: 0 });
/** The same arc from its end to its beginning, so much off. */
const backBy = (off: number) =>
  cubic({ x: 10, y: 0 }, { x: 7, y: 2 + off }, { x: 3, y: 2 + off }, { x: 0, y: 0 });
const corner = { x: 5, y: -6 };

/** Along the arc to its end, back along the other by a share of it, to a corner below, and home. */
function ring(off: number, share: number) {
  const back = backBy(off);
  const turn = pointAt(back, share);
  const segments: readonly Segment[] = [arc, back, line(turn, corner), line(corner, arc.from)];
  const runs = segments.map((s, source): Run => {
    const t1 = source === 1 ? share : 1;
    return { source, segment: 0, t0: 0, t1, turn: 0, from: s.from, to: pointAt(s, t1) };
  });
  return ringSegments(runs, ({ source }) => segments[source] ?? arc).map(({ segment }) => segment);
}

const areaOf = (segments: readonly Segment[]) =>
  clipperArea('union', [chordPoints({ closed: true, segments }, 0.0001)], [], 'nonzero');

test.each([0.01, 0.2, 0.6])('a way back of %d of an edge along itself is taken off', (share) => {
  const kept = ring(0.0005, share);
  expect(kept).toHaveLength(3);
  const turn = pointAt(backBy(0.0005), share);
  expect(kept[0]?.to).toEqual(turn);
  expect(kept[1]?.from).toEqual(turn);
  expectWithin(
    areaOf(kept),
    areaOf(ring(0.01, share)),
    0.05,
    'the area, but for that of a spike 0.01 mm wide',
  );
});

test('a narrow film that goes there and back stays', () => {
  expect(ring(0.1, 0.6)).toHaveLength(4);
});

test('what is back at its own beginning stays as it is', () => {
  expect(ring(0.0005, 0.995)).toHaveLength(4);
});
