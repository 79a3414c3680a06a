// What keeps a band from being laid flat, or a pattern from going around: refused by rule and key.
import { describe, expect, test } from 'vitest';
import { Refused } from '../../../src/finding.ts';
import { expectWithin } from '../../closeness.ts';
import { leafTile, madeOf, type Typed } from '../a-job.ts';

const cup = {
  stations: [
    { height: 0, across: 62 },
    { height: 150, girth: 270 },
  ],
};
const can = () => ({
  stations: [
    { height: 0, across: 80 },
    { height: 100, across: 80 },
  ],
});

async function refusedWith(typed: Typed) {
  const fault: unknown = await madeOf(typed).catch((error: unknown) => error);
  if (!(fault instanceof Refused)) throw new Error('was not refused');
  return fault.findings.map(({ rule, where }) => [rule, where.key]);
}

describe('refused', () => {
  const steep = (halfAngleDeg: number) => ({
    stations: [
      { height: 0, across: 80 },
      { height: 10, across: 80 + 20 * Math.tan((halfAngleDeg * Math.PI) / 180) },
    ],
  });

  test('a cone so flat that its ring is nearly whole, and not one a little less flat', async () => {
    // 360 sin a = 350 at a = 76.46 degrees.
    const job = { seam: { style: 'butt' }, trim: { lip: 0, foot: 0 } };
    expect((await refusedWith({ blank: steep(77), job }))[0]?.[0]).toBe('sweep-too-wide');
    const { report } = await madeOf({ blank: steep(76), job });
    expectWithin(report.template?.sweepDeg ?? 0, 360 * Math.sin((76 * Math.PI) / 180), 1e-6);
  });

  test('the rim of a pot with a collar, and where on the wall it is', async () => {
    const stations = [
      { height: 0, across: 92 },
      { height: 98, across: 128 },
      { height: 98.5, across: 138 },
      { height: 128, across: 144 },
    ];
    const pot = { use: 'other', wall: 'stepped', stations };
    const fault: unknown = await madeOf({ blank: pot, job: { pieces: 'stacked' } }).catch(
      (error: unknown) => error,
    );
    const [found] = fault instanceof Refused ? fault.findings : [];
    // The body's slant by Pythagoras, and that of the rim.
    const body = Math.hypot(98, 18);
    const rim = body + Math.hypot(0.5, 5);
    expect(found?.says).toContain(`from ${body.toFixed(2)} mm to ${rim.toFixed(2)} mm along`);
    expect(found?.says).toContain('"band"');
  });

  test.each([
    { job: { band: { from: 10, to: 151 } }, found: [['band-outside', 'band.to']] },
    {
      job: { band: { from: 160, to: 170 } },
      found: [
        ['band-outside', 'band.to'],
        ['band-outside', 'band.from'],
      ],
    },
    { job: { band: { from: 10, to: 10.01 } }, found: [['band-too-low', 'band']] },
    { job: { seam: { overlap: 200 } }, found: [['overlap-too-wide', 'seam.overlap']] },
    { job: { trim: { foot: 500 } }, found: [['past-the-point', 'trim.foot']] },
  ])('$job', async ({ job, found }) => expect(await refusedWith({ blank: cup, job })).toEqual(found));

  test('a repeat far wider than the girth', async () => {
    expect(await refusedWith({ blank: can(), tile: leafTile(900, 30) })).toEqual([
      ['no-closing', 'artwork.repeat'],
    ]);
  });
});
