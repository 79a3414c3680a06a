import { describe, expect, it } from 'vitest';
import { moveContour } from '../../src/geometry/affine.ts';
import { type Contour, cubic, type Shape } from '../../src/geometry/contour.ts';
import { signedArea } from '../../src/geometry/measure.ts';
import { filledShapes } from '../../src/geometry/regions.ts';
import { expectWithin } from '../closeness.ts';
import { blob, box, circle, randomFrom } from '../geometry/drawn.ts';
import { expectWrapArea, type MadeWrap, makeWrap, reversedShape, shapesArea } from './a-wrap.ts';
import { art, height, moveShape, ring, shape, teardrop, width, withCopies } from './art.ts';
import { doubledLength, shapeFaults } from './faults.ts';

const small = { radius: 20, around: 3, band: { from: 10, to: 46 }, width, height };
const girth120 = { ...small, radius: 120 / (2 * Math.PI) };

const areaOf = ({ wrap }: MadeWrap): number => shapesArea(wrap.layers[0]?.shapes ?? []);
const countOf = ({ wrap }: MadeWrap): number => wrap.layers[0]?.shapes.length ?? 0;

const startedElsewhere = (by: number, { contours }: Shape): Shape => ({
  contours: contours.map(({ closed, segments }) => ({
    closed,
    segments: [...segments.slice(by % segments.length), ...segments.slice(0, by % segments.length)],
  })),
});

describe('the same art drawn another way', () => {
  const random = randomFrom(21);
  const shapes = [
    ...withCopies(shape(blob(random, { x: 3, y: 5 }, 8))),
    ...withCopies(ring({ x: 22, y: 29 }, 7, 4)),
    shape(blob(random, { x: 27, y: 14 }, 6)),
  ];
  const walls = [{}, { sine: 0.12 }, { sine: -0.12, lay: 'conformal' as const }, { drop: 15, around: 4 }];

  it.each(walls)('comes out the same, run for run ($sine $lay $drop)', (wall) => {
    const one = makeWrap({ ...small, shapes, ...wall });
    expect(makeWrap({ ...small, shapes, ...wall }).wrap).toEqual(one.wrap);
  });

  it.each(walls)('holds the same area in as many shapes ($sine $lay $drop)', (wall) => {
    const given = { ...small, ...wall };
    const one = makeWrap({ ...given, shapes });
    const others = {
      'run backwards': shapes.map(reversedShape),
      'begun at other nodes': shapes.map((s, i) => startedElsewhere(i + 2, s)),
      'in another order': [...shapes].reverse(),
    };
    for (const [name, other] of Object.entries(others)) {
      const made = makeWrap({ ...given, shapes: other });
      expect(countOf(made), name).toBe(countOf(one));
      expectWithin(areaOf(made), areaOf(one), 1e-3 * areaOf(one) * 0.1, name);
    }
  });

  it('mirrors with its tile', () => {
    const mirrored = shapes.map(({ contours }) =>
      reversedShape({
        contours: contours.map((c) => moveContour({ a: -1, b: 0, c: 0, d: 1, e: width, f: 0 }, c)),
      }),
    );
    // Over whole repeats, without overlap and waste, a mirrored tile holds the same area.
    const inside = (made: MadeWrap) => makeWrapArea(made);
    const one = makeWrap({ ...small, overlap: 0, shapes });
    const other = makeWrap({ ...small, overlap: 0, shapes: mirrored });
    expectWithin(inside(other), inside(one), 0.05);
  });
});

const makeWrapArea = (made: MadeWrap): number => {
  expectWrapArea(made);
  return areaOf(made);
};

describe('a contour of one curve', () => {
  it.each([false, true])('merges with what it overlaps, whichever way it runs (mirrored: %s)', (mirrored) => {
    // It used to come back run the other way, and to cut a hole where it overlapped.
    const [drop] = filledShapes([teardrop({ x: 20, y: 22 }, 15, mirrored)], 'nonzero', 0.003);
    expect(Math.sign(signedArea(drop?.contours[0] ?? box(0, 0, 0, 0)))).toBe(1);
    const made = makeWrap({
      ...small,
      shapes: [shape(circle({ x: 20, y: 12 }, 5)), ...(drop ? [drop] : [])],
    });
    expect(made.contours.every((_, i) => (made.wrap.layers[0]?.shapes[i]?.contours.length ?? 1) === 1)).toBe(
      true,
    );
    expectWrapArea(made);
  });

  it('that crosses itself keeps its loop as a closed contour', () => {
    // It used to become the whole curve, open.
    const looped: Contour = {
      closed: false,
      segments: [cubic({ x: 5, y: 20 }, { x: 45, y: 2 }, { x: -5, y: 2 }, { x: 35, y: 20 })],
    };
    const shapes = filledShapes([looped], 'evenodd', 0.003);
    expect(shapes.length).toBe(2);
    expect(shapeFaults(shapes)).toEqual([]);
    for (const sine of [0, 0.1]) {
      const made = makeWrap({ ...small, sine, shapes });
      expect(shapeFaults(made.wrap.layers[0]?.shapes ?? [])).toEqual([]);
      expectWrapArea(made);
    }
  });
});

describe('art that lies on a border between cells', () => {
  // The first border stands 0.2718 mm inside the run-off of 1 mm: x = -0.7282, and so 39.2718 in the next tile.
  const border = 40 - 1 + 0.2718;
  const lens = (x: number): Shape =>
    shape({
      closed: true,
      segments: [
        cubic({ x, y: 10 }, { x: x + 4, y: 12 }, { x: x + 4, y: 18 }, { x, y: 20 }),
        cubic({ x, y: 20 }, { x: x - 4, y: 18 }, { x: x - 4, y: 12 }, { x, y: 10 }),
      ],
    });

  it.each([0, 0.1])('with all its nodes, is closed through another border (sine %s)', (sine) => {
    // It used to end in a fault.
    const made = makeWrap({ ...girth120, sine, shapes: withCopies(lens(border)) });
    expect(shapeFaults(made.wrap.layers[0]?.shapes ?? [])).toEqual([]);
    expectWrapArea(made);
  });

  it.each([
    { title: 'touches it from one side', shapes: withCopies(shape(circle({ x: border - 5, y: 15 }, 5))) },
    {
      title: 'touches it from the other side',
      shapes: withCopies(shape(circle({ x: border + 5, y: 15 }, 5))),
    },
    { title: 'has a side along it', shapes: withCopies(shape(box(border, 5, 5, 10))) },
    {
      title: 'has nodes on every border tried',
      shapes: [0.2718, 0.5772, 0.9159, 1.3247, 1.618, 2.0309, 2.5029].flatMap((x) =>
        withCopies(lens(39 + x)),
      ),
    },
  ])('is whole where it $title', ({ shapes }) => {
    const made = makeWrap({ ...girth120, shapes });
    expect(shapeFaults(made.wrap.layers[0]?.shapes ?? [])).toEqual([]);
    expect(doubledLength(made.contours)).toBeLessThan(0.05);
    expectWrapArea(made);
  });

  it('merges with what meets it there from the other side', () => {
    const shapes = [
      ...withCopies(shape(box(border - 5, 5, 5, 10))),
      ...withCopies(shape(box(border, 5, 5, 10))),
    ];
    expect(doubledLength(makeWrap({ ...girth120, shapes }).contours)).toBeLessThan(0.05);
  });
});

it('straight sides on one slanting line merge though their corners differ', () => {
  // They used to leave a slit of one grid unit: two cut lines on one place.
  const side = (t: number) => ({ x: 5 + 23.7 * t, y: 7 + 11.3 * t });
  const quad = (t0: number, t1: number, dx: number, dy: number): Shape => {
    const [a, b] = [side(t0), side(t1)];
    const points = [a, b, { x: b.x + dx, y: b.y + dy }, { x: a.x + dx, y: a.y + dy }];
    return shape({
      closed: true,
      segments: points.map((from, i) => ({ kind: 'line', from, to: points[(i + 1) % 4] ?? from })),
    });
  };
  const shapes = [
    quad(0, 1, 5, -4),
    reversedShape(quad(0.13, 0.37, -3, 5)),
    reversedShape(quad(0.41, 0.93, -3, 5)),
  ];
  for (const setting of [{}, { sine: 0.1 }, { drop: 15 }]) {
    const made = makeWrap({ ...small, shapes, ...setting });
    expect(doubledLength(made.contours)).toBe(0);
    expectWrapArea(made);
  }
});

it('art cut short by the end of a steep cone still runs past the outline', () => {
  // A long upright side used to be cut up to 4 mm from its place: a line on the sheet has no parameter of its own.
  const made = makeWrap({
    shapes: [shape(box(15, 0, 4, height))],
    width,
    height,
    radius: 40,
    sine: 0.6,
    lay: 'conformal',
    around: 6,
    scale: 'across',
    band: { from: 10, to: 60 },
  });
  expect(shapeFaults(made.wrap.layers[0]?.shapes ?? [])).toEqual([]);
  expectWrapArea(made);
});

it('sixty repeats cost and hold sixty times one', () => {
  const shapes = art[0]?.draw(randomFrom(4)) ?? [];
  const setting = { width, height, band: { from: 10, to: 22 }, overlap: 0, shapes };
  const sixty = makeWrap({ ...setting, radius: (60 * 20) / (2 * Math.PI), around: 60 });
  const six = makeWrap({ ...setting, radius: (6 * 20) / (2 * Math.PI), around: 6 });
  const perRepeat = (one: MadeWrap, n: number) => areaOf(one) / n;
  // The run-off of 1 mm on both ends is 2 mm of 120 and of 1200.
  expectWithin(perRepeat(sixty, 60), perRepeat(six, 6), 0.03 * perRepeat(six, 6));
  expect(shapeFaults(sixty.wrap.layers[0]?.shapes ?? [])).toEqual([]);
});

it('moving the art by a whole tile changes nothing', () => {
  const one = withCopies(shape(blob(randomFrom(8), { x: 12, y: 9 }, 14)), 2, 2);
  const moved = one.map((s) => moveShape({ x: width, y: 0 }, s));
  const made = makeWrap({ ...small, shapes: one });
  const other = makeWrap({ ...small, shapes: moved });
  expect(countOf(other)).toBe(countOf(made));
  expectWithin(areaOf(other), areaOf(made), 1e-6);
});
