// Paper wrapped on walls that bend, and places read more than once.
import { describe, expect, test } from 'vitest';
import type { Blank } from '../../src/blank/blank.ts';
import { coneAlong } from '../../src/blank/curved-fit.ts';
import { curvedUncertaintyAt, fitCurvedWall } from '../../src/blank/curved-wall.ts';
import { fittedSteps, resolveFits, type TypedFit } from '../../src/blank/paper-fit.ts';
import { placesApart } from '../../src/blank/place-off.ts';
import { alongOfHeight, type Profile, profileAt } from '../../src/blank/profile.ts';
import { flatBandsOfWall, longestBand, wallGirthAt, wallOf } from '../../src/blank/wall.ts';
import { paperCone } from '../../src/unroll/sheet-wall.ts';
import { expectWithin, expectWithinPart } from '../closeness.ts';
import { aBlank } from './a-blank.ts';
import { deviation, normal, uniform } from './random.ts';
import { wrapPaper } from './rolled-paper.ts';

type Given = { readonly height: number; readonly across?: number; readonly girth?: number };
type Bent = 'stepped' | 'smooth';

const paper = 0.1;

const truths: Readonly<Record<Bent, readonly Given[]>> = {
  // A cup that steps down to fit a holder.
  stepped: [
    { height: 0, across: 64 },
    { height: 60, across: 68 },
    { height: 64, across: 80 },
    { height: 160, across: 90 },
  ],
  // A barrel so slight that a straightedge touches most of it.
  smooth: [
    { height: 0, across: 80 },
    { height: 50, across: 80.9 },
    { height: 100, across: 81.2 },
    { height: 150, across: 80.9 },
  ],
};

const profileOf = (wall: Bent, stations: readonly Given[]): Profile =>
  fitCurvedWall(aBlank(stations, { wall }), wall).profile;

/** A wall read wrongly, its paper wrapped on the true one so many times, each miss read to `step` mm. */
function wrapped(wall: Bent, read: readonly Given[], times: number, step = 0): Blank {
  const truth = profileOf(wall, truths[wall]);
  const bare = aBlank(read, { wall });
  const typed: TypedFit[] = [];
  const rounded = (mm: number) => (step > 0 ? Math.round(mm / step) * step : mm);
  for (let i = 0; i < times; i++) {
    const blank = { ...bare, fits: resolveFits(bare, typed, paperCone) };
    const { wall: known } = wallOf(blank);
    const band = longestBand(flatBandsOfWall(known, blank)) ?? { from: 0, to: 0 };
    const made = paperCone(known, band, paper);
    // Truth: geodesics in space on the cone of the true wall's stretch, rolled-paper.ts.
    const cone = coneAlong(truth, band);
    const missed = wrapPaper({ radius: made.radius, lean: made.halfAngle }, band, paper, {
      radius: cone.radius,
      lean: cone.halfAngle,
    });
    typed.push({ foot: rounded(missed.foot), lip: rounded(missed.lip), band, paper, reading: 0.5 });
  }
  return { ...bare, fits: resolveFits(bare, typed, paperCone) };
}

const misread = (wall: Bent, off: (height: number) => number): readonly Given[] =>
  truths[wall].map(({ height, across = 0 }) => ({ height, across: across + off(height) }));

describe.each(['stepped', 'smooth'] as const)('paper wrapped on a flat band of a %s wall', (wall) => {
  test('finds the wall after one wrap where every size was read wrong by a line up the wall', () => {
    const blank = wrapped(
      wall,
      misread(wall, (height) => 1.2 - 0.01 * height),
      1,
    );
    const truth = profileOf(wall, truths[wall]);
    const { profile } = fitCurvedWall(blank, wall);
    for (const { height } of truths[wall]) {
      const at = alongOfHeight(truth, height);
      expectWithin(
        profileAt(profile, alongOfHeight(profile, height)).radius,
        profileAt(truth, at).radius,
        1e-4,
      );
    }
  });

  test('settles within the reading in two wraps read to half a mm, on the band it was wrapped on', () => {
    const read = misread(wall, (height) => (height > 55 && height < 110 ? -1 : 0.8));
    const blank = wrapped(wall, read, 2, 0.5);
    const truth = profileOf(wall, truths[wall]);
    const { wall: known } = wallOf(blank);
    const { from, to } = blank.fits?.at(-1)?.band ?? { from: 0, to: 0 };
    for (const along of [from, to])
      expectWithin(wallGirthAt(known, along), 2 * Math.PI * profileAt(truth, along).radius, 0.5);
  });

  test('misses nothing on a wall that was read right, and leaves it where it is', () => {
    const blank = wrapped(wall, truths[wall], 1);
    const [before, after] = fittedSteps(blank);
    expect(blank.fits?.[0]?.replaces).toBe(false);
    expectWithin(after?.footGirth ?? 0, before?.footGirth ?? 9, 1e-6);
    expectWithin(after?.lipGirth ?? 0, before?.lipGirth ?? 9, 1e-6);
  });

  test('stands in the place of the stations when it missed by more than its reading, and keeps their shape', () => {
    const blank = wrapped(
      wall,
      misread(wall, () => 1.5),
      1,
    );
    const { residuals } = fitCurvedWall(blank, wall);
    expect(residuals.every(({ isReplaced }) => isReplaced)).toBe(true);
    for (const { residual } of residuals) expectWithin(residual, 1.5 * Math.PI, 1e-3);
  });
});

describe('several readings of one place on a wall that bends', () => {
  const cup = (...middle: readonly number[]): Blank =>
    aBlank(
      [
        { height: 0, across: 64 },
        ...middle.map((girth) => ({ height: 60, girth })),
        { height: 160, across: 90 },
      ],
      { wall: 'stepped', reading: 0.4 },
    );

  test('are their weighted mean, as much surer as there are of them', () => {
    const { wall } = wallOf(cup(213, 213.6, 213.9));
    if (wall.kind !== 'curved') throw new Error('a stepped wall');
    const at = alongOfHeight(wall.curved.profile, 60);
    expectWithin(wallGirthAt(wall, at), 213.5, 1e-9);
    // JCGM 100:2008, 4.2.3: a mean of n is surer by √n; a residual of one of n is 0.4 √(1 - 1/n) sure.
    const middle = wall.curved.residuals.filter(({ measured }) => measured < 215 && measured > 212);
    expect(middle.map(({ station }) => station)).toEqual([1, 2, 3]);
    for (const { residual, measured, uncertainty } of middle) {
      expectWithin(residual, measured - 213.5, 1e-9);
      expectWithin(uncertainty, 0.4 * Math.sqrt(2 / 3), 1e-9);
    }
    expect(wall.curved.residuals[0]?.uncertainty).toBe(0);
  });

  test('of different sureness count by it: a girth more than a diameter', () => {
    const blank = aBlank(
      [
        { height: 0, across: 64 },
        { height: 60, girth: 213 },
        { height: 60, across: 214 / Math.PI },
        { height: 160, across: 90 },
      ],
      { wall: 'stepped', reading: 0.4 },
    );
    const { wall } = wallOf(blank);
    if (wall.kind !== 'curved') throw new Error('a stepped wall');
    // Weights 1 and 1/π²: the mean lies 1/(1 + π²) of the way.
    expectWithin(
      wallGirthAt(wall, alongOfHeight(wall.curved.profile, 60)),
      213 + 1 / (1 + Math.PI ** 2),
      1e-9,
    );
  });

  test('name the one that the others speak against, and what it should have been', () => {
    const [apart] = placesApart(cup(213, 217, 213.2));
    expect(apart?.off?.key).toBe('stations[2].girth');
    expectWithin(apart?.off?.shouldBe ?? 0, 213.1, 1e-9);
    const found = wallOf(cup(213, 217, 213.2)).findings;
    expect(found.map(({ rule, level, where }) => [rule, level, where.key])).toEqual([
      ['reading-off', 'look', 'stations[2].girth'],
    ]);
    expect(found[0]?.says).toMatch(/217 mm cannot be right .* 213\.1 mm, give or take 0\.57 mm/);
  });

  test('two that cannot both be right are told, without a guess which', () => {
    const found = wallOf(cup(213, 217)).findings;
    expect(found.map(({ rule }) => rule)).toEqual(['reading-off']);
    expect(found[0]?.says).toContain('cannot tell which');
    expect(wallOf(cup(213, 214)).findings).toEqual([]);
  });

  // JCGM 101:2008, Monte Carlo; 600 draws give a standard deviation to 3 %, and 12 % is four times that.
  test('and a paper fit make the girth as sure as 600 noisy readings of it are alike', () => {
    const draw = normal(uniform(7));
    const band = { from: 70, to: 150 };
    const given = (off: () => number): Blank => {
      const read = aBlank(
        [
          { height: 0, girth: 200 + off() },
          { height: 60, girth: 213 + off() },
          { height: 60, girth: 213 + off() },
          { height: 64, girth: 250 + off() },
          { height: 160, girth: 280 + off() },
        ],
        { wall: 'stepped', reading: 0.4 },
      );
      const template = { radius: 36.45, halfAngle: 0.0497 };
      const fit = { foot: off(), lip: off(), band, paper, reading: 0.4, template, replaces: false };
      return { ...read, fits: [fit] };
    };
    const { wall } = wallOf(given(() => 0));
    const places = [0, 60, 110, 160];
    const girths = places.map((): number[] => []);
    for (let i = 0; i < 600; i++) {
      const { profile } = fitCurvedWall(
        given(() => 0.4 * draw()),
        'stepped',
      );
      for (const [k, along] of places.entries())
        girths[k]?.push(2 * Math.PI * profileAt(profile, along).radius);
    }
    places.forEach((along, k) => {
      if (wall.kind !== 'curved') throw new Error('a stepped wall');
      expectWithinPart(
        curvedUncertaintyAt(wall.curved, along),
        deviation(girths[k] ?? []),
        0.12,
        `at ${along} mm`,
      );
    });
  });
});
