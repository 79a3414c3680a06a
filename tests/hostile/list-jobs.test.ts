// Jobs with lists at random: each row is left out in words before anything is written, or made as it would be alone, and proved with the sheets it shares.
import { expect, test } from 'vitest';
import { type Attempt, faultOf, patient, seeds } from './fuzz.ts';
import { type ListJob, listJob } from './list-jobs.ts';
import { listMade } from './made-list.ts';

/** A row alone may take a while; `listMade` holds each to its own time. */
const anyTime = Number.POSITIVE_INFINITY;

/** The first lists of the plain run are light ones. */
const lightFrom = 245;

test('lists of every kind are left out row by row in words, or made and proved', patient, async () => {
  const faults: Attempt[] = [];
  for (const seed of seeds(3)) {
    const typed = listJob(lightFrom + seed);
    const fault = await faultOf(async () => {
      const { faults: found } = await listMade(typed);
      if (found.length > 0) throw new Error(found.join('; '));
    }, anyTime);
    if (fault !== undefined) faults.push({ seed, input: JSON.stringify(typed.job), fault });
  }
  expect(faults).toEqual([]);
});

const cup = {
  stations: [
    { height: 0, across: 80 },
    { height: 90, across: 80 },
  ],
  use: 'other',
};
const named = (job: object, rows: string): ListJob => ({
  job: { name: 'a cup', blank: cup, ...job },
  list: `name\n${rows}`,
  files: {},
});
const letters = { text: '{name}', capHeight: 10, at: { turn: 0.5, along: 40 } };

// It used to keep the pieces of all of them off, without a word.
test('a name that fits no sheet is told, and keeps the pieces of no other vessel off theirs', async () => {
  const sheet = { across: 200, up: 150, margin: 5 };
  const list = named({ lettering: [letters], sheet }, `Ada\n${'Maximiliane '.repeat(4)}\nBo\n`);
  const { made, sheets, faults, told } = await listMade(list);
  expect([made, sheets, faults]).toEqual([3, 1, []]);
  expect(told.map((rules) => rules.includes('sheet-too-small'))).toEqual([false, true, false]);
});

// Files of other rows used to be written before these were refused.
test.each([
  ['gores under lettering', { lettering: [letters], pieces: 'gores', seam: { style: 'butt' } }, /on gores/],
  [
    'a mask that is wider than its wall',
    { lettering: [letters], mask: { covers: 'lip', standOff: 90 } },
    /does not hold together/,
  ],
  ['a colour that nothing has', { lettering: [letters], layers: { order: ['#123456'] } }, /is no colour/],
])('%s is found before anything is written', async (_, job, says) => {
  const { made, refused, faults } = await listMade(named(job, 'Ada\n'));
  expect([made, faults]).toEqual([0, []]);
  expect(refused.join()).toMatch(says);
});
