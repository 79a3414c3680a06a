// Bands of a millimetre or two: what the seam lines are written to must hold across a piece a hundred times as wide as they are long.
import { expect, test } from 'vitest';
import { expectAtMost } from '../../closeness.ts';
import { madeOf } from '../a-job.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 150, girth: 270.2 },
  ],
};
const ledge = {
  use: 'other',
  wall: 'stepped',
  stations: [
    { height: 0, across: 80 },
    { height: 60, across: 96 },
    { height: 62, across: 106 },
    { height: 90, across: 110 },
  ],
};

// Written to a ten thousandth of a mm they turned the first by 0.010 mm at its far end, and made the ledge of the second 0.012 mm too wide.
test.each([
  { says: 'a band 1.5 mm high', blank: cup, job: { band: { from: 60, to: 61.5 } } },
  { says: 'a stack with a steep ledge of 5.4 mm', blank: ledge, job: { pieces: 'stacked' } },
])('$says is proved to a tenth of the precision', async ({ blank, job }) => {
  const { proof } = await madeOf({ blank, job });
  expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
  for (const { rule, value } of proof.checks)
    if (['finished-edges', 'outline', 'seam-lines', 'fits-wall'].includes(rule)) expectAtMost(value, 0.001);
});
