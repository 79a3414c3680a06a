import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { determinant, movePoint } from '../../src/geometry/affine.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import {
  type FlatWall,
  flatWall,
  girthAt,
  levelAngle,
  radiusAt,
  sweep,
  toFlat,
  toFlatAll,
  toWall,
  turnMotion,
  type WallPoint,
} from '../../src/unroll/flat-wall.ts';
import { expectAtMost, expectPointWithin, expectWithin } from '../closeness.ts';
import { cosine, fixed, over, pi, sine, times, toNumber } from './high-precision.ts';
import { type NamedWall, realCones, walls } from './walls.ts';

const anywhere = ({ length }: NamedWall): fc.Arbitrary<WallPoint> =>
  fc.record({
    turn: fc.double({ min: 0, max: 1, noNaN: true }),
    along: fc.double({ min: -5, max: length + 5, noNaN: true }),
  });

const grid = ({ length }: NamedWall): WallPoint[] =>
  [-0.02, 0, 0.1, 0.25, 0.5, 0.7, 1, 1.02].flatMap((turn) =>
    [-3, 0, 0.4 * length, length / 2, length, length + 3].map((along) => ({ turn, along })),
  );

/**
 * The development of a cone as every handbook has it, about the apex, in 60 decimals: a wall point at slant distance
 * rho and azimuth lambda goes to (rho sin(lambda sin a), rho cos(lambda sin a)).
 * Source: references 4.1; Math Central QQ.09.11 and Dr. Math 55270 in words.
 */
function developed(wall: FlatWall, { turn, along }: WallPoint): Point {
  const sinA = fixed(wall.sine);
  const apex = over(fixed(wall.radius), sinA);
  const rho = apex + fixed(along) - fixed(wall.reference);
  const angle = times(2n * times(pi, fixed(turn) - fixed(0.5)), sinA);
  return { x: toNumber(times(rho, sine(angle))), y: toNumber(apex - times(rho, cosine(angle))) };
}

describe('fixed-point arithmetic, by which the maps are judged', () => {
  test('knows sine and cosine', () => {
    expectWithin(toNumber(sine(pi / 6n)), 0.5, 1e-15);
    expectWithin(toNumber(cosine(pi)), -1, 1e-15);
    expect(toNumber(fixed(0.1))).toBe(0.1);
    expect(toNumber(fixed(-1e-9))).toBe(-1e-9);
    expect(toNumber(over(fixed(1), fixed(8)))).toBe(0.125);
  });
});

describe.each(walls)('flat wall: $name', (named) => {
  const { wall, length, halfAngle } = named;

  test('comes back from the sheet to where it was, within 1e-9 mm', () => {
    fc.assert(
      fc.property(anywhere(named), (place) => {
        const back = toWall(wall, toFlat(wall, place));
        expectWithin(back.along, place.along, 1e-9, 'along');
        expectWithin(
          back.turn * girthAt(wall, place.along),
          place.turn * girthAt(wall, place.along),
          1e-9,
          'around',
        );
      }),
      { seed: 20261, numRuns: 300 },
    );
  });

  test('comes back from the wall to where it was on the sheet, within 1e-9 mm', () => {
    for (const place of grid(named)) {
      if (Math.abs(sweep(wall) * (place.turn - 0.5)) > Math.PI) continue;
      const flat = toFlat(wall, place);
      expectPointWithin(toFlat(wall, toWall(wall, flat)), flat, 1e-9);
    }
  });

  test('lies on the sheet as the handbook development about the apex says, within 1e-9 mm', () => {
    for (const place of grid(named)) {
      const wanted =
        wall.sine === 0
          ? { x: 2 * Math.PI * wall.radius * (place.turn - 0.5), y: wall.reference - place.along }
          : developed(wall, place);
      expectPointWithin(toFlat(wall, place), wanted, 1e-9, JSON.stringify(place));
    }
  });

  test('lies there too where many are laid at once', () => {
    const places = [...grid(named)];
    const many = Float64Array.from(places.flatMap(({ turn, along }) => [turn, along]));
    toFlatAll(wall, many);
    for (const [i, place] of places.entries())
      expectPointWithin(
        { x: many[2 * i] ?? Number.NaN, y: many[2 * i + 1] ?? Number.NaN },
        toFlat(wall, place),
        1e-12,
      );
  });

  test('lies foot down, with turn growing to the right and y down', () => {
    const middle = toFlat(wall, { turn: 0.5, along: length / 2 });
    expectPointWithin(middle, { x: 0, y: 0 }, 1e-12);
    const up = toFlat(wall, { turn: 0.5, along: length });
    expectPointWithin(up, { x: 0, y: -length / 2 }, 1e-12);
    const right = toFlat(wall, { turn: 0.6, along: length / 2 });
    expect(right.x).toBeGreaterThan(1);
    // Wider at the lip, the apex lies below the foot and the level line sinks to both sides.
    if (halfAngle !== 0) expect(Math.sign(right.y)).toBe(Math.sign(halfAngle));
  });

  test('keeps lengths up the wall, and across by the girth there: the scale factors by differences', () => {
    const h = 1e-4;
    for (const turn of [0.05, 0.3, 0.5, 0.95])
      for (const along of [1, length / 3, length - 1]) {
        const at = (dTurn: number, dAlong: number) =>
          toFlat(wall, { turn: turn + dTurn, along: along + dAlong });
        const perMm = distance(at(0, h), at(0, -h)) / (2 * h);
        const perTurn = distance(at(h, 0), at(-h, 0)) / (2 * h);
        expectWithin(perMm, 1, 1e-8, 'scale up the wall');
        // A chord of 2h turns is short of its arc by (sweep h)² / 6 of it: 7e-8 at a sweep of 350 degrees.
        expectWithin(perTurn / girthAt(wall, along), 1, 1e-7, 'scale across');
        const [e1, e2] = [at(0, h), at(0, -h)];
        const [f1, f2] = [at(h, 0), at(-h, 0)];
        const turned = (f1.x - f2.x) * (e1.x - e2.x) + (f1.y - f2.y) * (e1.y - e2.y);
        expectWithin(turned / (distance(e1, e2) * distance(f1, f2)), 0, 1e-8, 'right angle');
        const level = Math.atan2(f1.y - f2.y, f1.x - f2.x);
        const off = level - levelAngle(wall, turn);
        expectWithin(Math.cos(off), 1, 1e-12, 'level direction');
      }
  });

  test('is carried around by a rigid motion of the sheet', () => {
    for (const turn of [-0.3, 0, 0.125, 1 / 3, 1]) {
      const motion = turnMotion(wall, turn);
      expectWithin(determinant(motion), 1, 1e-12);
      expectWithin(Math.hypot(motion.a, motion.b), 1, 1e-12);
      expectWithin(motion.a * motion.c + motion.b * motion.d, 0, 1e-12);
      for (const place of grid(named)) {
        const carried = movePoint(motion, toFlat(wall, place));
        expectPointWithin(carried, toFlat(wall, { ...place, turn: place.turn + turn }), 1e-9);
      }
    }
  });

  test('has a girth of 2 pi radii that grows by 2 pi sines a mm, and a sweep of one turn', () => {
    for (const along of [0, length / 2, length]) {
      expectWithin(girthAt(wall, along), 2 * Math.PI * radiusAt(wall, along), 1e-12);
      const growth = (girthAt(wall, along + 1) - girthAt(wall, along - 1)) / 2;
      expectWithin(growth, 2 * Math.PI * Math.sin(halfAngle), 1e-9);
    }
    expectWithin(levelAngle(wall, 1) - levelAngle(wall, 0), sweep(wall), 1e-12);
    expectWithin(sweep(wall), 2 * Math.PI * Math.sin(halfAngle), 1e-12);
  });
});

describe.each(realCones)('slant distances: $name', ({ wall, length }) => {
  test('every point of a level line is as far from the apex as the radius over the sine', () => {
    const apex = { x: 0, y: 1 / wall.curvature };
    for (const along of [0, length / 2, length])
      for (const turn of [0, 0.2, 0.5, 1])
        expectWithin(
          distance(toFlat(wall, { turn, along }), apex),
          radiusAt(wall, along) / Math.abs(wall.sine),
          1e-9,
        );
  });
});

describe('the change from cylinder to cone is seamless', () => {
  const radius = 40;
  const at = (halfAngle: number, place: WallPoint) =>
    toFlat(flatWall(radius, Math.sin(halfAngle), 60), place);
  const places = [-0.02, 0, 0.25, 0.5, 0.9, 1.02].flatMap((turn) =>
    [0, 30, 60, 120].map((along) => ({ turn, along })),
  );

  // The whole of the difference is first order in the half angle a: x by a (along - reference) 2 pi (turn - 1/2),
  // y by a radius (2 pi (turn - 1/2))² / 2, at most 200 a mm on this cup.
  test.each([1e-9, -1e-9])('a half angle of %s rad moves no point by 1e-6 mm', (halfAngle) => {
    for (const place of places) expectPointWithin(at(halfAngle, place), at(0, place), 1e-6);
  });

  test.each([1e-15, 1e-12, 1e-9, 1e-8, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3])(
    'a half angle of %s rad either way is right to 1e-11 mm',
    (halfAngle) => {
      for (const place of places)
        for (const sign of [1, -1]) {
          const wall = flatWall(radius, Math.sin(sign * halfAngle), 60);
          expectPointWithin(toFlat(wall, place), developed(wall, place), 1e-11);
        }
    },
  );

  test('the inverse is as good: back within 1e-11 mm', () => {
    for (const halfAngle of [0, 1e-15, 1e-12, 1e-9, 1e-6, 1e-5, 1e-4, -1e-9, -1e-4])
      for (const place of places) {
        const wall = flatWall(radius, Math.sin(halfAngle), 60);
        const back = toWall(wall, toFlat(wall, place));
        expectWithin(back.along, place.along, 1e-11);
        expectWithin(back.turn * 2 * Math.PI * radius, place.turn * 2 * Math.PI * radius, 1e-11);
      }
  });

  test('the place where the series hands over to the sine leaves no step', () => {
    // sinc changes formula where the laid-out angle is 1e-4: both sides of it are checked against 60 decimals.
    for (const angle of [0.99999e-4, 1.00001e-4, 1.99999e-4, 2.00001e-4]) {
      const wall = flatWall(radius, angle / Math.PI, 60);
      for (const along of [0, 120])
        expectPointWithin(toFlat(wall, { turn: 1, along }), developed(wall, { turn: 1, along }), 1e-12);
    }
  });

  test('nothing jumps as the half angle passes through nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e-3, max: 1e-3, noNaN: true }),
        fc.record({
          turn: fc.double({ min: 0, max: 1, noNaN: true }),
          along: fc.double({ min: 0, max: 120, noNaN: true }),
        }),
        (halfAngle, place) => {
          const step = 1e-9;
          const off = distance(at(halfAngle, place), at(halfAngle + step, place));
          expectAtMost(off, 500 * step + 1e-12, 'step');
        },
      ),
      { seed: 20262, numRuns: 300 },
    );
  });
});
