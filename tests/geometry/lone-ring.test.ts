// A ring that nothing comes near needs no engine: what it gives is held against what the engine gives of the same ring.
import { describe, expect, it } from 'vitest';
import { chorded, type Source } from '../../src/geometry/chords.ts';
import { combine } from '../../src/geometry/combine.ts';
import { type Contour, polygon, reverseContour } from '../../src/geometry/contour.ts';
import { loneRing } from '../../src/geometry/lone-ring.ts';
import { tightBox } from '../../src/geometry/measure.ts';
import { chordTolerance as tolerance } from '../../src/geometry/tolerance.ts';
import type { TracedRegion } from '../../src/geometry/traced.ts';
import { rowsOfBlobs } from '../speed/shapes.ts';

const source = (contour: Contour, isEdge?: (segment: number) => boolean): Source => ({
  chords: chorded(contour, tolerance),
  by: { x: 0.125, y: -3 },
  ...(isEdge ? { isEdge } : {}),
});
const union = { operation: 'union', fill: 'nonzero', tolerance } as const;
const units = 2 ** 15;

const box = (at: number, size: number): Contour =>
  polygon([
    { x: at, y: at },
    { x: at + size, y: at },
    { x: at + size, y: at + size },
    { x: at, y: at + size },
  ]);

/** Straight, level and upright, with a corner of its box left free. */
const angle = polygon(
  [
    [2, 0],
    [4, 0],
    [4, 4],
    [0, 4],
    [0, 2],
    [2, 2],
  ].map(([x = 0, y = 0]) => ({ x, y })),
);

/** A ring in the corner of a contour's box, clear of the contour: with it the two go through the engine together. */
function inItsCorner(contour: Contour): Contour {
  const { minX, minY } = tightBox([contour]);
  return polygon([
    { x: minX, y: minY },
    { x: minX + 0.02, y: minY },
    { x: minX, y: minY + 0.03 },
  ]);
}

describe('a ring that nothing comes near', () => {
  const [blob] = rowsOfBlobs(1, 1, 8);
  if (!blob) throw new Error('no blob');

  it.each([
    ['counter-clockwise', blob],
    ['clockwise', reverseContour(blob)],
    ['an angle iron', angle],
    ['an angle iron, clockwise', reverseContour(angle)],
  ])('%s is traced as the engine traces it among others', (_, contour) => {
    const [alone] = combine([source(contour)], [], union);
    const engine: readonly TracedRegion[] = combine(
      [source(contour), source(box(40, 5), () => true), source(inItsCorner(contour))],
      [],
      union,
    );
    expect(loneRing(source(contour), 0, units)).toBeDefined();
    expect(alone).toMatchObject({ outer: engine[0]?.outer, holes: [] });
  });

  it('gives whole segments, and the area of a box to the grid', () => {
    const lone = loneRing(source(box(10, 3)), 7, units);
    expect(lone?.turns).toBe(1);
    expect(lone?.ring.area).toBe(9);
    expect(lone?.ring.perimeter).toBe(12);
    expect(lone?.ring.runs.map(({ source: of, segment, t0, t1 }) => [of, segment, t0, t1])).toEqual(
      [0, 1, 2, 3].map((segment) => [7, segment, 0, 1]),
    );
  });

  it('is nothing where the fill rule counts only what runs counter-clockwise, and it does not', () => {
    const clockwise = [source(reverseContour(box(1, 2)))];
    expect(combine(clockwise, [], { ...union, fill: 'positive' })).toEqual([]);
    expect(combine(clockwise, [], union)).toHaveLength(1);
  });

  it('is left to the engine where it crosses itself, is marked, has slanting sides or corners all but alike', () => {
    const eight = polygon([
      { x: 0, y: 0 },
      { x: 4, y: 4 },
      { x: 4, y: 0 },
      { x: 0, y: 4 },
    ]);
    const hair = polygon([
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 1e-4 },
      { x: 0, y: 4 },
    ]);
    for (const contour of [eight, hair, box(0, 1e-5)])
      expect(loneRing(source(contour), 0, units)).toBeUndefined();
    expect(
      loneRing(
        source(box(0, 2), (segment) => segment === 1),
        0,
        units,
      ),
    ).toBeUndefined();
  });
});
