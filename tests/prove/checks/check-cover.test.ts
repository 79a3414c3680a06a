import { expect, test } from 'vitest';
import { proofOfDrafts } from '../../../src/job/proof/proof.ts';
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
