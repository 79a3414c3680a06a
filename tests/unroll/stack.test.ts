import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stackedSectors } from '../../src/unroll/stack.ts';
import { leastStretchCone, type RadiusAlong, strainAt } from '../../src/unroll/strain.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';

const wallBy = (length: number, radius: (along: number) => number, count: number): RadiusAlong[] =>
  Array.from({ length: count + 1 }, (_, i) => ({
    along: (length * i) / count,
    radius: radius((length * i) / count),
  }));

/** Nearly a hemisphere, foot down: from 10 degrees off its pole to 10 degrees short of its rim. */
const bowl = wallBy((60 * Math.PI * 70) / 180, (s) => 60 * Math.sin(Math.PI / 18 + s / 60), 300);

/**
 * Fewest parts by trying every way to cut a wall: by dynamic programming over all ends. What stretches a part too far does so to any that
 * holds it, for a cone that serves the longer serves the shorter: those are not tried.
 */
function fewest(wall: readonly RadiusAlong[], stretch: number, gather: number): number {
  const parts = [0];
  for (let end = 1; end < wall.length; end++) {
    let least = Infinity;
    for (let start = end - 1; start >= 0; start--) {
      if (leastStretchCone(wall.slice(start, end + 1), gather).stretch > stretch + 1e-9) break;
      least = Math.min(least, (parts[start] ?? Infinity) + 1);
    }
    parts.push(least);
  }
  return parts.at(-1) ?? 0;
}

describe('stacked sectors of a bowl', () => {
  test.each([
    [0.02, 0],
    [0.005, 0],
    [0.01, 0.004],
  ])(
    'keep within a stretch of %d and a gather of %d, place by place, and share their edges',
    (stretch, gather) => {
      const sectors = stackedSectors(bowl, { stretch, gather }) ?? [];
      expect(sectors.length).toBeGreaterThan(1);
      expect([sectors[0]?.from, sectors.at(-1)?.to]).toEqual([0, bowl.at(-1)?.along]);
      sectors.forEach((sector, i) => {
        if (i > 0) expect(sector.from).toBe(sectors[i - 1]?.to);
        for (const place of bowl.filter(({ along }) => along >= sector.from && along <= sector.to)) {
          expectAtMost(strainAt(sector.cone, place), stretch + 2e-9);
          expectAtMost(-strainAt(sector.cone, place), gather + 1e-12);
        }
      });
      expect(sectors.length).toBe(fewest(bowl, stretch, gather));
    },
  );

  test('share the stretch evenly: with all of them stretched as little as the most stretched one, one more is needed', () => {
    const sectors = stackedSectors(bowl, { stretch: 0.01, gather: 0 }) ?? [];
    const most = Math.max(...sectors.map(({ stretch }) => stretch));
    expectAtMost(most, 0.01);
    // Evened out to a thousandth of the limit; places every 0.24 mm cost some as well.
    expect(fewest(bowl, most - 2e-5, 0)).toBeGreaterThan(sectors.length);
  });

  test('are none where more than 24 would be needed', () => {
    expect(stackedSectors(bowl, { stretch: 1e-5, gather: 0 })).toBeUndefined();
  });
});

test('stacked sectors have the area of the wall between them, but for what their film is stretched by', () => {
  const slices = (radiusAt: (along: number) => number, from: number, to: number): number => {
    const steps = 4000;
    const step = (to - from) / steps;
    // Pappus: the area of a surface of revolution is its profile times the way of each bit of it. Midpoint rule.
    return Array.from(
      { length: steps },
      (_, i) => 2 * Math.PI * radiusAt(from + (i + 0.5) * step) * step,
    ).reduce((sum, area) => sum + area, 0);
  };
  fc.assert(
    fc.property(
      fc.double({ min: 0.003, max: 0.03, noNaN: true }),
      fc.constantFrom(0, 0.002),
      (stretch, gather) => {
        const sectors = stackedSectors(bowl, { stretch, gather }) ?? [];
        expect(sectors.length).toBeGreaterThan(0);
        for (const { from, to, cone } of sectors) {
          const wall = slices((s) => 60 * Math.sin(Math.PI / 18 + s / 60), from, to);
          const film = slices((s) => cone.radius + s * cone.sine, from, to);
          expectAtMost(wall / film, 1 + stretch + 1e-5, 'wall over film');
          expectAtMost(1 - gather - 1e-5, wall / film, 'film over wall');
        }
      },
    ),
    { seed: 20264, numRuns: 12 },
  );
});

test('stacked sectors of a stepped cup are its own steps, and no more', () => {
  const corners = [0, 60, 73, 153];
  const slopes = [0.03, 0.5, 0.08];
  const cup: RadiusAlong[] = [{ along: 0, radius: 31 }];
  slopes.forEach((slope, i) => {
    const from = cup.at(-1)?.radius ?? 0;
    const [low = 0, high = 0] = [corners[i], corners[i + 1]];
    for (let k = 1; k <= 40; k++)
      cup.push({ along: low + ((high - low) * k) / 40, radius: from + (slope * (high - low) * k) / 40 });
  });
  const sectors = stackedSectors(cup, { stretch: 1e-4, gather: 0 }) ?? [];
  expect(sectors.map(({ from, to }) => [from, to])).toEqual([
    [0, 60],
    [60, 73],
    [73, 153],
  ]);
  sectors.forEach(({ cone, stretch }, i) => {
    expectWithin(cone.sine, slopes[i] ?? Number.NaN, 1e-12);
    expectAtMost(stretch, 1e-12);
  });
});

test('stacked sectors are one on a cone, and none on no wall', () => {
  const cone = wallBy(80, (s) => 30 + 0.3 * s, 100);
  expect(stackedSectors(cone, { stretch: 0, gather: 0 })).toHaveLength(1);
  expect(stackedSectors([], { stretch: 0.01, gather: 0 })).toEqual([]);
});

test('stacked sectors of any short wall are as few as trying every way to cut it finds', () => {
  const walls = fc
    .array(fc.tuple(fc.integer({ min: 2, max: 9 }), fc.integer({ min: -8, max: 8 })), {
      minLength: 2,
      maxLength: 14,
    })
    .map((steps) => {
      let last: RadiusAlong = { along: 0, radius: 60 };
      const wall = [last];
      for (const [rise, slope] of steps) {
        last = { along: last.along + rise, radius: last.radius + (slope / 20) * rise };
        wall.push(last);
      }
      return wall.every(({ radius }) => radius > 5) ? wall : wall.slice(0, 2);
    });
  fc.assert(
    fc.property(
      walls,
      fc.constantFrom(0.002, 0.01, 0.03),
      fc.constantFrom(0, 0.005),
      (wall, stretch, gather) => {
        expect(stackedSectors(wall, { stretch, gather })).toHaveLength(fewest(wall, stretch, gather));
      },
    ),
    { seed: 55, numRuns: 300 },
  );
});
