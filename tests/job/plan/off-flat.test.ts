import { expect, test } from 'vitest';
import { parseLength } from '../../../src/lengths/length.ts';
import { toldIn } from '../../../src/lengths/told-in.ts';
import { madeOf } from '../a-job.ts';

const mm = (inches: string): number => {
  const length = parseLength(`${inches}in`, { units: 'in', bare: 'text-too' });
  return length.ok ? length.mm : Number.NaN;
};

// A maker who types back what was told has done enough, whatever its last digit was rounded to.
test.each([2, 3, 4.5, 6, 7.3, 9.9])(
  'a band typed as it was told beside a round of %s mm is off it, in mm and in inches',
  async (footRound) => {
    const vessel = {
      use: 'other',
      reading: 0.1,
      footRound,
      lipRound: footRound / 3,
      stations: [
        { height: 0, across: 62 },
        { height: 150, across: 86 },
      ],
    };
    const foundIn = async (band: { from: number; to: number }) =>
      (await madeOf({ blank: vessel, job: { band } })).report.checks.find(({ rule }) => rule === 'off-flat')
        ?.says;
    const says = (await foundIn({ from: 0.5, to: 150.4 })) ?? '';
    for (const units of ['mm', 'in'] as const) {
      const [, from = '', to = ''] = /within ([\d.]+) \w+ to ([\d.]+)/.exec(toldIn(says, units)) ?? [];
      const asTold = units === 'mm' ? { from: Number(from), to: Number(to) } : { from: mm(from), to: mm(to) };
      expect(asTold.to).toBeGreaterThan(100);
      expect(await foundIn(asTold)).toBeUndefined();
    }
  },
);
