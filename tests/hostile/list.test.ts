// Lists changed at random: each is read, row by row, or refused in words; what is read fills a job that is read or refused.
import { expect, test } from 'vitest';
import { filled } from '../../src/job/typed/list-columns.ts';
import { jobKeys, readJob } from '../../src/job/typed/read-job.ts';
import { readList } from '../../src/job/typed/read-list.ts';
import { type Attempt, faultOf, patient, seeds } from './fuzz.ts';
import { pick, type Random, randomFrom } from './mutate.ts';

const lists: readonly string[] = [
  'name,girth\nAnna,270.2\nBo,269\nCy,"268 mm"\n',
  '\uFEFFname;girth\r\nAnna;"270,2"\r\n;;\r\nBo;269\r\n',
  'sep=|\r\nname|girth\r\nAnna|1\r\n"B\r\no"|2\r\n',
  'name\tgirth\tnote\nÅsa\t270\t"a ""word"" more"\n🐚\t269\t\n',
];
const strange = [
  '"',
  '""',
  ',',
  ';',
  '\t',
  '\n',
  '\r',
  '\u0000',
  '\uFEFF',
  '{name}',
  '=1+1',
  '1e308',
  'NaN',
  '\u202e',
  '9'.repeat(300),
];
const job = {
  name: '{name}',
  blank: {
    stations: [
      { height: 0, across: 62 },
      { height: 150, girth: '{girth}' },
    ],
  },
  lettering: [{ text: '{name}', capHeight: '{girth}', at: { turn: 0.5, along: 60 } }],
};

/** A text with something put in, taken out or said again at a place. */
function changed(text: string, random: Random): string {
  const at = Math.floor(random() * (text.length + 1));
  const to = at + Math.floor(random() * 6);
  return (
    text.slice(0, at) +
    pick(random, [pick(random, strange), '', text.slice(at, to).repeat(3)]) +
    text.slice(to)
  );
}

test('lists changed at random are read or refused in words', patient, async () => {
  const faults: Attempt[] = [];
  for (const seed of seeds(600)) {
    const random = randomFrom(seed);
    let text = pick(random, lists);
    for (let i = 0; i <= random() * 4; i++) text = changed(text, random);
    const fault = await faultOf(() => {
      const list = readList(text, 'list.csv');
      for (const row of list.rows) expect(row.cells).toHaveLength(list.columns.length);
      expect(new Set([...list.rows, ...list.refused].map(({ line }) => line)).size).toBe(
        list.rows.length + list.refused.length,
      );
      for (const row of list.rows) readJob(filled(job, jobKeys, row, list), 'a.job.json');
    });
    if (fault !== undefined) faults.push({ seed, input: text.slice(0, 3000), fault });
  }
  expect(faults).toEqual([]);
});
