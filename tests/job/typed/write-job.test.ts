// A resolved job and blank written, read again and made again: nothing may be lost or moved on the way.
import { describe, expect, test } from 'vitest';
import { readBlank } from '../../../src/job/typed/read-blank.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { blankContent, jobContent } from '../../../src/job/typed/write-job.ts';
import { leafTile, madeOf } from '../a-job.ts';

const blank = {
  name: 'canister',
  units: 'in',
  stations: [
    { height: 0, across: '3 3/8in' },
    { along: 4, girth: '269.31mm' },
  ],
  footRound: '3/16in',
  reading: '1/32in',
  heightReading: 0.01,
  tape: '0.1mm',
  handle: { spans: 2, keepOff: 0.25 },
};

describe('a blank that is written and read again', () => {
  test('is the same blank, to the last bit', () => {
    const read = readBlank(blank, 'b');
    const text = JSON.stringify(blankContent(read));
    expect(readBlank(JSON.parse(text), 'b')).toEqual(read);
  });
});

describe('a job that is written and read again', () => {
  const job = {
    name: 'everything',
    units: 'in',
    blank: 'b.blank.json',
    band: { from: 0.5, to: '3 7/8in' },
    coats: [{ thickness: '0.2mm' }, { name: 'gloss', thickness: 0.01, over: true }],
    film: { thickness: '0.09mm', stretch: 0.02, minWidth: '1mm', minGap: '0.4mm', minPiece: 3 },
    artwork: {
      file: 'tile.svg',
      repeat: { across: 1.75, up: '1 3/16in', drop: 0.5 },
      lay: 'conformal',
      around: 6,
      scale: 'across',
    },
    edges: 'whole-rows',
    seam: { style: 'overlap', overlap: 0.25 },
    trim: { lip: 0, foot: '1/8in' },
    sheet: { across: 12, up: 24, margin: 0.25 },
  };

  test.each([
    ['with every key', job],
    ['with a lattice', { ...job, artwork: { file: 'tile.svg', repeat: { a: [1, 0.1], b: [-0.2, '1in'] } } }],
    ['with a butt seam and no artwork', { name: 'plain', blank: 'b.blank.json', seam: { style: 'butt' } }],
  ])('is the same job but for its unit: %s', (_, content) => {
    const read = readJob(content, 'j');
    const text = JSON.stringify(jobContent(read, 'b.blank.json'));
    expect(readJob(JSON.parse(text), 'j')).toEqual({ ...read, units: 'mm' });
  });

  test.each([
    ['a repeat that closes level', { repeat: {} }],
    // Half a row of 3 mm either way: two ways to lean, equally far, of which one was taken.
    ['a half drop that leans, where two ways are equally near', { repeat: { across: 20, up: 6, drop: 3 } }],
    ['a slanted lattice', { repeat: { a: [31, 8], b: [-8, 31] } }],
    ['a lattice that goes around by its second step', { repeat: { a: [8, 31], b: [31, -8] } }],
    ['a shift and a drop together', { repeat: { across: 30, up: 24, drop: 5, shift: 7 } }],
  ])('closes the same way when it is made again: %s', async (_, artwork) => {
    const can = {
      stations: [
        { height: 0, across: 82.68 },
        { height: 60, across: 82.68 },
      ],
    };
    const first = await madeOf({ blank: can, tile: leafTile(20, 6), artwork });
    const { artwork: kept, ...rest } = JSON.parse(JSON.stringify(jobContent(first.draft.job, 'b')));
    const again = await madeOf({
      blank: blankContent(first.blank),
      job: rest,
      artwork: kept,
      tile: leafTile(20, 6),
    });
    expect(again.report.pattern?.closes).toEqual(first.report.pattern?.closes);
    expect(again.draft.cut).toBe(first.draft.cut);
  });
});
