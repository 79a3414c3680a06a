import { expect, test } from 'vitest';
import { knifePictures } from '../../../src/job/pictures/knife-picture.ts';
import { standardCutter } from '../../../src/job/typed/material.ts';
import { madeOf } from '../a-job.ts';

// The axis of a corrected file was once drawn beside lines that were not: 0.4 % is 1 mm at the end of a wrap.
test('the knife is shown on the lines it cuts, whatever its files are corrected by', async () => {
  const { draft } = await madeOf({
    blank: {
      use: 'other',
      stations: [
        { height: 0, across: 60 },
        { height: 60, across: 70 },
      ],
    },
  });
  const knife = { ...standardCutter, knifeOffset: 0.25, compensate: true };
  const tools = { words: () => [], onWhite: () => ({ width: 1, height: 1, rgb: new Uint8Array(3) }) };
  const piece = { stem: 'wrap', cut: draft.cut, guide: draft.guide };
  const [plain] = knifePictures(piece, knife, tools);
  const [corrected] = knifePictures(
    piece,
    { ...knife, measured: { drawn: 150, across: 149.4, up: 150.15 } },
    tools,
  );
  expect(plain?.content).toContain('<svg');
  expect(corrected?.content).toBe(plain?.content);
});
