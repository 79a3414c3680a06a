import { describe, expect, test } from 'vitest';
import { type Contour, polygon, reverseContour, type Shape } from '../../src/geometry/contour.ts';
import { shapeArea, signedArea } from '../../src/geometry/measure.ts';
import { clippedShapes, filledShapes } from '../../src/geometry/regions.ts';
import { chordTolerance } from '../../src/geometry/tolerance.ts';
import { expectWithin, expectWithinPart } from '../closeness.ts';
import { blob, box, circle, motions, moved, randomFrom, sampled, segmentKeys } from './drawn.ts';
import { clipperArea, paperArea, paperPath } from './libraries.ts';

const filled = (contours: readonly Contour[], fill: 'nonzero' | 'evenodd' = 'nonzero'): Shape[] =>
  filledShapes(contours, fill, chordTolerance);

const total = (shapes: readonly Shape[]): number => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);

const segmentCount = (shapes: readonly Shape[]): number =>
  shapes.reduce((sum, { contours }) => sum + contours.reduce((n, { segments }) => n + segments.length, 0), 0);

const contoursOf = (shapes: readonly Shape[]): Contour[] => shapes.flatMap(({ contours }) => [...contours]);

/** Every contour joins itself exactly, so that a file closes it without a line of no length. */
const expectJoined = (shapes: readonly Shape[]): void => {
  for (const { segments, closed } of contoursOf(shapes)) {
    expect(closed).toBe(true);
    segments.forEach((s, i) => {
      expect(segments[(i + 1) % segments.length]?.from).toEqual(s.to);
    });
  }
};

/** Two blobs that overlap by about a third, seeded. */
const pairs = Array.from({ length: 12 }, (_, i) => {
  const random = randomFrom(3000 + i);
  const a = blob(random, { x: 0, y: 0 }, 20);
  const b = blob(random, { x: 12 + 6 * random(), y: 10 * random() - 5 }, 18, 5 + (i % 4));
  return { seed: 3000 + i, a, b };
});

describe('areas of two curved shapes', () => {
  test.each(pairs)('agree with paper: union, intersection and difference, seed $seed', ({ a, b }) => {
    const [one, other] = [filled([a]), filled([b])];
    const union = filled([a, b]);
    const common = clippedShapes(one, other, 'intersection', chordTolerance);
    const rest = clippedShapes(one, other, 'difference', chordTolerance);
    // Curves come back as curves, so the area is far better than the chords': 0.001 mm of sag would be 0.08 mm² here.
    expectWithin(total(union), paperArea('union', [a], [b]), 2e-3, 'union');
    expectWithin(total(common), paperArea('intersection', [a], [b]), 2e-3, 'intersection');
    expectWithin(total(rest), paperArea('difference', [a], [b]), 2e-3, 'difference');
    for (const shapes of [union, common, rest]) expectJoined(shapes);
  });

  test.each(pairs)('agree with Clipper 6 on fine polygons, seed $seed', ({ a, b }) => {
    const [p, q] = [[sampled(a, 400)], [sampled(b, 400)]];
    expectWithin(total(filled([a, b])), clipperArea('union', p, q, 'nonzero'), 5e-3);
    const common = clippedShapes(filled([a]), filled([b]), 'intersection', chordTolerance);
    expectWithin(total(common), clipperArea('intersection', p, q, 'nonzero'), 5e-3);
  });

  test('add up: both apart are both together and what they share', () => {
    for (const { a, b } of pairs) {
      const [one, other] = [filled([a]), filled([b])];
      const union = total(filled([a, b]));
      const common = total(clippedShapes(one, other, 'intersection', chordTolerance));
      const left = total(clippedShapes(one, other, 'difference', chordTolerance));
      const right = total(clippedShapes(other, one, 'difference', chordTolerance));
      expectWithin(union + common, total(one) + total(other), 2e-3);
      expectWithin(left + common + right, union, 2e-3);
    }
  });

  test('spend no more segments than the two shapes had, and one more for each crossing', () => {
    for (const { a, b } of pairs) {
      const crossings = 4;
      expect(segmentCount(filled([a, b]))).toBeLessThanOrEqual(
        a.segments.length + b.segments.length + crossings,
      );
    }
  });

  test('do not change when combined a second time', () => {
    for (const { a, b } of pairs) {
      const once = contoursOf(filled([a, b]));
      expect(segmentKeys(contoursOf(filled(once)))).toEqual(segmentKeys(once));
    }
  });

  test.each(motions)('follow when $name', ({ m, scale }) => {
    for (const { a, b } of pairs.slice(0, 4)) {
      const tolerance = chordTolerance * scale;
      const shapes = filledShapes(moved(m, [a, b]), 'nonzero', tolerance);
      const wanted = paperArea('union', [a], [b]) * scale * scale;
      // A thousandth of the size, the grid of 2^-15 mm is a thousandth of the shape: all that can be asked is 1 %.
      expectWithinPart(total(shapes), wanted, scale < 1 ? 1e-2 : 1e-5);
      expectJoined(shapes);
    }
  });

  test('do not depend on which way the contours run, or which comes first', () => {
    for (const { a, b } of pairs) {
      const wanted = total(filled([a, b]));
      expectWithin(total(filled([b, a])), wanted, 1e-3);
      expectWithin(total(filled([reverseContour(a), reverseContour(b)])), wanted, 1e-3);
      // Each on its own winding: nonzero of one forwards and one backwards would cancel where they overlap.
      const one = filled([a]);
      const back = filled([reverseContour(b)]);
      expectWithin(total(filled([...contoursOf(one), ...contoursOf(back)])), wanted, 1e-3);
    }
  });
});

describe('shapes that touch nothing', () => {
  test('come back with exactly their own control points', () => {
    const random = randomFrom(41);
    const apart = Array.from({ length: 9 }, (_, i) =>
      blob(random, { x: 50 * (i % 3), y: 50 * Math.floor(i / 3) }, 20),
    );
    const shapes = filled(apart);
    expect(shapes).toHaveLength(9);
    expect(segmentKeys(contoursOf(shapes))).toEqual(segmentKeys(apart));
  });

  test('keep their holes, with exactly their own control points', () => {
    const ring = [circle({ x: 0, y: 0 }, 20), reverseContour(circle({ x: 1, y: 2 }, 8))];
    const shapes = filled(ring);
    expect(shapes).toHaveLength(1);
    expect(shapes[0]?.contours).toHaveLength(2);
    expect(segmentKeys(contoursOf(shapes))).toEqual(segmentKeys(ring));
    expect(shapes[0]?.contours[0]?.segments).toHaveLength(4);
  });

  test('come back whole from inside a window, cut by none of it', () => {
    const inside = circle({ x: 0, y: 0 }, 10);
    const window = filled([box(-20, -20, 40, 40)]);
    const shapes = clippedShapes(filled([inside]), window, 'intersection', chordTolerance);
    expect(segmentKeys(contoursOf(shapes))).toEqual(segmentKeys([inside]));
    expect(clippedShapes(filled([inside]), window, 'difference', chordTolerance)).toEqual([]);
  });
});

describe('two circles', () => {
  // Closed form: the lens of two circles of radius r whose centres are d apart has the area
  // 2 r² acos(d / 2r) - (d / 2) sqrt(4 r² - d²).
  const lens = (r: number, d: number): number =>
    2 * r * r * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r * r - d * d);

  test.each([2, 10, 18, 19.9])('of radius 10 and %s mm apart share the lens of the closed form', (d) => {
    const [a, b] = [circle({ x: 0, y: 0 }, 10, 16), circle({ x: d, y: 0 }, 10, 16)];
    const common = clippedShapes(filled([a]), filled([b]), 'intersection', chordTolerance);
    expectWithin(total(common), lens(10, d), 1e-3);
    expectWithin(total(filled([a, b])), 200 * Math.PI - lens(10, d), 1e-3);
    expect(common).toHaveLength(1);
  });

  test('that are the same circle twice are one circle, control point for control point', () => {
    const one = circle({ x: 3, y: 4 }, 10);
    const shapes = filled([one, one, one]);
    expect(shapes).toHaveLength(1);
    expect(segmentKeys(contoursOf(shapes))).toEqual(segmentKeys([one]));
  });

  test('far apart stay two', () => {
    expect(filled([circle({ x: 0, y: 0 }, 10), circle({ x: 21, y: 0 }, 10)])).toHaveLength(2);
  });
});

describe('shapes that share an edge', () => {
  test('merge into one without a line along the edge', () => {
    const shapes = filled([box(0, 0, 10, 10), box(10, 0, 10, 10)]);
    expect(shapes).toHaveLength(1);
    expectWithin(total(shapes), 200, 1e-9);
    const inside = contoursOf(shapes).flatMap(({ segments }) =>
      segments.filter((s) => Math.abs(s.from.x - 10) < 1e-6 && Math.abs(s.to.x - 10) < 1e-6),
    );
    expect(inside).toEqual([]);
  });

  test('merge when they are two halves of a circle cut at a slant', () => {
    const whole = circle({ x: 0, y: 0 }, 10, 8);
    const slant = Math.tan(0.3);
    const knife = (sign: number): Contour =>
      polygon([
        { x: -30, y: -30 * slant },
        { x: 30, y: 30 * slant },
        { x: 30, y: 30 * slant + sign * 60 },
        { x: -30, y: -30 * slant + sign * 60 },
      ]);
    const halves = [1, -1].map((sign) =>
      clippedShapes(filled([whole]), filled([knife(sign)]), 'intersection', chordTolerance),
    );
    for (const half of halves) expectWithinPart(total(half), Math.abs(signedArea(whole)) / 2, 1e-4);
    const merged = filled(contoursOf(halves.flat()));
    expect(merged).toHaveLength(1);
    expectWithin(total(merged), Math.abs(signedArea(whole)), 2e-3);
    expect(merged[0]?.contours).toHaveLength(1);
  });

  test('merge when a fan of 64 wedges meets at one point', () => {
    const whole = 64;
    const on = (i: number) => ({
      x: 10 * Math.cos((2 * Math.PI * (i % whole)) / whole),
      y: 10 * Math.sin((2 * Math.PI * (i % whole)) / whole),
    });
    const wedges = Array.from({ length: whole }, (_, i) => polygon([{ x: 0, y: 0 }, on(i), on(i + 1)]));
    const shapes = filled(wedges);
    expect(shapes).toHaveLength(1);
    expect(shapes[0]?.contours).toHaveLength(1);
    // A regular polygon of 64 sides: 32 r² sin(2 pi / 64).
    expectWithin(total(shapes), 32 * 100 * Math.sin((2 * Math.PI) / 64), 2e-3);
    expect(segmentCount(shapes)).toBe(64);
  });

  test('merge when curves lie on curves: two rings of one common arc', () => {
    const a = circle({ x: 0, y: 0 }, 10);
    const around = clippedShapes(
      filled([circle({ x: 0, y: 0 }, 20)]),
      filled([a]),
      'difference',
      chordTolerance,
    );
    const merged = filled(contoursOf([...around, ...filled([a])]));
    expect(merged).toHaveLength(1);
    expect(merged[0]?.contours).toHaveLength(1);
    expect(segmentKeys(contoursOf(merged))).toEqual(segmentKeys([circle({ x: 0, y: 0 }, 20)]));
  });
});

describe('holes and islands', () => {
  const nested = [20, 16, 12, 8, 4].map((r) => circle({ x: 0, y: 0 }, r));

  test('by even and odd, nested circles are rings, one inside the other', () => {
    const shapes = filled(nested, 'evenodd');
    expect(shapes.map(({ contours }) => contours.length).sort()).toEqual([1, 2, 2]);
    const paper = paperPath(nested, 'evenodd').unite(undefined, { insert: false });
    expectWithin(total(shapes), Math.abs(paper.area), 1e-3);
    // Holes run the other way, so every second circle comes back reversed, by its own control points all the same.
    const laid = nested.map((contour, i) => (i % 2 === 0 ? contour : reverseContour(contour)));
    expect(segmentKeys(contoursOf(shapes))).toEqual(segmentKeys(laid));
    for (const { contours } of shapes) {
      const areas = contours.map((contour) => Math.abs(signedArea(contour)));
      expect(Math.max(...areas)).toBe(areas[0]);
    }
  });

  test('by nonzero, circles that run alike are one disc, and those that alternate are rings', () => {
    expect(filled(nested).map(({ contours }) => contours.length)).toEqual([1]);
    const alternating = nested.map((contour, i) => (i % 2 === 0 ? contour : reverseContour(contour)));
    expect(filled(alternating)).toHaveLength(3);
  });

  test('a hole stays a hole when its shape is merged with a neighbour', () => {
    const ring = [box(0, 0, 20, 20), reverseContour(circle({ x: 10, y: 10 }, 5))];
    const shapes = filled([...ring, box(20, 5, 10, 10)]);
    expect(shapes).toHaveLength(1);
    expect(shapes[0]?.contours).toHaveLength(2);
    expectWithin(total(shapes), 500 - Math.abs(signedArea(circle({ x: 10, y: 10 }, 5))), 1e-6);
  });

  test('a hole that a neighbour covers is gone', () => {
    const ring = [box(0, 0, 20, 20), reverseContour(circle({ x: 10, y: 10 }, 5))];
    const shapes = filled([...ring, box(4, 4, 12, 12)]);
    expect(shapes[0]?.contours).toHaveLength(1);
    expectWithin(total(shapes), 400, 1e-9);
  });

  test('outer contours run one way, holes the other, however they were drawn', () => {
    const shapes = filled([...nested.map(reverseContour)], 'evenodd');
    for (const { contours } of shapes)
      contours.forEach((contour, i) => {
        expect(Math.sign(signedArea(contour))).toBe(i === 0 ? 1 : -1);
      });
  });

  test('an island in a hole is a shape of its own', () => {
    const shapes = filled([
      box(0, 0, 30, 30),
      reverseContour(box(5, 5, 20, 20)),
      circle({ x: 15, y: 15 }, 5),
    ]);
    expect(shapes.map(({ contours }) => contours.length).sort()).toEqual([1, 2]);
  });

  test.each(motions)('follow when $name', ({ m, scale }) => {
    const shapes = filledShapes(moved(m, nested), 'evenodd', chordTolerance * scale);
    const wanted = Math.PI * (400 - 256 + 144 - 64 + 16) * scale * scale;
    expectWithinPart(total(shapes), wanted, scale < 1 ? 1e-2 : 1e-3);
    expect(shapes).toHaveLength(3);
  });
});

describe('what leaves nothing', () => {
  test('nothing at all, lines without area and slivers of rounding give no shape', () => {
    expect(filled([])).toEqual([]);
    const flat = polygon([
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 20, y: 0 },
    ]);
    expect(filled([flat])).toEqual([]);
    expect(filled([box(0, 0, 50, 0.001)])).toEqual([]);
    expect(filled([box(0, 0, 50, 0.02)])).toHaveLength(1);
  });

  test('a figure of eight is two shapes that touch at most at a point', () => {
    const eight = polygon([
      { x: 0, y: 0 },
      { x: 10, y: 10 },
      { x: 10, y: 0 },
      { x: 0, y: 10 },
    ]);
    expectWithin(total(filled([eight])), 50, 1e-3);
    expectWithin(total(filled([eight], 'evenodd')), 50, 1e-3);
  });

  test('a shape cut by itself is gone, and by nothing is itself', () => {
    for (const { a } of pairs.slice(0, 4)) {
      const shape = filled([a]);
      expect(clippedShapes(shape, shape, 'difference', chordTolerance)).toEqual([]);
      expect(clippedShapes(shape, [], 'intersection', chordTolerance)).toEqual([]);
      const whole = clippedShapes(shape, [], 'difference', chordTolerance);
      expect(segmentKeys(contoursOf(whole))).toEqual(segmentKeys([a]));
    }
  });
});

describe('a tenth the tolerance', () => {
  test('leaves the same curves: the answer is the curves, not their chords', () => {
    for (const { a, b } of pairs.slice(0, 5)) {
      const coarse = filledShapes([a, b], 'nonzero', chordTolerance);
      const fine = filledShapes([a, b], 'nonzero', chordTolerance / 10);
      expect(segmentCount(fine)).toBe(segmentCount(coarse));
      expectWithin(total(fine), total(coarse), 1e-4);
    }
  });
});
