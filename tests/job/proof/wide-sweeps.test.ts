// Bowls that open so wide that they lie flat as nearly a whole ring: what is left empty of it lies between the laps, not across from half a turn.
import { expect, test } from 'vitest';
import { leafTile, madeOf } from '../a-job.ts';

/** A bowl of this sine of the half angle, 60 mm across at the foot and 40 mm high: its sheet sweeps 360 degrees times it. */
const bowl = (sine: number, more: object = {}) => ({
  use: 'other',
  stations: [
    { height: 0, across: 60 },
    { height: 40, across: 60 + (80 * sine) / Math.sqrt(1 - sine * sine) },
  ],
  ...more,
});

// All of these failed: the proof took what lay past the middle of the wedge for the other side of the sheet, and a lap of 24 mm lost a leaf
// that only its tip reached, for the engine did the same.
test.each([
  { sweep: 306, says: 'a wide lap', job: { seam: { style: 'overlap', overlap: 24 } }, blank: {} },
  { sweep: 324, says: 'a lap under the start', job: { seam: { overlap: 14, top: 'start' } }, blank: {} },
  { sweep: 338.4, says: 'a usual lap', job: {}, blank: {} },
  { sweep: 338.4, says: 'three panels', job: { panels: { joints: [0.31, 0.66] } }, blank: {} },
  { sweep: 338.4, says: 'a wide cover strip', job: { seam: { style: 'strip', strip: 24 } }, blank: {} },
  { sweep: 306, says: 'a handle', job: {}, blank: { handle: { spans: 30, keepOff: 5 } } },
])('$says on a sheet that sweeps $sweep degrees is proved', async ({ sweep, job, blank }) => {
  const { proof } = await madeOf({ blank: bowl(sweep / 360, blank), job, tile: leafTile(40, 30) });
  expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
});
