// What the job sheet tells of pieces: a panel is as wide as itself, not as the vessel is around.
import { expect, test } from 'vitest';
import { piecesOfDrafts } from '../../../src/job/sheets/sheet-pieces.ts';
import { expectWithin } from '../../closeness.ts';
import { dotTile, madeOf } from '../a-job.ts';

const girth = 300;

test('panels are told by how far each goes around, and all of them go around once', async () => {
  const { drafts } = await madeOf({
    blank: {
      use: 'other',
      stations: [
        { height: 0, girth },
        { height: 60, girth: 330 },
      ],
    },
    tile: dotTile(20, 20),
    job: { sheet: { across: 150, up: 200, margin: 5 }, film: { thickness: 0 } },
  });
  expect(drafts.length).toBeGreaterThan(1);
  const rows = piecesOfDrafts(drafts, [], 'mm', true);
  const told = rows.map(({ size }) =>
    (/^([\d.]+) mm around at the foot edge, ([\d.]+) mm at the lip edge, without overlap$/.exec(size) ?? [])
      .slice(1)
      .map(Number),
  );
  const sum = (end: number) => told.reduce((all, one) => all + (one[end] ?? Number.NaN), 0);
  // Each is told to a tenth.
  expectWithin(sum(0), girth, 0.05 * rows.length + 0.01);
  expectWithin(sum(1), 330, 0.05 * rows.length + 0.01);
});
