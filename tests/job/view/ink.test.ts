// Path data as numbers, held against svgpath's reading of the same text.
import { expect, test } from 'vitest';
import { parsePathData, writePathData } from '../../../src/drawing/path-data.ts';
import { cubic, line } from '../../../src/geometry/contour.ts';
import { inkOf } from '../../../src/job/view/ink.ts';

const at = (x: number, y: number) => ({ x, y });
const written = writePathData([
  {
    closed: true,
    segments: [
      line(at(0.1, -20.0003), at(1e5, 7)),
      cubic(at(1e5, 7), at(-0.0001, 3.25), at(88.8888, 0), at(12, 12.5)),
      line(at(12, 12.5), at(0.1, -20.0003)),
    ],
  },
  { closed: false, segments: [line(at(5, 6), at(7.7777, 8))] },
]);

test('numbers are read as a library reads them, to the last bit', () => {
  const { codes, points } = inkOf(written);
  expect([...codes]).toEqual([0, 1, 2, 3, 0, 1]);
  const library = parsePathData(written).flatMap(({ closed, segments }) => {
    const drawn = closed ? segments.slice(0, -1) : segments;
    return drawn.flatMap((s, i) => [
      ...(i === 0 ? [s.from] : []),
      ...(s.kind === 'cubic' ? [s.c1, s.c2] : []),
      s.to,
    ]);
  });
  expect([...points]).toEqual(library.flatMap(({ x, y }) => [x, y]));
});

test.each(['M1 2L3', 'M1 2l3 4', 'M1 2 3 4', 'M1e2 3', 'M. 2', 'M1..2 3', 'M1 2Z3', 'x'])(
  'text that is not as it is written is a fault: %s',
  (data) => {
    expect(() => inkOf(data)).toThrow('path data');
  },
);
