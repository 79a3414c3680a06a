// Whole jobs put together at random: each is refused in words, or made with a proof of its folder that passes.
import { expect, test } from 'vitest';
import { folderOf } from '../job/a-folder.ts';
import type { Typed } from '../job/a-job.ts';
import { type Attempt, faultOf, patient, rounds, seeds } from './fuzz.ts';
import { unprovedOf } from './unproved.ts';
import { wholeJob } from './whole-jobs.ts';
import { widerJob } from './wider-jobs.ts';

/** The first jobs of the plain run are light ones, of each outcome. */
const lightFrom = 30;
const jobOf = (seed: number) => wholeJob(lightFrom + seed);

/** What is not as it should be of a job that was made, in words. */
async function unproved(typed: Typed): Promise<readonly string[]> {
  const { prove, report } = await folderOf(typed, { search: { trials: 300 } });
  return unprovedOf(report, prove());
}

/** What is wrong with jobs of some seeds. */
async function faultsOf(some: readonly number[], make: (seed: number) => Typed): Promise<readonly Attempt[]> {
  const faults: Attempt[] = [];
  for (const seed of some) {
    const typed = make(seed);
    const fault = await faultOf(async () => {
      const found = await unproved(typed);
      if (found.length > 0) throw new Error(found.join('; '));
    });
    if (fault !== undefined) faults.push({ seed, input: JSON.stringify(typed.job), fault });
  }
  return faults;
}

const plain = 6;

test('jobs of every kind are refused in words, or made and proved', patient, async () => {
  expect(await faultsOf(seeds(plain), jobOf)).toEqual([]);
});

// Half a minute of jobs that few makers give: on request, as many as of the others.
test.runIf(rounds(plain) > plain)('and those of the rarer keys', patient, async () => {
  expect(await faultsOf(seeds(plain), widerJob)).toEqual([]);
});
