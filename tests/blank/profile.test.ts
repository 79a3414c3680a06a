import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  alongOfHeight,
  type ProfileReading,
  profileAt,
  smoothProfile,
  steppedProfile,
} from '../../src/blank/profile.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';

const R = 60;

/** Walls whose radius by height, and length up to a height, are closed forms (any calculus text; from memory). */
const forms = [
  {
    name: 'the zone of a ball',
    top: 60,
    radius: (h: number) => Math.sqrt(R * R - (h - 30) ** 2),
    along: (h: number) => R * (Math.asin((h - 30) / R) + Math.PI / 6),
    limits: { 5: 3e-2, 9: 4e-3, 17: 3e-4, 33: 3e-5, 65: 2e-6 },
  },
  {
    name: 'a parabola',
    top: 100,
    radius: (h: number) => 20 + (h * h) / 200,
    along: (h: number) => 50 * ((h / 100) * Math.hypot(1, h / 100) + Math.asinh(h / 100)),
    limits: { 5: 1e-11, 9: 1e-11, 17: 1e-11, 33: 1e-11, 65: 1e-11 },
  },
  {
    name: 'a catenary waist',
    top: 90,
    radius: (h: number) => 40 * Math.cosh((h - 40) / 40),
    along: (h: number) => 40 * (Math.sinh((h - 40) / 40) + Math.sinh(1)),
    limits: { 5: 0.2, 9: 2e-2, 17: 1e-3, 33: 6e-5, 65: 4e-6 },
  },
];

const even = (count: number, top: number): number[] =>
  Array.from({ length: count }, (_, i) => (top * i) / (count - 1));

const byHeight = (form: (typeof forms)[number], count: number): ProfileReading[] =>
  even(count, form.top).map((at) => ({ kind: 'height', at, radius: form.radius(at) }));

describe.each(forms)('a smooth wall through stations of $name', (form) => {
  // Measured: what so many stations are good for, in radius and height anywhere on it, mm. Half the spacing is up to
  // sixteen times as near: the error of a cubic spline falls with its fourth power.
  test.each(Object.entries(form.limits))('with %s stations is as near to it as recorded', (count, limit) => {
    const profile = smoothProfile(byHeight(form, Number(count)));
    for (const height of even(201, form.top)) {
      expectWithin(profileAt(profile, alongOfHeight(profile, height)).radius, form.radius(height), limit);
      expectWithin(profileAt(profile, form.along(height)).height, height, limit);
    }
  });

  test('is as long as the closed form says, to 1e-6 mm with 65 stations', () => {
    expectWithin(smoothProfile(byHeight(form, 65)).length, form.along(form.top), 1e-6);
  });

  test('leans as its closed form does', () => {
    const profile = smoothProfile(byHeight(form, 65));
    for (const height of even(11, form.top - 2).map((h) => h + 1)) {
      const slope = (form.radius(height + 1e-4) - form.radius(height - 1e-4)) / 2e-4;
      expectWithin(profileAt(profile, alongOfHeight(profile, height)).lean, Math.atan(slope), 1e-5);
    }
  });

  test('is the same wall when its stations are read along it', () => {
    const alongs: ProfileReading[] = even(65, form.top).map((at) => ({
      kind: 'along',
      at: form.along(at),
      radius: form.radius(at),
    }));
    const [one, other] = [smoothProfile(byHeight(form, 65)), smoothProfile(alongs)];
    for (const along of even(101, other.length)) {
      const [a, b] = [profileAt(one, along), profileAt(other, along)];
      expectWithin(b.radius, a.radius, 1e-5);
      expectWithin(b.height, a.height, 1e-5);
      expectWithin(b.lean, a.lean, 5e-5);
    }
  });
});

const cup: readonly ProfileReading[] = [
  { kind: 'height', at: 0, radius: 31 },
  { kind: 'height', at: 60, radius: 33 },
  { kind: 'height', at: 72, radius: 38 },
  { kind: 'height', at: 150, radius: 43 },
];

describe('a stepped wall', () => {
  const profile = steppedProfile(cup);

  test('goes straight from corner to corner, by plane geometry', () => {
    const first = Math.hypot(60, 2);
    expectWithin(profile.length, first + Math.hypot(12, 5) + Math.hypot(78, 5), 1e-12);
    const onSecond = profileAt(profile, first + 6.5);
    expectWithin(onSecond.radius, 35.5, 1e-12);
    expectWithin(onSecond.height, 66, 1e-12);
    expectWithin(onSecond.lean, Math.atan2(5, 12), 1e-14);
    cup.forEach(({ at, radius }) => {
      expectWithin(profileAt(profile, alongOfHeight(profile, at)).radius, radius, 1e-11);
    });
  });

  test('is the same read along the wall', () => {
    const alongs = cup.map(({ at, radius }): ProfileReading => {
      return { kind: 'along', at: alongOfHeight(profile, at), radius };
    });
    const other = steppedProfile(alongs);
    expectWithin(other.length, profile.length, 1e-11);
    for (const along of even(101, profile.length)) {
      expectWithin(profileAt(other, along).radius, profileAt(profile, along).radius, 1e-11);
      expectWithin(profileAt(other, along).height, profileAt(profile, along).height, 1e-10);
    }
  });

  test('whose lowest station is above the foot goes on down its first stretch', () => {
    const [, second, ...rest] = cup;
    const raised = steppedProfile([
      { kind: 'height', at: 15, radius: 31.5 },
      ...(second ? [second] : []),
      ...rest,
    ]);
    expectWithin(raised.length, profile.length, 1e-11);
    for (const along of [0, 3, 14, 40, 70, 140])
      expectWithin(profileAt(raised, along).radius, profileAt(profile, along).radius, 1e-12);
  });
});

test('a smooth wall whose lowest station is above the foot goes on straight down to it', () => {
  const raised = cup.map((reading) => ({ ...reading, at: reading.at + 10 }));
  const [profile, atFoot] = [smoothProfile(raised), smoothProfile(cup)];
  const { lean } = profileAt(atFoot, 0);
  const below = 10 / Math.cos(lean);
  expectWithin(profile.length, atFoot.length + below, 1e-6);
  for (const along of [0, 2, 6, 9.9]) {
    expectWithin(profileAt(profile, along).radius, 31 + (along - below) * Math.sin(lean), 1e-9);
    expectWithin(profileAt(profile, along).lean, lean, 1e-12);
  }
  for (const along of [0, 30, 77, 140]) {
    // Simpson's rule over the place where the line begins: the bend jumps there.
    expectWithin(profileAt(profile, along + below).radius, profileAt(atFoot, along).radius, 1e-6);
  }
});

test('a smooth wall through two stations is the straight one', () => {
  const two = [
    { kind: 'height', at: 0, radius: 30 },
    { kind: 'height', at: 120, radius: 40 },
  ] as const;
  const [smooth, stepped] = [smoothProfile(two), steppedProfile(two)];
  expectWithin(smooth.length, stepped.length, 1e-11);
  for (const along of [0, 50, 120])
    expectWithin(profileAt(smooth, along).radius, profileAt(stepped, along).radius, 1e-11);
});

test('a place up the wall comes back from its height, whatever the wall', () => {
  const readings = fc.record({
    kind: fc.constantFrom('height' as const, 'along' as const),
    steps: fc.array(
      fc.tuple(fc.double({ min: 5, max: 40, noNaN: true }), fc.double({ min: -0.5, max: 0.5, noNaN: true })),
      { minLength: 1, maxLength: 6 },
    ),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    smooth: fc.boolean(),
  });
  fc.assert(
    fc.property(readings, ({ kind, steps, share, smooth }) => {
      let last: ProfileReading = { kind, at: 0, radius: 200 };
      const given = [last];
      for (const [rise, slope] of steps) {
        last = { kind, at: last.at + rise, radius: last.radius + slope * rise };
        given.push(last);
      }
      const profile = smooth ? smoothProfile(given) : steppedProfile(given);
      const along = share * profile.length;
      const { lean, height } = profileAt(profile, along);
      // Where the wall is nearly level its height tells little about the place.
      if (Math.abs(lean) > 1.3) return;
      expectAtMost(Math.abs(alongOfHeight(profile, height) - along), 1e-7);
    }),
    { seed: 31, numRuns: 500 },
  );
});

test('readings are passed through, by height and by along', () => {
  for (const kind of ['height', 'along'] as const) {
    const given = cup.map((reading) => ({ ...reading, kind }));
    for (const profile of [smoothProfile(given), steppedProfile(given)])
      for (const { at, radius } of given) {
        const along = kind === 'along' ? at : alongOfHeight(profile, at);
        expect(profileAt(profile, along)[kind]).toBeCloseTo(at, 8);
        expectWithin(profileAt(profile, along).radius, radius, 1e-9);
      }
  }
});
