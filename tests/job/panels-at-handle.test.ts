// Panels of a wrap that stops on both sides of a handle, the last of them hardly wider than what the handle keeps clear.
import { expect, test } from 'vitest';
import { madeOf } from './a-job.ts';

test('are proved as far as they go: what lies in the waste beside the handle is no repeat', async () => {
  const blank = {
    stations: [
      { height: 4, across: 122.06 },
      { height: 89.11, across: 157.44 },
    ],
    handle: { spans: 34.55, keepOff: 5 },
  };
  const bars = `<svg xmlns="http://www.w3.org/2000/svg" width="55mm" height="12mm" viewBox="0 0 55 12"><path d="M0 3H55V6H0Z"/></svg>`;
  const panels = { joints: [0.25, 0.5, 0.78], overlap: 4 };
  const { proof } = await madeOf({ blank, job: { panels }, artwork: { around: 8 }, tile: bars });
  expect(proof.checks.filter(({ pass }) => !pass).map(({ rule }) => rule)).toEqual([]);
});
