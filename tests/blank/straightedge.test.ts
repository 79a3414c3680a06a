import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flatBandsOf, straightedgeGap } from '../../src/blank/straightedge.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';

interface Place {
  readonly along: number;
  readonly radius: number;
  readonly height: number;
}

/** A circular arc about its middle, bulging out (1) or in (-1), so long on either side. */
const arc = (radius: number, half: number, count: number, way: 1 | -1): Place[] =>
  Array.from({ length: count + 1 }, (_, i) => {
    const angle = ((2 * i) / count - 1) * (half / radius);
    return {
      along: radius * angle + half,
      radius: 40 + way * radius * (Math.cos(angle) - 1),
      height: radius * Math.sin(angle),
    };
  });

/** Straight runs of given lengths and leans. */
const runs = (parts: readonly (readonly [length: number, lean: number])[], spacing = 0.25): Place[] => {
  let last: Place = { along: 0, radius: 60, height: 0 };
  const all = [last];
  for (const [length, lean] of parts) {
    const count = Math.ceil(length / spacing);
    const from = last;
    for (let i = 1; i <= count; i++) {
      const on = (length * i) / count;
      last = {
        along: from.along + on,
        radius: from.radius + on * Math.sin(lean),
        height: from.height + on * Math.cos(lean),
      };
      all.push(last);
    }
  }
  return all;
};

const lengthOf = ({ from, to }: { readonly from: number; readonly to: number }): number => to - from;

describe('a band found by the straightedge', () => {
  // A straightedge of length w on a circle of radius R rocks with a gap of w²/8R at its ends, or bridges as much in
  // its middle: w = 2 sqrt(2 R g), exactly 2 R acos(1 - g/R) along the arc (sagitta of a chord, any geometry text).
  test.each([
    [100, 0.15],
    [200, 0.15],
    [200, 0.05],
    [800, 0.3],
  ])(
    'on a barrel or a waist of meridian radius %d mm and for a gap of %d mm is as long as the sagitta says',
    (R, gap) => {
      const wanted = 2 * R * Math.acos(1 - gap / R);
      expectWithin(wanted, 2 * Math.sqrt(2 * R * gap), 2e-3);
      const half = 1.4 * wanted;
      const count = 1000;
      for (const way of [1, -1] as const) {
        const [band] = flatBandsOf(arc(R, half, count, way), gap);
        const found = band ? lengthOf(band) : 0;
        const spacing = (2 * half) / count;
        expectAtMost(found, wanted + 1e-9);
        expectAtMost(wanted - 2 * spacing, found);
      }
    },
  );

  test('on a straight wall, whatever its lean, is all of it', () => {
    for (const lean of [-0.8, -0.1, 0, 0.02, 0.7]) {
      const [band, ...more] = flatBandsOf(runs([[120, lean]]), 1e-9);
      expect(band).toEqual({ from: 0, to: 120 });
      expect(more).toEqual([]);
    }
  });

  // Two straight runs meet at an angle d: a straightedge that runs past the corner by x touches the long one's far end
  // and the corner side by side with a gap of about x sin d; rocking on a corner that bulges shares it.
  test('on a stepped cup is each of its steps, and runs past a corner by no more than the gap allows', () => {
    const cup = runs([
      [60, 0],
      [13, 0.4],
      [80, 0.06],
    ]);
    const bands = flatBandsOf(cup, 0.15);
    expect(bands).toHaveLength(3);
    const corners = [0, 60, 73, 153];
    const past = [0, 0.8, 0.8, 0];
    bands.forEach((band, i) => {
      expectWithin(band.from, corners[i] ?? Number.NaN, past[i] ?? 0);
      expectWithin(band.to, corners[i + 1] ?? Number.NaN, past[i + 1] ?? 0);
    });
    const exact = flatBandsOf(cup, 1e-9);
    expect(exact.map(({ from, to }) => [Math.round(from), Math.round(to)])).toEqual([
      [0, 60],
      [60, 73],
      [73, 153],
    ]);
    for (const { from, to } of exact)
      expectAtMost(Math.abs(from - Math.round(from)) + Math.abs(to - Math.round(to)), 1e-9);
  });

  test('leaves out what is shorter than 3 mm', () => {
    const zigzag = runs([
      [2.5, 0.6],
      [2.5, -0.6],
      [2.5, 0.6],
      [40, 0],
    ]);
    const bands = flatBandsOf(zigzag, 1e-9);
    expect(bands).toHaveLength(1);
    expect(flatBandsOf([], 0.15)).toEqual([]);
    expect(flatBandsOf(zigzag.slice(0, 1), 0.15)).toEqual([]);
  });
});

/** Gentle random walls: a few runs of changing lean, some of them straight on. */
const walls = fc
  .array(fc.tuple(fc.double({ min: 2, max: 12, noNaN: true }), fc.integer({ min: -4, max: 4 })), {
    minLength: 2,
    maxLength: 6,
  })
  .map((parts) =>
    runs(
      parts.map(([length, lean]) => [length, lean / 40] as const),
      1,
    ),
  );

/** The gap under a straightedge turned a given way, pushed against the outside. */
function gapTurned(stretch: readonly Place[], angle: number): number {
  const out = stretch.map(({ radius, height }) => radius * Math.cos(angle) - height * Math.sin(angle));
  return Math.max(...out) - Math.min(...out);
}

describe('the gap a straightedge leaves', () => {
  test('is the least over every way to turn it, tried one by one on random walls', () => {
    fc.assert(
      fc.property(walls, (wall) => {
        const found = straightedgeGap(wall);
        let least = Infinity;
        for (let i = -2000; i <= 2000; i++) least = Math.min(least, gapTurned(wall, i / 10_000));
        const last = wall.at(-1)?.along ?? 0;
        // Turned by up to half a step of the trial off the best, the gap grows by at most its length times that.
        expectAtMost(found, least + 1e-12);
        expectAtMost(least, found + last * 0.5e-4);
      }),
      { seed: 44, numRuns: 200 },
    );
  });

  // It used to be taken only along edges of the outside: on a corner that bulges that is twice the gap there is.
  test('counts a straightedge that rocks on a corner: both ends up by the same', () => {
    const corner = [
      { along: 0, radius: 38, height: 0 },
      { along: 50, radius: 40, height: 50 },
      { along: 100, radius: 38, height: 100 },
    ];
    expect(straightedgeGap(corner)).toBe(2);
    const lopsided = [...corner.slice(0, 2), { along: 60, radius: 39.6, height: 60 }];
    expectWithin(straightedgeGap(lopsided), (40 - (38 + (1.6 * 50) / 60)) / Math.hypot(1, 1.6 / 60), 1e-12);
  });

  test('is none for two places, and for any on one line', () => {
    expect(straightedgeGap(runs([[4, 0.3]], 4))).toBe(0);
    expectAtMost(straightedgeGap(runs([[100, 0.3]])), 1e-12);
  });

  test('is never less for more of the wall, so that bands are never shorter for a larger gap', () => {
    fc.assert(
      fc.property(walls, fc.double({ min: 0.01, max: 0.5, noNaN: true }), (wall, gap) => {
        for (let end = 2; end < wall.length; end++)
          expectAtMost(straightedgeGap(wall.slice(0, end)), straightedgeGap(wall.slice(0, end + 1)) + 1e-12);
        const longest = (g: number) => Math.max(0, ...flatBandsOf(wall, g).map(lengthOf));
        expectAtMost(longest(gap), longest(gap * 1.3) + 1e-9);
      }),
      { seed: 45, numRuns: 200 },
    );
  });
});

describe('the bands of random walls', () => {
  test('keep the gap exactly, end at their neighbours, and could not be longer by one place', () => {
    fc.assert(
      fc.property(walls, (wall) => {
        const gap = 0.1;
        const bands = flatBandsOf(wall, gap);
        bands.forEach((band, i) => {
          const stretch = wall.filter(({ along }) => along >= band.from && along <= band.to);
          expectAtMost(straightedgeGap(stretch), gap);
          expectAtMost(bands[i - 1]?.to ?? 0, band.from);
        });
        let longest = 0;
        for (let start = 0; start < wall.length; start++)
          for (let end = start + 1; end < wall.length; end++) {
            const [from, to] = [wall[start]?.along ?? 0, wall[end]?.along ?? 0];
            if (to - from > longest && straightedgeGap(wall.slice(start, end + 1)) <= gap)
              longest = to - from;
          }
        if (longest >= 3) expectWithin(Math.max(...bands.map(lengthOf)), longest, 1e-8);
      }),
      { seed: 46, numRuns: 100 },
    );
  });
});
