// The proof's reader of path data against svgpath, which the rest of the house reads with, and svg-path-properties.
import { describe, expect, test } from 'vitest';
import { parsePathData } from '../../../src/drawing/path-data.ts';
import type { Contour, Segment } from '../../../src/geometry/contour.ts';
import { pointAt } from '../../../src/geometry/segment.ts';
import { readPath } from '../../../src/prove/written/path-reader.ts';
import { expectPointWithin, expectWithin } from '../../closeness.ts';
import { librarianLength } from '../../geometry/libraries.ts';

const asIs = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

const segmentsOf = (contours: readonly Contour[]): Segment[] =>
  contours.flatMap(({ segments }) => [...segments]);

const paths = [
  'M10 20L30.5 40C50 60 70 80 90.25 10Z',
  'm10,20 30.5-4 l1 1 2 2z',
  'M0 0H10V10h-5v-2z',
  'M1 1C2 2 3 3 4 1S6-1 7 1s2 2 3 0',
  'M1 1Q2 4 3 1T5 1t2 0',
  'M.5.5L1.5.25-.5-.75',
  'M1e1 2E-1L+3.5e+0 4',
  'M0 0 10 0 10 10zM20 20l5 0 0 5zm-2-2 1 0 0 1z',
  '  M 0 , 0\n\tL 5 , 5  ',
  'M123456789.0625 0.1234567890123456789L0 0',
];

describe('the path reader', () => {
  test.each(paths)('reads as svgpath does: %s', (data) => {
    const ours = readPath(data, asIs);
    const theirs = parsePathData(data);
    expect(ours.map(({ closed }) => closed)).toEqual(theirs.map(({ closed }) => closed));
    const [mine, other] = [segmentsOf(ours), segmentsOf(theirs)];
    expect(mine.map(({ kind }) => kind)).toEqual(other.map(({ kind }) => kind));
    mine.forEach((segment, i) => {
      const twin = other[i];
      if (!twin) throw new Error('a segment has its twin');
      for (const t of [0, 0.3, 0.7, 1]) expectPointWithin(pointAt(segment, t), pointAt(twin, t), 1e-7);
    });
  });

  test.each(paths.filter((data) => !/[zZ]\w|^m|[mM].*[mM]|\d{9}/.test(data)))(
    'has the length that svg-path-properties gives: %s',
    (data) => {
      const length = segmentsOf(readPath(data, asIs)).reduce((sum, s) => {
        const points = Array.from({ length: 4001 }, (_, i) => pointAt(s, i / 4000));
        return (
          sum +
          points
            .slice(1)
            .reduce(
              (part, p, i) => part + Math.hypot(p.x - (points[i]?.x ?? 0), p.y - (points[i]?.y ?? 0)),
              0,
            )
        );
      }, 0);
      expectWithin(length, librarianLength(data), 1e-3);
    },
  );

  test('moves every point as it is read', () => {
    const [contour] = readPath('M1 2l3 4', { a: 0, b: 1, c: -1, d: 0, e: 10, f: 20 });
    expect(contour?.segments).toEqual([{ kind: 'line', from: { x: 8, y: 21 }, to: { x: 4, y: 24 } }]);
  });

  test('takes a number for what it says, to the last digit', () => {
    for (const text of ['0.1', '123.4567', '0.0001', '-7.3', '1e-7', '299792.458', '0.30000000000000004']) {
      const [contour] = readPath(`M${text} 0L1 1`, asIs);
      expect(contour?.segments[0]?.from.x).toBe(Number(text));
    }
  });

  test.each([
    ['M0 0L50 0L50 oops', 'no number'],
    ['L5 5', 'begin with a move'],
    ['M0 0L5', 'no number'],
    ['M0 0A5 5 0 0 1 9 9', 'not read here'],
    ['M0 0L1 1Z5 5', 'after a path was closed'],
    ['M0 0L1 1#', 'no number'],
    ['M-.', 'no number'],
  ])('refuses what is cut short or strange: %s', (data, says) => {
    expect(() => readPath(data, asIs)).toThrow(says);
  });

  test('finds nothing in nothing', () => {
    expect(readPath('', asIs)).toEqual([]);
  });
});
