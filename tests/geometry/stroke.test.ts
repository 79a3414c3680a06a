// Strokes as areas. Outside: clipper-lib (BSL-1.0) grows fine chords of the same lines; closed forms of bars and rings;
// the areas of SVG's own definition. How whole drawings compare with a renderer is in tests/artwork/tile-cases.test.ts.
import { describe, expect, test } from 'vitest';
import { type Contour, cubic, line, polyline, type Segment, type Shape } from '../../src/geometry/contour.ts';
import { dashCount, dashed } from '../../src/geometry/dashes.ts';
import { shapeArea } from '../../src/geometry/measure.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { type Pen, strokedShapes } from '../../src/geometry/stroke.ts';
import { chordTolerance } from '../../src/geometry/tolerance.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';
import { circle, randomFrom } from './drawn.ts';
import { clipperStrokeArea } from './libraries.ts';

const pen = (width: number, more: Partial<Pen> = {}): Pen => ({
  width,
  cap: 'butt',
  join: 'miter',
  miterLimit: 4,
  ...more,
});
const round: Partial<Pen> = { cap: 'round', join: 'round' };
const areaOf = (shapes: readonly Shape[]): number => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);
const stroked = (contours: readonly Contour[], how: Pen) => strokedShapes(contours, how, chordTolerance);
const at = (x: number, y: number): Point => ({ x, y });
const bar = polyline([at(0, 0), at(10, 0)]);
const corner = polyline([at(0, 0), at(10, 0), at(10, 10)]);

describe('a stroke covers what SVG 2, 13.5 and 13.7, say', () => {
  const quarter = Math.PI / 4;
  test.each<[string, Contour, Pen, number]>([
    ['a bar with butt caps', bar, pen(2), 20],
    ['with square caps', bar, pen(2, { cap: 'square' }), 24],
    ['with round caps', bar, pen(2, { cap: 'round' }), 20 + Math.PI],
    ['a corner that is mitred', corner, pen(2), 40],
    ['bevelled', corner, pen(2, { join: 'bevel' }), 39.5],
    ['rounded', corner, pen(2, { join: 'round' }), 39 + quarter],
    ['mitred past its limit of 1.41', corner, pen(2, { miterLimit: 1.41 }), 39.5],
    ['mitred within its limit of 1.42', corner, pen(2, { miterLimit: 1.42 }), 40],
    ['a ring', circle(at(5, 5), 4, 16), pen(2), 2 * Math.PI * 4 * 2],
    ['a circle smaller than its pen', circle(at(5, 5), 1, 16), pen(4), Math.PI * 9],
    ['a dot', polyline([at(3, 3), at(3, 3)]), pen(2, round), Math.PI],
    ['a line of no length with butt caps', polyline([at(3, 3), at(3, 3)]), pen(2), 0],
    ['dashes', bar, pen(2, { dashes: { lengths: [2, 1], offset: 0 } }), 14],
    ['dashes that begin in a gap', bar, pen(2, { dashes: { lengths: [2, 1], offset: 2.5 } }), 13],
  ])('%s', (_, contour, how, area) => expectWithin(areaOf(stroked([contour], how)), area, 2e-3, 'area'));
});

const random = randomFrom(4711);
const anywhere = (): Point => at(40 * random(), 40 * random());
/** A line of one to four pieces that wander, cross themselves, and bend as tightly as they come. */
function wandering(): Contour {
  const segments: Segment[] = [];
  let from = anywhere();
  for (let i = 0; i < 1 + 4 * random(); i++) {
    const to = anywhere();
    segments.push(random() < 0.3 ? line(from, to) : cubic(from, anywhere(), anywhere(), to));
    from = to;
  }
  return { closed: false, segments };
}
/** How far a place is from the nearest of 4000 of a segment: of runs of 40 only those that could come near are looked at. */
function awayFrom({ segments }: Contour, p: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const s of segments)
    for (const run of runsOf(s))
      if (distance(run.middle, p) - run.reach < least)
        for (const place of run.places) least = Math.min(least, distance(place, p));
  return least;
}
/** Places next to one another on a line, none of them further than `reach` from the middle one. */
interface Run {
  readonly places: readonly Point[];
  readonly middle: Point;
  readonly reach: number;
}
const runsKept = new Map<Segment, readonly Run[]>();
function runsOf(s: Segment): readonly Run[] {
  const kept = runsKept.get(s);
  if (kept) return kept;
  const runs = Array.from({ length: 100 }, (_, run) => {
    const places = Array.from({ length: 41 }, (_, i) => pointAt(s, (run * 40 + i) / 4000));
    const middle = pointAt(s, (run * 40 + 20) / 4000);
    return { places, middle, reach: Math.max(...places.map((place) => distance(place, middle))) };
  });
  runsKept.set(s, runs);
  return runs;
}
const lines = Array.from({ length: 16 }, () => ({ contour: wandering(), half: 0.2 + 4 * random() }));

describe('whatever the line', () => {
  test("every place of a round stroke's edge is half its width from the line", () => {
    for (const { contour, half } of lines) {
      const edges = stroked([contour], pen(2 * half, round)).flatMap(({ contours }) => contours);
      // Places on the line are up to 0.04 mm apart, which tells 0.001 mm too much where the pen is fine.
      for (const s of edges.flatMap(({ segments }) => segments))
        for (const t of [0.01, 0.3, 0.5, 0.7, 0.99])
          expectWithin(
            awayFrom(contour, pointAt(s, t)),
            half,
            chordTolerance + 0.001,
            'distance from the line',
          );
    }
  });

  test('its area is what clipper-lib grows around fine chords', () => {
    for (const { contour, half } of lines) {
      // Of 400 chords a curve the area is another by 0.0001 of itself at most, a tenth of what is asked.
      const chords = contour.segments.flatMap((s) =>
        Array.from({ length: 200 }, (_, i) => pointAt(s, i / 200)),
      );
      const end = contour.segments.at(-1)?.to ?? at(0, 0);
      const ours = areaOf(stroked([contour], pen(2 * half, round)));
      const theirs = clipperStrokeArea([...chords, end], half);
      expectAtMost(Math.abs(ours - theirs) / theirs, 1e-3, 'share by which the areas differ');
    }
  });

  test('a curve comes out as few curves', () => {
    const [ring] = stroked([circle(at(20, 20), 10, 4)], pen(2));
    const segments = ring?.contours.flatMap((contour) => contour.segments) ?? [];
    expect(segments.every(({ kind }) => kind === 'cubic')).toBe(true);
    expectAtMost(segments.length, 32, 'curves');
  });
});

describe('dashes', () => {
  // Truth: the length of a curve is the sum of its chords, as they grow shorter.
  test('lie where the sum of two hundred thousand chords puts them', () => {
    const wave = cubic(at(0, 0), at(40, 60), at(-10, -50), at(60, 10));
    const places = Array.from({ length: 200_001 }, (_, i) => pointAt(wave, i / 200_000));
    const lengths = [0];
    for (const [i, p] of places.slice(1).entries())
      lengths.push((lengths[i] ?? 0) + distance(places[i] ?? p, p));
    const total = lengths.at(-1) ?? 0;
    const dashes = dashed({ closed: false, segments: [wave] }, { lengths: [7, 3], offset: 2 }, 1);
    expect(dashes.length).toBe(Math.ceil((total + 2) / 10));
    dashes.forEach(({ segments }, i) => {
      const ends = [segments[0]?.from, segments.at(-1)?.to];
      [Math.max(0, i * 10 - 2), Math.min(total, i * 10 + 5)].forEach((along, end) => {
        const wanted = places[lengths.findIndex((length) => length >= along - 1e-9)] ?? at(0, 0);
        expectAtMost(distance(ends[end] ?? at(1e9, 0), wanted), 0.001, 'mm from its place');
      });
    });
  });

  test('one that runs over the start of a closed line is one, with its corner', () => {
    const square: Contour = {
      ...polyline([at(0, 0), at(10, 0), at(10, 10), at(0, 10), at(0, 0)]),
      closed: true,
    };
    const dashes = dashed(square, { lengths: [6, 4], offset: 3 }, 1);
    expect(dashes.map(({ segments }) => segments.length)).toEqual([2, 2, 2, 2]);
    expect(dashes.every(({ closed }) => !closed)).toBe(true);
  });

  test('are counted before they are made', () => {
    expectWithin(dashCount(100, { lengths: [1, 1, 2, 1], offset: 0 }, 2), 40, 1e-9);
    expect(dashCount(1e6, { lengths: [1e-9, 1e-9], offset: 0 }, 0)).toBeGreaterThan(1e14);
    // Round ends of 5 mm on dashes 2.5 mm apart: each lies over two.
    expectWithin(dashCount(100, { lengths: [1, 1, 2, 1], offset: 0 }, 5), 80, 1e-9);
  });
});
