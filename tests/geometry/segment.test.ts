import { describe, expect, test } from 'vitest';
import { cubic, line, type Segment } from '../../src/geometry/contour.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import {
  chordCount,
  derivativeAt,
  directionAt,
  partOf,
  pointAt,
  withEnds,
} from '../../src/geometry/segment.ts';
import { expectAtMost, expectPointWithin, expectWithin, expectWithinPart } from '../closeness.ts';
import { blob, box, chordPoints, circle, randomFrom } from './drawn.ts';
import { exactData, librarianLength, librarianPoint } from './libraries.ts';

const random = randomFrom(20263);
const anyPoint = (): Point => ({ x: 100 * random() - 50, y: 100 * random() - 50 });
const cubics = Array.from({ length: 40 }, () => cubic(anyPoint(), anyPoint(), anyPoint(), anyPoint()));
const straight = line({ x: 3, y: -4 }, { x: 17, y: 9 });
const all: readonly Segment[] = [...cubics, straight];
const spans: readonly (readonly [number, number])[] = [
  [0, 1],
  [0, 0.3],
  [0.3, 1],
  [0.2, 0.7],
  [0.9, 0.1],
  [1, 0],
  [1, 0.6],
];

describe('a part of a segment', () => {
  test('runs through the same points, also backwards', () => {
    for (const s of all)
      for (const [t0, t1] of spans) {
        const part = partOf(s, t0, t1);
        for (const u of [0, 0.25, 0.5, 0.9, 1])
          expectPointWithin(pointAt(part, u), pointAt(s, t0 + u * (t1 - t0)), 1e-12 * 200);
      }
  });

  test('is the segment itself when it is the whole', () => {
    for (const s of all) expect(partOf(s, 0, 1)).toBe(s);
  });

  test('begins and ends exactly at a drawn end', () => {
    for (const s of cubics) {
      expect(partOf(s, 0, 0.4).from).toEqual(s.from);
      expect(partOf(s, 0.4, 1).to).toEqual(s.to);
      expect(partOf(s, 1, 0.4).from).toEqual(s.to);
    }
  });

  test('of a part is a part', () => {
    for (const s of cubics.slice(0, 10)) {
      const twice = partOf(partOf(s, 0.2, 0.8), 0.25, 0.5);
      for (const u of [0, 0.5, 1]) expectPointWithin(pointAt(twice, u), pointAt(s, 0.35 + 0.15 * u), 1e-10);
    }
  });
});

describe('moving the ends of a segment', () => {
  test('puts the ends where they are asked for and keeps the end directions', () => {
    for (const s of cubics) {
      const [from, to] = [
        { x: s.from.x + 0.01, y: s.from.y - 0.02 },
        { x: s.to.x - 0.03, y: s.to.y + 0.01 },
      ];
      const moved = withEnds(s, from, to);
      expect(moved.from).toEqual(from);
      expect(moved.to).toEqual(to);
      for (const t of [0, 1]) expectPointWithin(derivativeAt(moved, t), derivativeAt(s, t), 1e-11);
      for (const t of [0.2, 0.5, 0.8]) expectPointWithin(pointAt(moved, t), pointAt(s, t), 0.04);
    }
    expect(withEnds(straight, { x: 0, y: 0 }, { x: 1, y: 1 })).toEqual(line({ x: 0, y: 0 }, { x: 1, y: 1 }));
  });
});

describe('the derivative', () => {
  test('is what differences give', () => {
    const h = 1e-5;
    for (const s of all)
      for (const t of [0.1, 0.5, 0.9]) {
        const [p, q] = [pointAt(s, t - h), pointAt(s, t + h)];
        expectPointWithin(derivativeAt(s, t), { x: (q.x - p.x) / (2 * h), y: (q.y - p.y) / (2 * h) }, 1e-5);
      }
  });

  test('gives way to the next point that differs where a handle has no length', () => {
    const at = { x: 5, y: 5 };
    const starts = cubic(at, at, { x: 9, y: 8 }, { x: 20, y: 5 });
    const angle = ({ x, y }: Point) => Math.atan2(y, x);
    expectWithin(angle(directionAt(starts, 0)), Math.atan2(3, 4), 1e-3);
    const ends = cubic({ x: 20, y: 5 }, { x: 9, y: 8 }, at, at);
    expectWithin(angle(directionAt(ends, 1)), Math.atan2(-3, -4), 1e-3);
    const both = cubic(at, at, { x: 8, y: 9 }, { x: 8, y: 9 });
    expectWithin(angle(directionAt(both, 0)), Math.atan2(4, 3), 1e-3);
    expectWithin(angle(directionAt(both, 1)), Math.atan2(4, 3), 1e-3);
  });
});

describe('chords', () => {
  const strayFrom = (chord: readonly [Point, Point], p: Point): number => {
    const length = distance(...chord);
    const dx = (chord[1].x - chord[0].x) / (length || 1);
    const dy = (chord[1].y - chord[0].y) / (length || 1);
    const along = Math.min(length, Math.max(0, (p.x - chord[0].x) * dx + (p.y - chord[0].y) * dy));
    return distance(p, { x: chord[0].x + along * dx, y: chord[0].y + along * dy });
  };

  const worst = (s: Segment, count: number): number =>
    Math.max(
      ...Array.from({ length: count }, (_, i) => {
        const chord = [pointAt(s, i / count), pointAt(s, (i + 1) / count)] as const;
        return Math.max(
          ...[0.1, 0.3, 0.5, 0.7, 0.9].map((u) => strayFrom(chord, pointAt(s, (i + u) / count))),
        );
      }),
    );

  test.each([0.5, 0.05, 0.001])('as many as are asked for keep within %s mm of the curve', (tolerance) => {
    for (const s of all) expectAtMost(worst(s, chordCount(s, tolerance)), tolerance, 'stray of a chord');
  });

  test('are not many more than are needed: a third of a circle arc stays within a factor of 1.5', () => {
    const arc = circle({ x: 0, y: 0 }, 20).segments[0];
    if (!arc) throw new Error('no arc');
    // A chord over an angle A sags r A² / 8.
    const needed = Math.ceil(Math.PI / 2 / Math.sqrt((8 * 0.001) / 20));
    expect(chordCount(arc, 0.001)).toBeLessThanOrEqual(1.5 * needed);
    expect(chordCount(straight, 0.001)).toBe(1);
  });

  test('add up to the length that svg-path-properties measures', () => {
    const seeded = randomFrom(20264);
    for (let i = 0; i < 8; i++) {
      const contour = blob(seeded, { x: 0, y: 0 }, 20 + 20 * seeded());
      const points = chordPoints(contour, 1e-5);
      const length = points.reduce((sum, p, j) => sum + distance(p, points[(j + 1) % points.length] ?? p), 0);
      expectWithinPart(length, librarianLength(exactData([contour])), 1e-5, 'length');
    }
    const points = chordPoints(circle({ x: 2, y: 3 }, 10, 8), 1e-6);
    const length = points.reduce((sum, p, j) => sum + distance(p, points[(j + 1) % points.length] ?? p), 0);
    expectWithinPart(length, 20 * Math.PI, 1e-5, 'length of a circle');
  });

  test('have corners on the curve, each end of a segment once', () => {
    const square = box(0, 0, 10, 10);
    expect(chordPoints(square, 0.01)).toHaveLength(4);
    const open = { closed: false, segments: square.segments.slice(0, 3) };
    expect(chordPoints(open, 0.01)).toHaveLength(4);
    const arc = { closed: false, segments: cubics.slice(0, 1) };
    const points = chordPoints(arc, 0.01);
    expect(points[0]).toEqual(cubics[0]?.from);
    expect(points.at(-1)).toEqual(cubics[0]?.to);
  });
});

describe('a point of a segment', () => {
  test('at the middle of a symmetric cubic is where svg-path-properties finds the middle of its length', () => {
    const s = cubic({ x: -30, y: 0 }, { x: -20, y: 25 }, { x: 20, y: 25 }, { x: 30, y: 0 });
    const there = librarianPoint(exactData([{ closed: false, segments: [s] }]), 0.5);
    expectPointWithin(pointAt(s, 0.5), there, 0.01);
  });
});
