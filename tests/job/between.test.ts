// What is made of written pieces takes seconds a step: whoever runs it is let in between.
import { expect, test } from 'vitest';
import { folderOf } from './a-folder.ts';

const blank = { stations: [0, 50].map((height) => ({ height, girth: 250 })), use: 'other' };

test('is let in after the proof, after the sheets and after the pictures, and may end it there', async () => {
  let times = 0;
  const counted = async (): Promise<void> => void times++;
  await folderOf({ blank }, { between: counted });
  expect(times).toBe(3);
  const ends = (): Promise<void> => Promise.reject(new Error('ended'));
  await expect(folderOf({ blank }, { between: ends })).rejects.toThrow('ended');
});

test('says what is done next, in the order of the work', async () => {
  const tile =
    '<svg xmlns="http://www.w3.org/2000/svg" width="25mm" height="25mm"><circle cx="12" cy="12" r="6"/></svg>';
  const said: string[] = [];
  await folderOf({ blank, tile, next: (says) => said.push(says) });
  expect(said).toEqual([
    'reading the artwork',
    'laying the pattern',
    'looking the film over',
    'proving the files',
    'reckoning what is weeded',
    'writing the report',
    'writing the job sheet',
  ]);
});
