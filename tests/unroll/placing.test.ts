// Placing is checked by brute force: many points of the rectangle are carried to the wall by the handbook's development
// of a cone (a point at slant distance rho, angle theta on the sheet, is theta / sin a around: references 4.1; Machinery's
// Handbook, from memory), and each is asked whether it stands where it must not.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { KeepOut } from '../../src/blank/keep-out.ts';
import { flatWall, girthAt, radiusAt, type WallPoint } from '../../src/unroll/flat-wall.ts';
import type { Footprint } from '../../src/unroll/footprint.ts';
import { type Ground, missesAt as missesWithin, nearestPlace } from '../../src/unroll/placing.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';

const missesAt = (ground: Ground, size: Footprint, at: WallPoint) => missesWithin(ground, size, at, 1e-6);

const length = 120;
const wallOfSine = (sine: number) => flatWall(40, sine, length / 2);
const groundOf = (sine: number, rest: Partial<Ground> = {}): Ground => ({
  bands: [{ band: { from: 5, to: 110 }, wall: wallOfSine(sine) }],
  keepOuts: [],
  ...rest,
});
const cylinder = groundOf(0, { lipZone: 100, beside: { what: 'seam', offset: 0 } });
const girth = girthAt(wallOfSine(0), 0);
const item: Footprint = { across: 50, up: 30 };

describe('an item on a straight wall', () => {
  test('lies in the middle of the band', () => {
    expect(missesAt(cylinder, item, { turn: 0.5, along: 50 })).toEqual([]);
    expect(nearestPlace(cylinder, item, { turn: 0.5, along: 50 })).toEqual({ turn: 0.5, along: 50 });
  });

  test.each([
    ['the foot of the band', { turn: 0.5, along: 17 }, 'flat band', 3, { turn: 0.5, along: 20 }],
    ['the lip zone', { turn: 0.5, along: 92 }, 'lip zone', 7, { turn: 0.5, along: 85 }],
    ['the seam', { turn: 20 / girth, along: 50 }, 'seam', 5, { turn: 25 / girth, along: 50 }],
    [
      'the seam from the other side',
      { turn: 1 - 20 / girth, along: 50 },
      'seam',
      5,
      { turn: 1 - 25 / girth, along: 50 },
    ],
  ])('reaches past %s by what it does', (_, at, what, by, nearest) => {
    const [miss, ...others] = missesAt(cylinder, item, at);
    expect(others).toEqual([]);
    expect(miss?.what).toBe(what);
    expectWithin(miss?.by ?? NaN, by, 1e-9);
    const found = nearestPlace(cylinder, item, at);
    expectWithin(found?.turn ?? NaN, nearest.turn, 1e-9);
    expectWithin(found?.along ?? NaN, nearest.along, 1e-9);
  });

  test('may cross turn 0 where there is no seam', () => {
    expect(missesAt(groundOf(0), item, { turn: 0.01, along: 50 })).toEqual([]);
  });

  test('keeps off both sides of a handle', () => {
    const ground = groundOf(0, { beside: { what: 'handle', offset: 35 } });
    expect(missesAt(ground, item, { turn: 0, along: 50 })).toEqual([{ what: 'handle', by: 60 }]);
    expectWithin(nearestPlace(ground, item, { turn: 0.1, along: 50 })?.turn ?? NaN, 60 / girth, 1e-9);
  });

  test('clears a window by the least move, and by going over it where that is less', () => {
    const window: KeepOut = { what: 'window', turn: { from: 0.4, to: 0.6 }, along: { from: 10, to: 40 } };
    const ground = { ...cylinder, keepOuts: [window] };
    const at = { turn: 0.5, along: 50 };
    expect(missesAt(ground, item, at)).toEqual([{ what: 'window', by: 5 }]);
    expectWithin(nearestPlace(ground, item, at)?.along ?? NaN, 55, 1e-9);
  });

  test('keeps clear of a window that runs through turn 0', () => {
    const window: KeepOut = { what: 'window', turn: { from: 0.9, to: 0.1 } };
    const ground = groundOf(0, { keepOuts: [window] });
    expect(missesAt(ground, item, { turn: 0.95, along: 50 }).map(({ what }) => what)).toEqual(['window']);
    expectWithin(nearestPlace(ground, item, { turn: 0.95, along: 50 })?.turn ?? NaN, 0.9 - 25 / girth, 1e-9);
  });

  test('has no place where it is taller than the band or wider than the girth', () => {
    const at = { turn: 0.5, along: 50 };
    expect(nearestPlace(cylinder, { across: 50, up: 96 }, at)).toBeUndefined();
    expect(nearestPlace(cylinder, { across: girth + 1, up: 10 }, at)).toBeUndefined();
    expect(missesAt(groundOf(0), { across: girth + 1, up: 10 }, at)[0]?.what).toBe('girth');
    expect(missesAt({ bands: [], keepOuts: [] }, item, at)).toEqual([{ what: 'flat band', by: 30 }]);
  });
});

/** Points of the border and the inside of a rectangle on a wall, by polar coordinates about the apex. */
function pointsOf(sine: number, { across, up }: Footprint, at: WallPoint, steps: number): WallPoint[] {
  const wall = wallOfSine(sine);
  const side = Math.sign(sine);
  const apex = radiusAt(wall, at.along) / Math.abs(sine);
  return Array.from({ length: (steps + 1) ** 2 }, (_, i) => {
    const x = across * ((i % (steps + 1)) / steps - 0.5);
    const v = up * (Math.floor(i / (steps + 1)) / steps - 0.5);
    const out = apex + side * v;
    return {
      turn: at.turn + Math.atan2(x, out) / (2 * Math.PI * Math.abs(sine)),
      along: at.along + side * (Math.hypot(x, out) - apex),
    };
  });
}

const covers = ({ turn, along }: KeepOut, point: WallPoint, slack: number): boolean => {
  if (along && !(point.along > along.from + slack && point.along < along.to - slack)) return false;
  if (!turn) return true;
  const width = turn.to - turn.from + (turn.to < turn.from ? 1 : 0);
  const past = point.turn - turn.from - Math.floor(point.turn - turn.from);
  const turns = slack / (2 * Math.PI * 20);
  return past > turns && past < width - turns;
};

/** How a brute look at the points finds the place: lies when none is wrong by more than `slack` mm. */
function looksClear(ground: Ground, sine: number, size: Footprint, at: WallPoint, slack: number): boolean {
  const steps = 24;
  const points = pointsOf(sine, size, at, steps);
  const wall = wallOfSine(sine);
  const { beside } = ground;
  const band = ground.bands[0]?.band ?? { from: 0, to: 0 };
  const highest = Math.min(band.to, ground.lipZone ?? Infinity);
  return points.every((point) => {
    if (point.along < band.from - slack || point.along > highest + slack) return false;
    if (ground.keepOuts.some((keepOut) => covers(keepOut, point, slack))) return false;
    if (!beside) return true;
    // Square to the line up the wall at turn 0 or 1: slant distance times the sine of the laid-out angle.
    return [point.turn, 1 - point.turn].every((turns) => {
      const angle = turns * 2 * Math.PI * Math.abs(sine);
      if (angle > Math.PI / 2) return true;
      return (radiusAt(wall, point.along) / Math.abs(sine)) * Math.sin(angle) >= beside.offset - slack;
    });
  });
}

const turnRange = fc.record({
  from: fc.double({ min: 0, max: 1, noNaN: true }),
  to: fc.double({ min: 0, max: 1, noNaN: true }),
});
const anyKeepOut = fc.record({
  what: fc.constant('window' as const),
  turn: turnRange.filter(({ from, to }) => {
    const width = to - from + (to < from ? 1 : 0);
    return width > 0.03 && width < 0.7;
  }),
  along: fc
    .record({
      from: fc.double({ min: 0, max: 90, noNaN: true }),
      size: fc.double({ min: 6, max: 60, noNaN: true }),
    })
    .map(({ from, size }) => ({ from, to: from + size })),
});
const anyCase = fc.record({
  sine: fc.constantFrom(-0.3, -0.15, -0.02, 0.02, 0.15, 0.3),
  size: fc.record({
    across: fc.double({ min: 10, max: 60, noNaN: true }),
    up: fc.double({ min: 8, max: 50, noNaN: true }),
  }),
  at: fc.record({
    turn: fc.double({ min: 0, max: 0.999, noNaN: true }),
    along: fc.double({ min: 5, max: 110, noNaN: true }),
  }),
  keepOuts: fc.array(anyKeepOut, { maxLength: 3 }),
  beside: fc.constantFrom(
    undefined,
    { what: 'seam' as const, offset: 0 },
    { what: 'handle' as const, offset: 20 },
  ),
  lipZone: fc.constantFrom(undefined, 90),
});
const groundOfCase = ({
  sine,
  keepOuts,
  beside,
  lipZone,
}: {
  sine: number;
  keepOuts: KeepOut[];
  beside: Ground['beside'];
  lipZone: number | undefined;
}): Ground =>
  groundOf(sine, {
    keepOuts,
    ...(beside ? { beside } : {}),
    ...(lipZone === undefined ? {} : { lipZone }),
  });

describe('an item on a taper', () => {
  test('lies where no point of it stands in the way, and nowhere else (brute force)', () => {
    const seen = { lies: 0, misses: 0 };
    fc.assert(
      fc.property(anyCase, (one) => {
        const ground = groundOfCase(one);
        const lies = missesAt(ground, one.size, one.at).length === 0;
        seen[lies ? 'lies' : 'misses']++;
        // Points stand up to 2.5 mm apart, so what they see may lie that much deeper than a touch.
        if (lies) expect(looksClear(ground, one.sine, one.size, one.at, 1e-6)).toBe(true);
        else expect(looksClear(ground, one.sine, one.size, one.at, -3)).toBe(false);
        const deepest = Math.max(0, ...missesAt(ground, one.size, one.at).map(({ by }) => by));
        if (deepest > 4) expect(looksClear(ground, one.sine, one.size, one.at, 0)).toBe(false);
      }),
      { numRuns: 1000, seed: 20 },
    );
    expect(seen.lies).toBeGreaterThan(50);
    expect(seen.misses).toBeGreaterThan(50);
  });

  test('has a nearest place where it lies, and none nearer on a fine grid (brute force)', () => {
    let found = 0;
    fc.assert(
      fc.property(anyCase, (one) => {
        const ground = groundOfCase(one);
        const wall = wallOfSine(one.sine);
        const distance = (to: WallPoint) => {
          const around = to.turn - one.at.turn - Math.round(to.turn - one.at.turn);
          const [a, b] = [one.at.along, to.along].map((along) => radiusAt(wall, along) / Math.abs(one.sine));
          const angle = around * 2 * Math.PI * Math.abs(one.sine);
          return Math.sqrt(((a ?? 0) - (b ?? 0)) ** 2 + 4 * (a ?? 0) * (b ?? 0) * Math.sin(angle / 2) ** 2);
        };
        const nearest = nearestPlace(ground, one.size, one.at);
        const limit = nearest ? distance(nearest) - 0.01 : Infinity;
        if (nearest) {
          found++;
          expect(missesAt(ground, one.size, nearest)).toEqual([]);
          expect(looksClear(ground, one.sine, one.size, nearest, 1e-5)).toBe(true);
        }
        for (let t = 0; t < 60; t++)
          for (let a = 0; a <= 60; a++) {
            const place = { turn: t / 60, along: 5 + (105 * a) / 60 };
            if (distance(place) >= limit) continue;
            if (missesAt(ground, one.size, place).length === 0)
              expect.fail(
                `${JSON.stringify(place)} is ${distance(place)} away; found ${limit} at ${JSON.stringify(nearest)}`,
              );
          }
      }),
      { numRuns: 250, seed: 7 },
    );
    expect(found).toBeGreaterThan(100);
  });

  test('lies as far past the seam as its most outlying corner is, square to the line', () => {
    fc.assert(
      fc.property(anyCase, ({ sine, size, at }) => {
        const ground = groundOf(sine, { beside: { what: 'seam', offset: 0 } });
        const turn = at.turn % 0.08;
        const seam = missesAt(ground, size, { ...at, turn }).find(({ what }) => what === 'seam')?.by ?? 0;
        const past = pointsOf(sine, size, { ...at, turn }, 1).map((corner) => {
          const angle = corner.turn * 2 * Math.PI * Math.abs(sine);
          return (-radiusAt(wallOfSine(sine), corner.along) / Math.abs(sine)) * Math.sin(angle);
        });
        expectWithin(seam, Math.max(0, ...past), 2e-6);
      }),
      { numRuns: 300, seed: 3 },
    );
  });

  test('turns into the straight wall as the taper goes to nothing, without a jump', () => {
    const at = { turn: 0.08, along: 90 };
    const rest = { lipZone: 100, beside: { what: 'seam' as const, offset: 0 } };
    for (const sine of [1e-5, 1e-6, 1e-7, 9.9e-8, -1e-6, -1e-7]) {
      const [straight, tapered] = [0, sine].map((s) => missesAt(groundOf(s, rest), item, at));
      expect(tapered?.map(({ what }) => what)).toEqual(straight?.map(({ what }) => what));
      tapered?.forEach(
        ({ by }, i) => void expectWithin(by, straight?.[i]?.by ?? NaN, 60 * Math.abs(sine) + 1e-5),
      );
    }
  });

  test('may have a narrow mark between its two upper corners, where a level line sags over its straight edge', () => {
    // Apex to edge is 40 / 0.3 + 15 = 148.3 mm; corners 30 mm out rise by sqrt(148.3^2 + 30^2) - 148.3 = 3.0 mm.
    const at = { turn: 0.5, along: length / 2 };
    const size = { across: 60, up: 30 };
    const mark = (from: number, to: number): Ground =>
      groundOf(0.3, { keepOuts: [{ what: 'dent', turn: { from, to }, along: { from: 76.5, to: 90 } }] });
    expect(missesAt(mark(0.495, 0.505), size, at)).toEqual([]);
    expect(missesAt(mark(0.41, 0.43), size, at).map(({ what }) => what)).toEqual(['dent']);
    expect(missesAt(mark(0.42, 0.58), size, at).map(({ what }) => what)).toEqual(['dent']);
  });

  test('on a cup of two bands goes to the nearer one', () => {
    const wall = wallOfSine(0.1);
    const ground: Ground = {
      bands: [
        { band: { from: 5, to: 45 }, wall },
        { band: { from: 60, to: 110 }, wall },
      ],
      keepOuts: [],
    };
    const size = { across: 10, up: 20 };
    const low = nearestPlace(ground, size, { turn: 0.5, along: 50 });
    const high = nearestPlace(ground, size, { turn: 0.5, along: 56 });
    expectAtMost(low?.along ?? NaN, 35);
    expectWithin(high?.along ?? NaN, 70, 1e-9);
  });
});
