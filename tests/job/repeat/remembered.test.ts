// A pattern's repeat is looked for once: another vessel, another way and other units leave it as it is.
import { expect, test } from 'vitest';
import { Recall } from '../../../src/job/recall.ts';
import { describeRepeat } from '../../../src/job/repeat/repeat.ts';
import { readBlank } from '../../../src/job/typed/read-blank.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { pictureEngine } from '../../pictures/compare.ts';
import { leafTile } from '../a-job.ts';

test('artwork is read and studied once for all vessels, and anew when it is another', async () => {
  const { normalise } = await pictureEngine();
  let reads = 0;
  const recall = new Recall();
  const told = (girth: number, artwork: object = {}, keeps: { readonly recall?: Recall } = { recall }) => {
    const named = { file: 'tile.svg', ...artwork };
    const job = readJob({ name: 'test job', blank: 'b.blank.json', artwork: named }, 't.job.json');
    if (!job.artwork) throw new Error('the job has artwork');
    const counted: typeof normalise = (...given) => {
      reads++;
      return normalise(...given);
    };
    const input = {
      job: { ...job, artwork: job.artwork },
      jobFile: 't.job.json',
      blank: readBlank({ stations: [0, 90].map((height) => ({ height, girth })) }, 'b.blank.json'),
      blankFile: 'b.blank.json',
      art: { content: new TextEncoder().encode(leafTile(47, 31)), file: 'tile.svg' },
      units: 'mm' as const,
      normalise: counted,
    };
    const { study, report } = describeRepeat({ ...input, ...keeps });
    return { study, report };
  };
  const first = told(211);
  const once = reads;
  const second = told(252);
  expect(told(252, { way: 2 }).study).toBe(first.study);
  expect(second.study).toBe(first.study);
  expect(reads).toBe(once);
  expect(second.report).toEqual(told(252, {}, {}).report);
  expect(second.report).not.toEqual(first.report);
  const wider = told(252, { across: 60 });
  expect(wider.study).not.toBe(first.study);
  expect(wider.report).toEqual(told(252, { across: 60 }, {}).report);
});
