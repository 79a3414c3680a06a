// Every command that writes several files, met by its end at every call that changes the disk.
//
// One run of each takes down what stands on the disk before every such call, and in the middle of every file: that is what a
// run killed there leaves: `faults.test.ts` kills `unroll` in truth (SIGKILL) at every such call, and here `make`, and a list, whose rows
// are made by threads, are killed at one. In each case the old files stand or the new ones, and the next run clears the rest away.
import { cpSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { recover } from '../../src/cli/staging.ts';
import { randomFrom } from '../geometry/drawn.ts';
import { atCall, atCalls, kill } from './at-call.ts';
import { patience, run, Workshop } from './run.ts';

const shop = new Workshop();
afterAll(() => shop.clear());

interface Written {
  readonly name: string;
  /** What it is run with first, and then, into the same folder. */
  readonly older: readonly string[];
  readonly newer: readonly string[];
  /** The seed that draws a call which is met by SIGKILL; none is where there is none. */
  readonly killedBy?: number;
}

for (const [name, overlap] of [
  ['a', 6],
  ['b', 9],
] as const)
  shop.write(`sheets-${name}.job.json`, {
    name: '{name}',
    blank: { stations: [0, 50].map((height) => ({ height, girth: 250 })), use: 'other' },
    artwork: { file: 'dots.svg' },
    seam: { style: 'overlap', overlap },
    sheet: { across: 300, up: 200, margin: 5 },
  });
// A job that is soon made.
for (const overlap of [6, 9])
  shop.write(`plain-${overlap}.job.json`, {
    name: 'cup',
    blank: { stations: [0, 30].map((height) => ({ height, girth: 100 })), use: 'other' },
    seam: { style: 'overlap', overlap },
  });
// Wide, so that few ways to close are drawn.
shop.write('wide.svg', shop.read('dots.svg').replaceAll('40mm', '200mm'));
shop.write('mug.blank.json', { stations: [0, 90].map((height) => ({ height, across: 80 })) });
shop.write('names.csv', 'name\nPebble\nKelp\n');

const commands: readonly Written[] = [
  {
    name: 'make',
    older: ['make', 'plain-6.job.json', '--no-pictures', '--zip'],
    newer: ['make', 'plain-9.job.json', '--no-pictures', '--zip'],
    killedBy: 3,
  },
  {
    name: 'names',
    older: ['names', 'sheets-a.job.json', 'names.csv'],
    newer: ['names', 'sheets-b.job.json', 'names.csv'],
    killedBy: 2,
  },
  {
    name: 'unroll',
    older: ['unroll', 'cup.blank.json'],
    newer: ['unroll', 'cup.blank.json', '--overlap', '9'],
  },
  {
    name: 'collar',
    older: ['collar', 'cup.blank.json', '--along', '40'],
    newer: ['collar', 'cup.blank.json', '--along', '50'],
  },
  {
    name: 'blank',
    older: ['blank', 'cup.blank.json'],
    newer: ['blank', 'mug.blank.json'],
  },
  {
    name: 'repeat',
    older: ['repeat', 'wide.svg', 'cup.blank.json'],
    newer: ['repeat', 'wide.svg', 'cup.blank.json', '--band', '20..110'],
  },
  {
    name: 'inspect',
    older: ['inspect', 'dots.svg', '--mend'],
    newer: ['inspect', 'dots.svg', '--mend', '--art-across', '50'],
  },
  {
    name: 'test-piece',
    older: ['test-piece'],
    newer: ['test-piece', '--paper-size', 'letter'],
  },
];

/** Every file under a folder, with its content; none where it is not there. */
function filesIn(folder: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const names = readdirSync(folder, { recursive: true, withFileTypes: true, encoding: 'utf8' });
  for (const entry of names)
    if (!entry.isDirectory()) {
      const path = join(entry.parentPath, entry.name);
      found.set(path.slice(folder.length + 1), readFileSync(path, 'latin1'));
    }
  return found;
}

/** Names of files that one delivery brings: those of a row together, and those beside the rows together. */
function setsOf(files: ReadonlyMap<string, string>): ReadonlyMap<string, readonly string[]> {
  const sets = new Map<string, string[]>();
  for (const file of files.keys()) {
    const set = file.includes('/') ? file.replace(/\/.*/, '') : '';
    sets.set(set, [...(sets.get(set) ?? []), file]);
  }
  return sets;
}

/** What stands in a folder once it was put right: of each set `old` or `new`, and else what is wrong. */
function standing(folder: string, older: ReadonlyMap<string, string>, newer: ReadonlyMap<string, string>) {
  const found = filesIn(folder);
  const isAs = (wanted: ReadonlyMap<string, string>, names: readonly string[]) =>
    names.every((name) => found.get(name) === wanted.get(name));
  const strange = [...found.keys()].filter((name) => !older.has(name) && !newer.has(name));
  const sets = [...setsOf(newer)].map(([set, names]) => {
    if (isAs(newer, names)) return 'new';
    return isAs(older, setsOf(older).get(set) ?? []) ? 'old' : `a mixture in "${set}"`;
  });
  return { sets, strange };
}

/** What a killed run left is put right as the next run begins by doing: in its folder, and in those of its rows. */
async function putRight(folder: string): Promise<void> {
  await recover(folder);
  for (const entry of readdirSync(folder, { withFileTypes: true }))
    if (entry.isDirectory()) await recover(join(folder, entry.name));
}

const good = [0, 1];

describe.each(commands)('$name', ({ name, older, newer, killedBy }) => {
  test('leaves old files or new ones, whenever it is killed', patience, async () => {
    const into = (words: readonly string[], folder: string) => [...words, '--out', `${name}/${folder}`];
    // Rows are made in threads, into which a hook comes only with a process of its own.
    const alone = name === 'names';
    const ran = (words: readonly string[], folder: string, hook?: string, isAlone = alone) =>
      run(into(words, folder), { cwd: shop.folder, ...(hook === undefined ? {} : { hook, alone: isAlone }) });
    const at = (folder: string) => shop.at(`${name}/${folder}`);
    expect(good).toContain((await ran(older, 'old')).status);
    // As it was before every call of a run: of the one that counts, for rows are made by threads of their own.
    cpSync(at('old'), at('out'), { recursive: true });
    const taken = JSON.stringify(at('at-'));
    const take = `cpSync(${JSON.stringify(at('out'))}, ${taken} + (isRow ? 'row-' : '') + String(count).padStart(3, '0'), { recursive: true })`;
    expect(good).toContain((await ran(newer, 'out', atCalls(take, { inFiles: true }))).status);
    const [old, next] = [filesIn(at('old')), filesIn(at('out'))];
    expect([...next].filter(([file, text]) => old.get(file) !== text).length).toBeGreaterThan(0);

    const ends: string[] = [];
    const moments = readdirSync(shop.at(name))
      .filter((folder) => folder.startsWith('at-'))
      .sort();
    expect(moments.length).toBeGreaterThan(2 * next.size);
    for (const moment of moments) {
      // Any file by itself is whole, before anything is put right.
      const broken = [...filesIn(at(moment))].filter(
        ([file, text]) => !file.includes('.seamwright-') && text !== old.get(file) && text !== next.get(file),
      );
      expect([moment, broken.map(([file]) => file)]).toEqual([moment, []]);
      await putRight(at(moment));
      const { sets, strange } = standing(at(moment), old, next);
      expect([moment, strange]).toEqual([moment, []]);
      for (const set of sets) expect([moment, set]).toEqual([moment, expect.stringMatching(/^(old|new)$/)]);
      ends.push(...sets);
      rmSync(at(moment), { recursive: true });
    }
    expect(new Set(ends)).toEqual(new Set(['old', 'new']));

    // And in truth. Half as many calls as moments, or more: files are looked at in their middles too.
    if (killedBy !== undefined) {
      rmSync(at('out'), { recursive: true });
      cpSync(at('old'), at('out'), { recursive: true });
      const call = 1 + Math.floor((randomFrom(killedBy)() * moments.length) / 2);
      expect([call, (await ran(newer, 'out', atCall(call, kill), true)).status]).toEqual([call, null]);
      expect(good).toContain((await ran(newer, 'out')).status);
      expect(standing(at('out'), old, next)).toEqual({
        sets: [...setsOf(next)].map(() => 'new'),
        strange: [],
      });
    }
  });
});
