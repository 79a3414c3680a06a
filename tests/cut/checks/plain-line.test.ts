// Lines that are told at a glance are left out of the looking: nothing may go unfound by that. A second contour far away makes a line
// none that is told at a glance, so both ways are held against each other.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { doubledLines } from '../../../src/cut/checks/doubled-lines.ts';
import { selfCrossings } from '../../../src/cut/checks/line-faults.ts';
import { narrowPlaces } from '../../../src/cut/checks/local-width.ts';
import { isPlain, isWide, staysApart } from '../../../src/cut/checks/plain-line.ts';
import type { DrawnLine } from '../../../src/drawing/drawn-line.ts';
import { type Contour, cubic, polygon } from '../../../src/geometry/contour.ts';
import { roundOf } from '../../../src/geometry/simple-ring.ts';

const chords = { tolerance: 0.002, longest: 1 };

/** Corners around a middle at distances given, mm. */
const around = (radii: readonly number[]): Contour =>
  polygon(
    radii.map((radius, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
    }),
  );

/** The same by curves whose handles lead past their ends by so much of a third: loops where it is much. */
const curved = (contour: Contour, swing: number): Contour => {
  const { segments } = contour;
  return {
    closed: true,
    segments: segments.map(({ from, to }, i) => {
      const [before, after] = [
        segments.at(i - 1)?.from ?? from,
        segments[(i + 1) % segments.length]?.to ?? to,
      ];
      const by = swing / 6;
      return cubic(
        from,
        { x: from.x + by * (to.x - before.x), y: from.y + by * (to.y - before.y) },
        { x: to.x - by * (after.x - from.x), y: to.y - by * (after.y - from.y) },
        to,
      );
    }),
  };
};

const far: Contour = polygon([
  { x: 20, y: 20 },
  { x: 20, y: 30 },
  { x: 30, y: 30 },
  { x: 30, y: 20 },
]);

/** From round to spiked, as stars and any way, and as thin as a hair. */
const rings = fc
  .tuple(
    fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 5, maxLength: 24 }),
    fc.constantFrom(0.05, 0.3, 0.6, 0.95),
    fc.constantFrom(0.02, 0.2, 1, 3, 8),
    fc.constantFrom(0, 1, 5),
    fc.boolean(),
  )
  .map(([spokes, rough, size, swing, isStar]) => {
    // Of a star every other corner lies as far in as any, the others out.
    const ring = around(spokes.map((by, i) => size * (1 - rough * (isStar ? i % 2 : by))));
    return swing === 0 ? ring : curved(ring, swing);
  });

const drawn = (contours: readonly Contour[]): DrawnLine => ({ id: undefined, colour: '#000000', contours });

test('what is told at a glance to be wide, apart or uncrossed has nothing that looking finds', () => {
  const told = { wide: 0, apart: 0, plain: 0 };
  fc.assert(
    fc.property(rings, (ring) => {
      if (isPlain(ring, { tolerance: 0.002, longest: 5 })) told.plain++;
      if (staysApart(ring, 0.01, chords)) told.apart++;
      const options = { tolerance: 0.002, isPair: () => true };
      expect(doubledLines([drawn([ring])], options)).toEqual(doubledLines([drawn([ring, far])], options));
      for (const side of ['film', 'gap'] as const)
        for (const limit of [0.4, 1]) {
          if (isWide(ring, limit, { tolerance: 0.002, longest: limit })) told.wide++;
          const look = (contours: readonly Contour[]) =>
            narrowPlaces([{ contours }], { side, limit, tolerance: 0.002, cusps: true });
          expect(look([ring])).toEqual(look([ring, far]));
        }
    }),
    { seed: 20261130, numRuns: 120 },
  );
  // Of all three there were many, or nothing was tried.
  expect(Math.min(told.wide, told.apart, told.plain)).toBeGreaterThan(20);
});

test('a needle on a disc, its sides 4 thousandths apart, doubles itself though it goes around its middle once', () => {
  const disc = Array.from({ length: 24 }, (_, i) => (2 * Math.PI * (i + 0.5)) / 24);
  const needle = polygon([
    { x: 1, y: -0.002 },
    { x: 3.5, y: 0 },
    { x: 1, y: 0.002 },
    ...disc.map((angle) => ({ x: Math.cos(angle), y: Math.sin(angle) })),
  ]);
  expect(isPlain(needle, chords)).toBe(true);
  expect(staysApart(needle, 0.01, chords)).toBe(false);
  expect(doubledLines([drawn([needle])], { tolerance: 0.002, isPair: () => true })).toHaveLength(1);
});

test('a ring that goes around twice, or crosses itself past its middle, is not told at a glance', () => {
  const pentagram = polygon(
    [0, 2, 4, 1, 3].map((i) => ({
      x: 10 * Math.cos((2 * Math.PI * i) / 5),
      y: 10 * Math.sin((2 * Math.PI * i) / 5),
    })),
  );
  expect(isPlain(pentagram, chords)).toBe(false);
  expect(selfCrossings([drawn([pentagram])], 0.002)).toMatchObject([{ line: 0, size: 5 }]);
});

// Source: plane geometry; the sides of a regular polygon touch the circle within it, and its corners lie farthest from their middles.
test('a regular polygon lies around its middle as its two circles say, either way around', () => {
  for (const count of [3, 7, 60]) {
    const corners = Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count);
    const x = corners.map((angle) => 4 + 2 * Math.cos(angle));
    const y = corners.map((angle) => 2 * Math.sin(angle) - 9);
    const within = Math.cos(Math.PI / count);
    for (const columns of [[x, y] as const, [x.toReversed(), y.toReversed()] as const]) {
      const round = roundOf(...columns);
      expect(round?.nearest).toBeCloseTo(2 * within, 9);
      expect(round?.sine).toBeCloseTo(within, 9);
    }
  }
});
