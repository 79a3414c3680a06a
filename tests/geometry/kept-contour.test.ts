// A contour kept as numbers is the same contour, number for number.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pointContacts } from '../../src/cut/checks/point-contacts.ts';
import { type Contour, cubic, line, polygon, polyline, type Segment } from '../../src/geometry/contour.ts';
import {
  atHand,
  endOf,
  keptContour,
  keptLayers,
  segmentCount,
  startOf,
} from '../../src/geometry/kept-contour.ts';
import type { Point } from '../../src/geometry/point.ts';
import { doubledLines } from '../../src/prove/checks/check-doubled.ts';

const number = fc.double({ noNaN: true });
const point: fc.Arbitrary<Point> = fc.tuple(number, number).map(([x, y]) => ({ x, y }));

/** Runs of lines and cubics, each beginning where the one before ends; -0 and numbers past all reason among them. */
const contour: fc.Arbitrary<Contour> = fc
  .record({
    closed: fc.boolean(),
    start: point,
    steps: fc.array(fc.oneof(fc.tuple(point), fc.tuple(point, point, point)), { maxLength: 20 }),
  })
  .map(({ closed, start, steps }) => {
    let at = start;
    const segments = steps.map((step): Segment => {
      const [first, c2, end] = step;
      const s = c2 && end ? cubic(at, first, c2, end) : line(at, first);
      at = s.to;
      return s;
    });
    return { closed, segments };
  });

test('every number comes back as it was, however often it is asked for', () => {
  fc.assert(
    fc.property(contour, (drawn) => {
      const kept = keptContour(drawn);
      expect(kept.closed).toBe(drawn.closed);
      // `toStrictEqual` tells -0 from 0.
      expect(kept.segments).toStrictEqual(drawn.segments);
      expect(kept.segments).toStrictEqual(drawn.segments);
    }),
  );
});

test('it begins and ends where it did, of as many segments', () => {
  fc.assert(
    fc.property(contour, (drawn) => {
      for (const one of [drawn, keptContour(drawn)]) {
        expect(startOf(one)).toStrictEqual(drawn.segments[0]?.from);
        expect(endOf(one)).toStrictEqual(drawn.segments.at(-1)?.to);
        expect(segmentCount(one)).toBe(drawn.segments.length);
      }
    }),
  );
});

const triangle = [
  { x: 0, y: 0 },
  { x: 4, y: 0 },
  { x: 4, y: 3 },
];
const square = polygon(triangle);

test('a copy of it is whole: spread, as JSON, and as another thread is given it', () => {
  const kept = keptContour(square);
  expect(kept).not.toBe(square);
  expect({ ...kept }).toEqual(square);
  expect(JSON.parse(JSON.stringify(kept))).toEqual(square);
  expect(structuredClone(kept)).toEqual(square);
});

test('at hand its segments are the same objects each time; kept, they are made anew once another was asked for', () => {
  const kept = keptContour(square);
  const near = atHand(kept);
  const [before] = kept.segments;
  expect(kept.segments[0]).toBe(before);
  expect(keptContour(polyline(triangle)).segments).toHaveLength(2);
  expect(kept.segments[0]).not.toBe(before);
  expect(near.segments[0]).toBe(near.segments[0]);
  expect(near).toEqual(square);
});

test('a contour of many segments, or one that breaks off, is left as it is', () => {
  const long = polyline(Array.from({ length: 66 }, (_, x) => ({ x, y: 0 })));
  expect(keptContour(long)).toBe(long);
  const broken: Contour = {
    closed: false,
    segments: [line({ x: 0, y: 0 }, { x: 1, y: 0 }), line({ x: 1, y: 1e-15 }, { x: 2, y: 0 })],
  };
  expect(keptContour(broken)).toBe(broken);
});

test('layers keep what else is theirs', () => {
  const layers = keptLayers([{ name: 'sea', colour: '#17566b', shapes: [{ contours: [square] }] }]);
  expect(layers.map(({ name, colour }) => [name, colour])).toEqual([['sea', '#17566b']]);
  expect(layers[0]?.shapes[0]?.contours[0]?.segments).toEqual(square.segments);
});

/** A square of 4 mm with its least corner at a place. */
const squareAt = (x: number, y: number): Contour =>
  polygon([
    { x, y },
    { x: x + 4, y },
    { x: x + 4, y: y + 4 },
    { x, y: y + 4 },
  ]);

test('whoever tells segments apart by which objects they are finds the same where they are kept', () => {
  const [alone, twice] = [[squareAt(0, 0)], [squareAt(0, 0), squareAt(0, 0)]];
  const kept = (contours: readonly Contour[]) => contours.map(keptContour);
  // No line is another of itself: asked for anew, each of them would be.
  expect([doubledLines(kept(alone)), doubledLines(kept(twice))]).toEqual([0, 8]);
  const corner = [squareAt(0, 0), squareAt(4, 4)];
  const contacts = (contours: readonly Contour[]) =>
    pointContacts(contours.map((one) => ({ contours: [one] })));
  expect(contacts(kept(alone))).toEqual([]);
  expect(contacts(kept(corner))).toEqual([{ x: 4, y: 4 }]);
});
