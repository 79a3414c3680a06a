// Spikes at a cut, against Clipper 6 (clipper-lib): what is left is what stays once film under 0.02 mm is opened away.
import { expect, test } from 'vitest';
import { parsePathData } from '../../../src/drawing/path-data.ts';
import type { Segment } from '../../../src/geometry/contour.ts';
import { signedArea } from '../../../src/geometry/measure.ts';
import { withoutEndSpikes } from '../../../src/pattern/lay/end-spikes.ts';
import { expectWithin } from '../../closeness.ts';
import { sampledArea } from '../../geometry/drawn.ts';
import { clipperOffset } from '../../geometry/libraries.ts';

const segmentsOf = (data: string): readonly Segment[] =>
  parsePathData(data).flatMap(({ segments }) => segments);
const isOnCut = ({ from, to }: Segment): boolean => from.x === 10 && to.x === 10;
const areaOf = (segments: readonly Segment[]): number => Math.abs(signedArea({ closed: true, segments }));

const opened = (segments: readonly Segment[], by: number): number =>
  clipperOffset(clipperOffset([segments.map(({ from }) => from)], -by, 0.0001), by, 0.0001).reduce(
    (sum, ring) => sum + sampledArea(ring),
    0,
  );

test('a point of two lines that are all but one is cut back, the one of them the cut', () => {
  // The cut runs up x = 10; from 5 mm to 8 mm an edge of the art leans from it by 0.016 mm.
  const spiked = segmentsOf('M0 0H10V8L9.984 5H0Z');
  const left = withoutEndSpikes(spiked, isOnCut);
  expect(Math.max(...left.map(({ to }) => to.y))).toBeLessThan(5.001);
  // The cut, which lies in the waste, was moved by 0.016 mm at the most, along 5 mm.
  expectWithin(areaOf(left), opened(spiked, 0.01), 0.016 * 2.5 + 0.001);
});

test('a side of several parts is taken off part by part', () => {
  const left = withoutEndSpikes(segmentsOf('M0 0H10V8L9.996 7.4L9.984 5H0Z'), isOnCut);
  expect(Math.max(...left.map(({ to }) => to.y))).toBeLessThan(5.001);
});

test('a point as wide as film, and one of the drawing itself, stay as they are', () => {
  const wide = segmentsOf('M0 0H10V8L9.9 5H0Z');
  expect(withoutEndSpikes(wide, isOnCut)).toBe(wide);
  const drawn = segmentsOf('M0 0H9V8L8.984 5H0Z');
  expect(withoutEndSpikes(drawn, isOnCut)).toBe(drawn);
});
