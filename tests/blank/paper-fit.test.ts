import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Blank } from '../../src/blank/blank.ts';
import { flatBand } from '../../src/blank/flat-band.ts';
import { fittedSteps, resolveFits as resolved, type TypedFit } from '../../src/blank/paper-fit.ts';
import { bareGirthAt, fitStraightWall } from '../../src/blank/straight-wall.ts';
import { wallFindings } from '../../src/blank/wall-findings.ts';
import { paperCone } from '../../src/unroll/sheet-wall.ts';
import { expectWithin } from '../closeness.ts';
import { aBlank, refusalsOf } from './a-blank.ts';
import { type TestCone, wrapPaper } from './rolled-paper.ts';

const resolveFits = (blank: Blank, typed: readonly TypedFit[]) => resolved(blank, typed, paperCone);

const aFit = (miss: Partial<TypedFit>): TypedFit => ({ foot: 0, lip: 0, paper: 0.1, reading: 0.5, ...miss });

const girthOf = ({ radius, lean }: TestCone, along: number): number =>
  2 * Math.PI * (radius + along * Math.sin(lean));

/** A cup read wrongly, its paper wrapped on the true cone so many times, each miss read to `step` mm. */
function wrapped(
  truth: TestCone,
  read: { foot: number; lip: number; height: number },
  times: number,
  step = 0,
  withClimb = true,
) {
  const bare = aBlank([
    { height: 0, across: read.foot },
    { height: read.height, girth: read.lip },
  ]);
  const typed: TypedFit[] = [];
  const rounded = (mm: number) => (step > 0 ? Math.round(mm / step) * step : mm);
  for (let i = 0; i < times; i++) {
    const blank = { ...bare, fits: resolveFits(bare, typed) };
    const wall = fitStraightWall(blank);
    const band = flatBand(wall, blank);
    const miss = wrapPaper({ radius: wall.radius, lean: wall.halfAngle }, band, 0.1, truth);
    const { foot, lip, climb } = miss;
    typed.push(
      aFit({ foot: rounded(foot), lip: rounded(lip), ...(withClimb ? { climb: rounded(climb) } : {}) }),
    );
  }
  const blank = { ...bare, fits: resolveFits(bare, typed) };
  return { blank, typed, wall: fitStraightWall(blank) };
}

describe('paper wrapped around the true cone', () => {
  const truth = { radius: 31, lean: 0.08 };
  // Truth: geodesics of the cone in space, rolled-paper.ts.
  test.each([true, false])(
    'finds that cone after one wrap when it is read exactly (climb read: %s)',
    (withClimb) => {
      const { wall } = wrapped(truth, { foot: 63.5, lip: 268, height: 147 }, 1, 0, withClimb);
      expectWithin(wall.radius, truth.radius, 1e-6);
      expectWithin(wall.halfAngle, truth.lean, 1e-8);
    },
  );

  test('settles within the reading in two wraps read to half a mm, whatever the stations said', () => {
    const cases = fc.record({
      radius: fc.double({ min: 25, max: 70, noNaN: true }),
      lean: fc.double({ min: -0.12, max: 0.2, noNaN: true }),
      foot: fc.double({ min: -2, max: 2, noNaN: true }),
      lip: fc.double({ min: -6, max: 6, noNaN: true }),
      height: fc.double({ min: -5, max: 5, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, ({ radius, lean, ...wrong }) => {
        const cone = { radius, lean };
        fc.pre(radius + 120 * Math.sin(lean) > 12);
        const read = {
          foot: 2 * radius + wrong.foot,
          lip: girthOf(cone, 120) + wrong.lip,
          height: 120 * Math.cos(lean) + wrong.height,
        };
        const { wall } = wrapped(cone, read, 2, 0.5);
        for (const along of [0, 60, 120]) expectWithin(bareGirthAt(wall, along), girthOf(cone, along), 0.5);
      }),
      { seed: 31, numRuns: 25 },
    );
  }, 60_000);

  test('has nothing left to correct the second time', () => {
    const { typed } = wrapped(truth, { foot: 63.5, lip: 268, height: 147 }, 2);
    expect(Math.abs(typed[0]?.foot ?? 0)).toBeGreaterThan(3);
    for (const miss of [typed[1]?.foot, typed[1]?.lip, typed[1]?.climb]) expectWithin(miss ?? 9, 0, 1e-5);
  });

  test('tells what moved, and by how much, after each wrap', () => {
    const { blank } = wrapped(truth, { foot: 63.5, lip: 268, height: 147 }, 2);
    const [before, first, second] = fittedSteps(blank);
    expectWithin(before?.footGirth ?? 0, Math.PI * 63.5, 1e-9);
    expectWithin(first?.footGirth ?? 0, 2 * Math.PI * 31, 1e-5);
    expectWithin(second?.halfAngle ?? 0, 0.08, 1e-7);
    expect(first?.height).not.toBe(before?.height);
  });
});

describe('a paper fit as typed', () => {
  const bare = aBlank([
    { height: 0, across: 62 },
    { height: 150, girth: 270 },
  ]);
  const wallOf = (...typed: TypedFit[]) => fitStraightWall({ ...bare, fits: resolveFits(bare, typed) });

  test('gaps alone give the cone on which that template misses by just that', () => {
    const before = fitStraightWall(bare);
    const after = wallOf(aFit({ foot: 2, lip: -1 }));
    const band = flatBand(before, bare);
    const [made, found] = [before, after].map(({ radius, halfAngle }) => ({ radius, lean: halfAngle }));
    if (!made || !found) throw new Error('two walls');
    const missed = wrapPaper(made, band, 0.1, found);
    expectWithin(missed.foot, 2, 1e-6);
    expectWithin(missed.lip, -1, 1e-6);
    // To first order a gap is girth that was missing; the tilt of the paper on the other taper takes its part.
    expectWithin(bareGirthAt(after, 0) - bareGirthAt(before, 0), 2, 0.5);
    expectWithin(bareGirthAt(after, band.to) - bareGirthAt(before, band.to), -1, 0.5);
    // Wider at the foot and narrower at the lip: less taper, and the lip's own girth stands higher up.
    expect(after.halfAngle).toBeLessThan(before.halfAngle);
    expect(after.length).toBeGreaterThan(before.length);
  });

  test('a climb that the gaps do not explain means more taper', () => {
    expect(wallOf(aFit({ climb: 3 })).halfAngle).toBeGreaterThan(fitStraightWall(bare).halfAngle);
    expect(wallOf(aFit({ climb: -3 })).halfAngle).toBeLessThan(fitStraightWall(bare).halfAngle);
  });

  test('one that missed by no more than its reading counts as one reading more, and moves the wall only part of the way', () => {
    const before = fitStraightWall(bare);
    const after = wallOf(aFit({ foot: 0.4, lip: 0.4 }));
    const moved = bareGirthAt(after, 150) - bareGirthAt(before, 150);
    // Tape and paper are equally sure at the lip: half of it.
    expectWithin(moved, 0.2, 0.03);
    expect(after.residuals.every(({ isReplaced }) => !isReplaced)).toBe(true);
  });

  test('one that missed by more stands in the place of what was read before it, and says which station was wrong', () => {
    const fits = resolveFits(bare, [aFit({ foot: 0.1, lip: 4 })]);
    const blank = { ...bare, fits };
    const wall = fitStraightWall(blank);
    expect(wall.residuals.every(({ isReplaced }) => isReplaced)).toBe(true);
    const found = wallFindings(blank, wall).filter(({ rule }) => rule === 'reading-replaced');
    expect(found.map(({ where, level }) => [where.key, level])).toEqual([['stations[1].girth', 'note']]);
    expect(found[0]?.says).toMatch(/should have been 273\.6 mm/);
  });

  test('a climb that cannot go with its gaps is looked at', () => {
    const blank = { ...bare, fits: resolveFits(bare, [aFit({ foot: 2, lip: 2, climb: 15 })]) };
    const found = wallFindings(blank, fitStraightWall(blank));
    expect(found.map(({ rule, where }) => [rule, where.key])).toContainEqual([
      'fit-unlikely',
      'fits[0].climb',
    ]);
    const fine = { ...bare, fits: resolveFits(bare, [aFit({ foot: 2, lip: -1, climb: 0 })]) };
    expect(wallFindings(fine, fitStraightWall(fine)).map(({ rule }) => rule)).not.toContain('fit-unlikely');
  });

  test.each<[string, TypedFit, string, string]>([
    ['misses by a tenth of the girth', aFit({ foot: 25 }), 'fit-too-far', 'fits[0].foot'],
    ['overlaps by as much', aFit({ lip: -40 }), 'fit-too-far', 'fits[0].lip'],
    ['has a band past the lip', aFit({ band: { from: 100, to: 300 } }), 'fit-band', 'fits[0].band'],
    ['has a band too narrow to tell', aFit({ band: { from: 100, to: 102 } }), 'fit-band', 'fits[0].band'],
  ])('is refused when it %s', (_, typed, rule, key) => {
    expect(refusalsOf(() => resolveFits(bare, [typed])).map((f) => [f.rule, f.where.key])).toEqual([
      [rule, key],
    ]);
  });
});
