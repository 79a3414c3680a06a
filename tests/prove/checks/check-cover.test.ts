import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { proofOfDrafts } from '../../../src/job/proof/proof.ts';
import { widestBare } from '../../../src/prove/checks/check-cover.ts';
import { expectWithin } from '../../closeness.ts';
import { folderOf } from '../../job/a-folder.ts';
import { madeOf } from '../../job/a-job.ts';

const handle = { spans: 40, keepOff: 4 };
const cup = (keepOff: number) => ({
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 150, girth: 270.2 },
  ],
  handle: { ...handle, keepOff },
});

// The sides of a piece are parallel to the line up the wall. On a cup that tapers much, with a wide handle, they stand up to 0.06 mm
// further off around the wall than across: that was once told as wall left bare.
test('beside a wide handle of a cup that tapers much the band is covered, and 0.2 mm more is not', async () => {
  const { drafts, draft, proof } = await madeOf({ blank: cup(4), job: { film: { thickness: 0 } } });
  expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
  const { blank } = await madeOf({ blank: cup(3.8), job: { film: { thickness: 0 } } });
  const files = [{ stem: 'wrap', cut: draft.cut, guide: draft.guide }];
  const failed = proofOfDrafts(drafts, blank, files).checks.filter(({ pass }) => !pass);
  expect(failed.map(({ rule }) => rule)).toContain('coverage');
});

// Its 150 mm sides bend once rolled, by 0.02 mm between 16 places: the chords were told as wall left bare.
test('beside a handle of a very steep cup the band is covered', async () => {
  const stations = [
    { height: 4, across: 68.44 },
    { height: 150.2, across: 142.46 },
  ];
  const { proof } = await madeOf({ blank: { use: 'other', stations, handle: { spans: 22.27, keepOff: 5 } } });
  expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
});

// Less than half a micrometre at each of 36 joints: their sum was told as the widest.
test('36 gores of the bowl of a wine glass are held by the widest gap between two, and by their lap at the seam', async () => {
  const wineGlass = JSON.parse(
    readFileSync(join(import.meta.dirname, '../../../profiles/blanks/wine-glass-bowl.blank.json'), 'utf8'),
  ) as object;
  const job = { pieces: 'gores', gores: 36, trim: { lip: 4.2, foot: 0.9 } };
  const { failed } = await folderOf({ blank: wineGlass, job });
  expect(failed()).toEqual([]);
});

test('the widest of what stretches leave bare is told, across turn 0 too', () => {
  expectWithin(
    widestBare(
      [
        [0.1, 0.4],
        [0.45, 0.9],
        [0.93, 1.02],
      ],
      [0, 1],
    ),
    0.08,
    1e-12,
  );
  expectWithin(
    widestBare(
      [
        [0.06, 0.4],
        [0.5, 0.9],
        [0.93, 1.03],
      ],
      [0, 1],
    ),
    0.1,
    1e-12,
  );
  expectWithin(widestBare([], [0, 1]), 1, 1e-12);
});
