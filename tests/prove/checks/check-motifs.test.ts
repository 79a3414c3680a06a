// Motifs cut apart on a wall that steps: each is held against the stretch that it was laid on, however near the next begins.
import { expect, test } from 'vitest';
import { folderOf } from '../../job/a-folder.ts';
import { leafTile } from '../../job/a-job.ts';

const cup = {
  use: 'other',
  wall: 'stepped',
  stations: [
    { height: 0, across: 68 },
    { height: 70, across: 72 },
    { height: 82, across: 92 },
    { height: 180, across: 98 },
  ],
};
const length = (up: number, out: number) => Math.hypot(up, out);
const corner = length(70, 2);
const lip = corner + length(12, 10) + length(98, 3);

const made = (along: number) =>
  folderOf({
    blank: cup,
    files: { 'leaf.svg': leafTile(40, 30) },
    job: { items: [{ file: 'leaf.svg', across: 30, at: { turn: 0.3, along } }] },
  });

// The slope was taken over half a millimetre up and down the wall, across the corner or past the lip.
test.each([
  ['under a corner', corner - 0.2],
  ['on it', corner],
  ['over it', corner + 0.2],
  ['at the lip', lip - 0.1],
])('a motif %s is level on its own stretch', async (_, along) => {
  expect((await made(along)).failed()).toEqual([]);
});

test('one that is laid on another stretch than its own is named', async () => {
  const [low, high] = await Promise.all([made(corner - 2), made(corner + 2)]);
  const guide = { 'item-1.guide.svg': low.texts['item-1.guide.svg'] ?? '' };
  expect(high.failed({ ...guide, 'item-1.cut.svg': low.texts['item-1.cut.svg'] ?? '' })).toContain(
    'motif-level',
  );
});
