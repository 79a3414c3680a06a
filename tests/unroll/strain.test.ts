import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leastStretchCone, type RadiusAlong, strainAt, widestBand } from '../../src/unroll/strain.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';

const wallBy = (length: number, radius: (along: number) => number, count = 200): RadiusAlong[] =>
  Array.from({ length: count + 1 }, (_, i) => {
    const along = (length * i) / count;
    return { along, radius: radius(along) };
  });

/** The zone of a ball about its equator, and the waist that mirrors it. */
const ball = (R: number, width: number) => wallBy(width, (s) => R * Math.cos((s - width / 2) / R));
const waist = (R: number, width: number) => wallBy(width, (s) => R * (2 - Math.cos((s - width / 2) / R)));

/** Bent walls of four to eight places. */
const walls = fc
  .array(fc.tuple(fc.integer({ min: 2, max: 20 }), fc.integer({ min: -8, max: 8 })), {
    minLength: 3,
    maxLength: 7,
  })
  .map((steps) => {
    let last: RadiusAlong = { along: 0, radius: 40 };
    const wall = [last];
    for (const [rise, slope] of steps) {
      last = { along: last.along + rise, radius: Math.max(5, last.radius + (slope / 16) * rise) };
      wall.push(last);
    }
    return wall;
  });

describe('the cone that asks the least stretch', () => {
  test('of a cone is that cone, with no strain anywhere, whatever may be gathered', () => {
    for (const sine of [-0.4, -0.01, 0, 0.2, 0.7])
      for (const gather of [0, 0.01, 0.1]) {
        const wall = wallBy(50, (s) => 45 + sine * s);
        const { cone, stretch, gathered } = leastStretchCone(wall, gather);
        expectWithin(cone.sine, sine, 1e-13);
        expectWithin(cone.radius, 45, 1e-11);
        // It used to be made larger by all that may be gathered, and so too large for a wall that needs none.
        expectAtMost(stretch, 1e-13);
        expectAtMost(gathered, 1e-13);
      }
  });

  test('of the zone of a ball is the cylinder at its edges: 1/cos(w/2R) - 1 in the middle', () => {
    for (const [R, width] of [
      [50, 20],
      [50, 40],
      [40, 20],
      [200, 100],
    ] as const) {
      const { cone, stretch } = leastStretchCone(ball(R, width), 0);
      expectWithin(stretch, 1 / Math.cos(width / 2 / R) - 1, 1e-12);
      expectWithin(cone.radius, R * Math.cos(width / 2 / R), 1e-11);
    }
  });

  test('of a waist is the cylinder at its middle, stretched at the edges', () => {
    const { cone, stretch, gathered } = leastStretchCone(waist(50, 40), 0);
    expectWithin(stretch, 1 - Math.cos(0.4), 1e-12);
    expectWithin(cone.radius, 50, 1e-11);
    expect(gathered).toBe(0);
  });

  test('lies under a wall it may not gather, and nowhere strains it more than it says', () => {
    fc.assert(
      fc.property(walls, fc.constantFrom(0, 0.003, 0.05), (wall, gather) => {
        const { cone, stretch, gathered } = leastStretchCone(wall, gather);
        const strains = wall.map((place) => strainAt(cone, place));
        expectWithin(Math.max(0, ...strains), stretch, 1e-12);
        expectWithin(Math.max(0, ...strains.map((s) => -s)), gathered, 1e-12);
        expectAtMost(gathered, gather + 1e-12);
      }),
      { seed: 51, numRuns: 500 },
    );
  });

  test('can not be bettered by any cone of a fine grid around it', () => {
    fc.assert(
      fc.property(walls, fc.constantFrom(0, 0.02), (wall, gather) => {
        const { stretch } = leastStretchCone(wall, gather);
        let least = Infinity;
        for (let i = -400; i <= 400; i++) {
          const sine = i / 500;
          // The largest cone of this sine that gathers no more: every smaller one stretches more.
          const radius = Math.min(...wall.map((p) => p.radius / (1 - gather) - sine * p.along));
          const cone = { radius, sine };
          if (wall.some(({ along }) => radius + sine * along <= 0)) continue;
          least = Math.min(least, Math.max(0, ...wall.map((p) => strainAt(cone, p))));
        }
        expectAtMost(stretch, least + 1e-12);
        // A step of the grid is 0.002: over 80 mm of wall 0.16 mm of radius.
        const narrowest = Math.min(...wall.map(({ radius }) => radius));
        const length = (wall.at(-1)?.along ?? 0) - 0;
        expectAtMost(least, stretch + (1 + stretch) ** 2 * ((0.002 * length) / narrowest) * 2);
      }),
      { seed: 52, numRuns: 200 },
    );
  });

  test('asks for less the more may be gathered, until it asks for none', () => {
    const wall = ball(50, 40);
    const full = leastStretchCone(wall, 0).stretch;
    let last = full;
    for (const gather of [0.01, 0.02, 0.05]) {
      const { stretch, gathered } = leastStretchCone(wall, gather);
      expectWithin((1 + stretch) / (1 - gathered), 1 + full, 1e-12);
      expect(gathered).toBeCloseTo(gather, 12);
      expect(stretch).toBeLessThan(last);
      last = stretch;
    }
    const enough = leastStretchCone(wall, 0.5);
    expectWithin(enough.stretch, 0, 1e-12);
    expectWithin(enough.gathered, 1 - Math.cos(0.4), 1e-12);
  });

  test('asks for more the wider the band, from either side', () => {
    const wall = wallBy(90, (s) => 40 + 8 * Math.sin(s / 20), 90);
    const at = (from: number, to: number) => leastStretchCone(wall.slice(from, to + 1), 0).stretch;
    for (let end = 2; end < 90; end++) {
      expectAtMost(at(0, end), at(0, end + 1) + 1e-13);
      expectAtMost(at(90 - end, 90), at(89 - end, 90) + 1e-13);
    }
  });

  test('follows a wall turned upside down or drawn to another scale', () => {
    fc.assert(
      fc.property(walls, (wall) => {
        const length = wall.at(-1)?.along ?? 0;
        const turned = wall.map(({ along, radius }) => ({ along: length - along, radius })).reverse();
        const scaled = wall.map(({ along, radius }) => ({ along: along * 1e-3, radius: radius * 1e-3 }));
        const { stretch } = leastStretchCone(wall, 0);
        expectWithin(leastStretchCone(turned, 0).stretch, stretch, 1e-11);
        expectWithin(leastStretchCone(scaled, 0).stretch, stretch, 1e-11);
      }),
      { seed: 53, numRuns: 200 },
    );
  });
});

describe('the widest band that lies down', () => {
  // 1/cos(w/2R) - 1 = s: w = 2R acos(1/(1+s)). The equator of a ball is where its zone is widest.
  test('on a ball is as wide as the film stretches', () => {
    const R = 50;
    for (const stretch of [0.005, 0.02, 0.05]) {
      const wall = wallBy(80, (s) => R * Math.cos((s - 40) / R), 800);
      const band = widestBand(wall, { stretch, gather: 0 });
      const wanted = 2 * R * Math.acos(1 / (1 + stretch));
      const found = (band?.to ?? 0) - (band?.from ?? 0);
      expectAtMost(found, wanted + 1e-6);
      expectAtMost(wanted - 0.2, found);
      const within = wall.filter(({ along }) => along >= (band?.from ?? 0) && along <= (band?.to ?? 0));
      expectAtMost(leastStretchCone(within, 0).stretch, stretch + 1e-9);
    }
  });

  test('is never bettered by any two places, tried one by one', () => {
    fc.assert(
      fc.property(walls, fc.constantFrom(0, 0.01), (wall, gather) => {
        const band = widestBand(wall, { stretch: 0.02, gather });
        let widest = 0;
        for (let i = 0; i < wall.length; i++)
          for (let k = i + 1; k < wall.length; k++)
            if (leastStretchCone(wall.slice(i, k + 1), gather).stretch <= 0.02 + 1e-9)
              widest = Math.max(widest, (wall[k]?.along ?? 0) - (wall[i]?.along ?? 0));
        expectWithin((band?.to ?? 0) - (band?.from ?? 0), widest, 1e-9);
      }),
      { seed: 54, numRuns: 300 },
    );
  });

  test('is all of a cone, and nothing of a wall of one place', () => {
    expect(
      widestBand(
        wallBy(70, (s) => 30 + 0.2 * s),
        { stretch: 0, gather: 0 },
      ),
    ).toEqual({ from: 0, to: 70 });
    expect(widestBand([{ along: 0, radius: 5 }], { stretch: 1, gather: 0 })).toBeUndefined();
  });
});
