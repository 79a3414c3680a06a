import svgPath from 'svgpath';
import { describe, expect, test } from 'vitest';
import { parsePathData, pathDataFault, writePathData } from '../../src/drawing/path-data.ts';
import { plainPath } from '../../src/drawing/plain-path.ts';
import { moveContour, movePoint } from '../../src/geometry/affine.ts';
import { type Contour, cubic, polygon, type Segment } from '../../src/geometry/contour.ts';
import { signedArea, tightBox } from '../../src/geometry/measure.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { expectAtMost, expectPointWithin, expectWithin, expectWithinPart } from '../closeness.ts';
import { blob, box, chordPoints, randomFrom } from '../geometry/drawn.ts';
import { librarianLength, librarianPoint } from '../geometry/libraries.ts';

const random = randomFrom(20268);

const controls = (s: Segment): Point[] => (s.kind === 'line' ? [s.from, s.to] : [s.from, s.c1, s.c2, s.to]);

const lengthOf = (contours: readonly Contour[]): number =>
  contours.reduce((sum, contour) => {
    const points = chordPoints(contour, 1e-6);
    const [first] = points;
    const around = contour.closed && first ? [...points, first] : points;
    return sum + around.slice(1).reduce((s, p, i) => s + distance(p, around[i] ?? p), 0);
  }, 0);

const nearest = (contours: readonly Contour[], p: Point): number =>
  Math.min(
    ...contours.flatMap(({ segments }) =>
      segments.flatMap((s) => Array.from({ length: 401 }, (_, i) => distance(p, pointAt(s, i / 400)))),
    ),
  );

describe('path data written and read again', () => {
  test('are the same curves within half of the last decimal, 0.0001 mm', () => {
    for (let i = 0; i < 20; i++) {
      const drawn = [
        blob(random, { x: 300 * random() - 150, y: 300 * random() - 150 }, 30),
        box(random() * 10, random() * 10, 3.33333, 7.77777),
        { closed: false, segments: blob(random, { x: 0, y: 0 }, 9).segments.slice(0, 3) },
      ];
      const read = parsePathData(writePathData(drawn));
      expect(read).toHaveLength(drawn.length);
      drawn.forEach((contour, c) => {
        expect(read[c]?.closed).toBe(contour.closed);
        expect(read[c]?.segments.map(({ kind }) => kind)).toEqual(contour.segments.map(({ kind }) => kind));
        contour.segments.forEach((s, j) => {
          const back = read[c]?.segments[j];
          const points = back ? controls(back) : [];
          controls(s).forEach((p, k) => {
            expectPointWithin(points[k] ?? { x: NaN, y: NaN }, p, 0.0000708);
          });
        });
      });
    }
  });

  test('keep every line that was written when the piece is turned, however short', () => {
    const lines = (data: string): number => data.match(/[CLZ]/g)?.length ?? 0;
    const beside = ({ x, y }: Point): Point => {
      const [length, way] = [0.0001 + 0.0006 * random(), 2 * Math.PI * random()];
      return { x: x + length * Math.cos(way), y: y + length * Math.sin(way) };
    };
    for (let i = 0; i < 500; i++) {
      const [a, b]: [Point, Point] = [
        { x: 20 * random(), y: 30 * random() },
        { x: 40, y: 30 * random() },
      ];
      const data = writePathData([polygon([a, b, beside(b), beside(a)])]);
      const turn = 2 * Math.PI * random();
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const turned = parsePathData(data).map((own) =>
        moveContour({ a: c, b: s, c: -s, d: c, e: 7, f: -3 }, own),
      );
      const again = writePathData(turned, undefined, { asRead: true });
      expect(lines(again), data).toBe(lines(data));
      expect(parsePathData(again)[0]?.segments.length, data).toBe(parsePathData(data)[0]?.segments.length);
    }
  });

  test('are the same bytes when written a second time', () => {
    const data = writePathData([blob(random, { x: 5, y: 5 }, 20), box(0, 0, 1 / 3, 2 / 3)]);
    expect(writePathData(parsePathData(data))).toBe(data);
  });

  test('hold only absolute M, L, C and Z, no exponent and no minus nought', () => {
    const data = writePathData([
      box(-1e-9, 1e-7, 10, 10),
      {
        closed: true,
        segments: [cubic({ x: 0, y: 0 }, { x: 1e-5, y: -1e-6 }, { x: 5, y: 5 }, { x: 0, y: 0 })],
      },
    ]);
    expect(data).toMatch(/^[MLCZ0-9 .-]+$/);
    expect(data).not.toMatch(/-0(?![.\d])/);
    expect(data).not.toMatch(/e/i);
    expect(writePathData([box(0, 0, 2, 1)])).toBe('M0 0L2 0L2 1L0 1Z');
    expect(writePathData([])).toBe('');
  });

  test('close a contour whose first and last point are drawn apart', () => {
    const [contour] = parsePathData('M0 0 L10 0 L10 10 Z');
    expect(contour?.closed).toBe(true);
    expect(contour?.segments).toHaveLength(3);
    expect(contour?.segments.at(-1)?.to).toEqual({ x: 0, y: 0 });
  });
});

describe('path data with a fault', () => {
  test.each([
    'M0 0 L50 0 L50 50 oops L0 50 Z',
    'M0 0 L50 0 L50',
    'M0 0 L1e400 0 Z',
    'L0 0 L10 10',
    'M0 0 C1 1 2 2 3',
    'M0 0 L1e12 0',
    'M0 0 A5 5 0 2 0 10 10',
    'M0 0 L10 #',
    'M',
    'M0 0 L NaN 3',
    'M0 0 L10 10 L-Infinity 0',
  ])('is found: %s', (data) => {
    const fault = pathDataFault(data);
    expect(fault).toEqual(expect.any(String));
    expect(fault).not.toBe('');
    expect(fault).not.toMatch(/svgpath/i);
  });

  test.each([
    'M0 0 L50 0 L50 50 L0 50 Z',
    'm0,0l50,0 0,50zM10-10.5.5 3',
    'M0 0h10v10H0z',
    'M0 0 A5 5 0 01 10 0',
    'M0 0 C1 1 2 2 3 3 S5 5 6 6 Q7 7 8 8 T9 9',
    'M1e2 1E-2 L+5 -5',
  ])('is not seen where there is none: %s', (data) => {
    expect(pathDataFault(data)).toBeUndefined();
  });
});

describe('every command', () => {
  test('relative, shorthand and after a close, reads as SVG says', () => {
    const same = (one: string, other: string) => expect(parsePathData(one)).toEqual(parsePathData(other));
    same('m1 2 l3 4 5 6', 'M1 2 L4 6 L9 12');
    same('M1 2 h5 v-3 H0 V0', 'M1 2 L6 2 L6 -1 L0 -1 L0 0');
    same('M5 5 l10 0 0 10 z l-5 -5', 'M5 5 L15 5 L15 15 Z M5 5 L0 0');
    same('M0 0 C0 5 5 10 10 10 S20 5 20 0', 'M0 0 C0 5 5 10 10 10 C15 10 20 5 20 0');
    same('M0 0 Q5 10 10 0 T20 0', 'M0 0 Q5 10 10 0 Q15 -10 20 0');
  });

  test('a quadratic is the cubic that runs through the same points', () => {
    const [contour] = parsePathData('M0 0 Q5 10 10 0');
    const s = contour?.segments[0];
    if (s?.kind !== 'cubic') throw new Error('not a cubic');
    for (const t of [0.25, 0.5, 0.9]) {
      const u = 1 - t;
      expectPointWithin(pointAt(s, t), { x: 2 * u * t * 5 + t * t * 10, y: 2 * u * t * 10 }, 1e-12);
    }
  });
});

describe('arcs', () => {
  const arcs = [
    'M10 0 A10 10 0 0 1 0 10',
    'M0 0 A30 20 0 0 1 40 10',
    'M0 0 A30 20 0 1 0 40 10',
    'M5 5 A30 12 35 1 1 40 10',
    'M5 5 A30 12 -70 0 0 40 10',
    'M0 0 A1 1 0 0 1 20 0',
  ];

  // An arc of a quarter circle as one cubic strays by 2.7e-4 of its radius, outward (standard; from memory), so by
  // 0.008 mm on these.
  test.each(arcs)('become cubics that lie where svg-path-properties has the arc: %s', (data) => {
    const contours = parsePathData(data);
    for (let i = 0; i <= 20; i++) {
      const there = librarianPoint(data, i / 20);
      // 400 samples a quarter leave up to 0.06 mm between two of them: across, that is nothing.
      expectAtMost(nearest(contours, there), 0.08, 'distance from the arc');
    }
    expectWithinPart(lengthOf(contours), librarianLength(data), 1e-3, 'length');
  });

  test.each([0, 1])('sweep the way their flag says: %s', (sweepFlag) => {
    const [contour] = parsePathData(`M10 0 A10 10 0 0 ${sweepFlag} -10 0`);
    const box = tightBox(contour ? [contour] : []);
    if (sweepFlag === 1) expectWithin(box.maxY, 10, 0.01);
    else expectWithin(box.minY, -10, 0.01);
  });

  test('of a whole circle have its area', () => {
    const [contour] = parsePathData('M10 0 A10 10 0 1 1 -10 0 A10 10 0 1 1 10 0 Z');
    if (!contour) throw new Error('nothing read');
    expectWithinPart(signedArea(contour), 100 * Math.PI, 1e-3);
  });
});

describe('a matrix given with the data', () => {
  test.each(['M1 2 L10 -3 C4 5 6 7 8 9 Q1 1 2 2 Z', 'm1 2 l10 -3 h5 v6 z l3 3', 'M5 5 A30 12 35 1 1 40 10'])(
    'moves every point of it: %s',
    (data) => {
      const m = { a: 1.5, b: 0.3, c: -0.7, d: 2, e: 11, f: -13 };
      const [plain, moved] = [parsePathData(data), parsePathData(data, m)];
      expect(moved.map(({ segments }) => segments.length)).toEqual(
        plain.map(({ segments }) => segments.length),
      );
      plain.forEach(({ segments }, c) => {
        segments.forEach((s, i) => {
          const other = moved[c]?.segments[i];
          if (!other) throw new Error('a segment is missing');
          for (const t of [0, 0.3, 0.7, 1])
            expectPointWithin(pointAt(other, t), movePoint(m, pointAt(s, t)), 1e-9);
        });
      });
    },
  );
});

describe('path data as most programs write it', () => {
  /** A number in one of the ways that programs write it. */
  const typed = (): string => {
    const value = (random() - 0.5) * 10 ** Math.floor(6 * random());
    const text = value.toFixed(Math.floor(12 * random()));
    return random() < 0.3 ? text.replace(/^(-?)0\./, '$1.') : text;
  };
  const takes = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, Z: 0 };
  const pick = <T>(of: readonly T[], or: T): T => of[Math.floor(of.length * random())] ?? or;
  const numbersOf = (count: number): string => {
    let text = '';
    for (let i = 0; i < count; i++) {
      const number = typed();
      text +=
        (i === 0 || number.startsWith('-') ? pick(['', ' '], '') : pick([' ', ',', ' , ', '\n'], ' ')) +
        number;
    }
    return text;
  };
  const drawnBy = (letters: readonly string[]): string => {
    const parts = [`M${numbersOf(2)}`];
    for (let i = 0; i < 12; i++) {
      const letter = pick(letters, 'L');
      const count = takes[letter.toUpperCase() as keyof typeof takes];
      parts.push(letter + numbersOf(count * (count > 0 ? 1 + Math.floor(2 * random()) : 1)));
    }
    return parts.join(pick(['', ' '], ''));
  };

  test('is read number for number as the full reader reads it, in svgpath', () => {
    for (let i = 0; i < 300; i++) {
      const data = drawnBy(['L', 'H', 'V', 'C', 'Q', 'M', 'Z']);
      const plain = plainPath(data, 1e9);
      const { segments } = svgPath(data) as unknown as { readonly segments: readonly (readonly unknown[])[] };
      expect({ data, commands: plain?.commands, numbers: plain?.numbers }).toEqual({
        data,
        commands: segments.map(([command]) => command),
        numbers: segments.flatMap(([, ...values]) => values),
      });
    }
  });

  test('in relative and short commands is the curve that the full reader makes of it', () => {
    for (let i = 0; i < 100; i++) {
      const data = drawnBy(['l', 'h', 'v', 'c', 'S', 's', 'q', 't', 'T', 'm', 'z']);
      const whole = svgPath(data).abs().unshort().toString();
      expect(pathDataFault(data)).toBeUndefined();
      expect(parsePathData(data)).toEqual(parsePathData(whole));
    }
  });

  test.each([
    ['M0 0L1', 'a number missing'],
    ['M0 0 1', 'half a point'],
    ['L0 0', 'no beginning'],
    ['M0 0L1,,2', 'two commas'],
    ['M0 0L1 2,', 'a comma at the end'],
    ['M0 0L.', 'a dot alone'],
    ['M0 0L1e2 3', 'a power of ten'],
    ['M0 0A1 1 0 0 1 2 2', 'an arc'],
    ['M0 0L2e9 3', 'too large a number'],
    ['M0 0L2000000000 3', 'too large a number, spelt out'],
    ['M0 0X1 2', 'no command'],
  ])('%s is left to the full reader: %s', (data) => {
    expect(plainPath(data, 1e9)).toBeUndefined();
  });
});
