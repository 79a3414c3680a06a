// Source: voluntary can standards, see source.md.
import { describe, expect, test } from 'vitest';
import { flatBandsOfWall, longestBand, wallGirthAt, wallLength, wallOf } from '../../../src/blank/wall.ts';
import { aBlank } from '../../blank/a-blank.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import values from './values.json' with { type: 'json' };

const inch = 25.4;
const [body, height, neck] = [values.bodyInches, values.heightInches, values.neckPlugInches].map(
  (inches) => inches * inch,
) as [number, number, number];

/** Invented: where the neck begins, and that it closes in as a half wave. */
const shoulder = height - 0.55 * inch;
const neckAt = (share: number) => ({
  height: shoulder + share * (height - shoulder),
  across: body + ((neck - body) * (1 - Math.cos(Math.PI * share))) / 2,
});

const bodyStations = [0, 0.25, 0.5, 0.75, 0.9, 0.97].map((share) => ({
  height: share * shoulder,
  across: body,
}));
const neckStations = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1].map(neckAt);
const rounds = { footRound: 0, lipRound: 0 };

// A smooth curve swings a little where a straight body turns into a neck: measured 0.02 mm of girth at mid-body.
describe.each([
  { kind: 'stepped', swing: 0 },
  { kind: 'smooth', swing: 0.02 },
] as const)('the necked 12 oz can as a $kind wall', ({ kind, swing }) => {
  const { wall } = wallOf(aBlank([...bodyStations, ...neckStations], { wall: kind }));

  test('has the published girth and body area', () => {
    expectWithin(wallGirthAt(wall, 50), values.bodyGirthMm, 5e-3 + swing);
    expectWithin((wallGirthAt(wall, 50) * height) / 100, values.bodyAreaCm2, 5e-3 + swing);
  });

  test('is flat from its foot to its neck, and no further than the gap of a straightedge', () => {
    const longest = longestBand(flatBandsOfWall(wall, { ...rounds, flatGap: 0.15 }));
    expectWithin(longest?.from ?? Number.NaN, 0, 1e-9);
    const end = longest?.to ?? Number.NaN;
    // At the end of the band the neck has closed in by no more than twice the gap: the straightedge may lean half of it.
    expectAtMost(shoulder - 0.5, end);
    expectAtMost(body / 2 - wallGirthAt(wall, end) / (2 * Math.PI), 0.31);
    expectAtMost(end, shoulder + 2.5);
    expect(wallLength(wall) - end).toBeGreaterThan(11);
  });

  test('has its band ended at the tangent point where a round is declared', () => {
    const longest = longestBand(flatBandsOfWall(wall, { footRound: 4, lipRound: 0, flatGap: 0.15 }));
    expectWithin(longest?.from ?? Number.NaN, 4, 1e-6 + swing);
  });
});
