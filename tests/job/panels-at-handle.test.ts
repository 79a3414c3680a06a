// Panels of a wrap that stops on both sides of a handle, the last of them hardly wider than what the handle keeps clear.
import { expect, test } from 'vitest';
import { folderOf } from './a-folder.ts';
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

// A side that stands beside a handle, past the middle of its own panel's turns, was taken for no side at all; and a collar's ends
// stood off by the handle's room at its level edge, where those of wraps do at the middle of what goes around.
test('are proved where the handle takes more than half of one, and collars beside it', async () => {
  const blank = {
    stations: [
      { height: 0, across: 79 },
      { height: 93, across: 56.9 },
    ],
    footRound: 6.4,
    handle: { spans: 61.7, keepOff: 7.6 },
  };
  const panels = { joints: [0.31, 0.66], overlap: 2.7 };
  const { failed } = await folderOf({ blank, job: { panels, collars: {} } });
  expect(failed()).toEqual([]);
});

// The cone of such a piece was sought from the radius that what is kept clear gives, which ends nowhere where that is more than half of the panel.
test('so are those of stacked pieces, on a cone told by their lines alone', async () => {
  const blank = {
    wall: 'stepped',
    stations: [
      { height: 0, across: 45 },
      { height: 25, across: 45 },
      { height: 70, across: 48 },
    ],
    handle: { spans: 38.4, keepOff: 7.6 },
  };
  const { failed, report } = await folderOf({
    blank,
    job: { pieces: 'stacked', panels: { joints: [0.31, 0.66], overlap: 5.5 } },
  });
  expect(report.template?.parts?.length).toBeGreaterThan(1);
  expect(failed()).toEqual([]);
});
