// Jobs and blanks changed at random: each is read and worked out, or refused in words.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import type { Normalise } from '../../src/artwork/svg/svg-normalise.ts';
import { describeBlank } from '../../src/job/blank/describe-blank.ts';
import { draftPieces } from '../../src/job/lay/make.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { setText } from '../job/a-font.ts';
import { filesOf, leafTile } from '../job/a-job.ts';
import { pictureEngine } from '../pictures/compare.ts';
import { type Attempt, faultOf, patient, seeds } from './fuzz.ts';
import { mutatedJson, pick, randomFrom } from './mutate.ts';

const root = join(import.meta.dirname, '../..');
const parsed = (file: string): object => JSON.parse(readFileSync(join(root, file), 'utf8'));
const blanks = readdirSync(join(root, 'profiles/blanks')).map((file) => parsed(`profiles/blanks/${file}`));
const handle = { spans: 60, keepOff: 5 };
const job = {
  name: 'fuzzed',
  units: 'mm',
  blank: 'b.json',
  band: { from: 12, to: 130 },
  coats: [
    { name: 'base clear', thickness: 0.4 },
    { name: 'top', volume: '12ml', over: true, loss: 0.2 },
  ],
  film: { thickness: 0.08, stretch: 0.02, minWidth: 1, minGap: 0.4, minPiece: 4 },
  artwork: { file: 'tile.svg', repeat: { across: 60, up: 40, drop: 0, shift: 0 }, lay: 'even', around: 5 },
  edges: 'straight',
  seam: { style: 'overlap', overlap: 6 },
  trim: { lip: 3, foot: 3 },
  items: [{ file: 'tile.svg', across: 35, at: { turn: 0.5, along: 70 } }],
  sheet: { across: '12in', up: '24in', margin: 6 },
  batch: 3,
};
const cup = parsed('samples/tapered-cup/cup.blank.json');

let normalise: Normalise;
beforeAll(async () => {
  ({ normalise } = await pictureEngine());
});

/** Try many seeds; those that break something are told with their input. */
async function broken(plain: number, input: (seed: number) => unknown, work: (typed: unknown) => unknown) {
  const faults: Attempt[] = [];
  for (const seed of seeds(plain)) {
    // As JSON can tell it: nothing is `undefined` in a file.
    const typed: unknown = JSON.parse(JSON.stringify(input(seed)) ?? 'null');
    const fault = await faultOf(() => work(typed));
    if (fault !== undefined) faults.push({ seed, input: JSON.stringify(typed).slice(0, 1500), fault });
  }
  return faults;
}

const several = (value: unknown, seed: number): unknown => {
  const random = randomFrom(seed);
  let changed = value;
  for (let i = 0; i <= random() * 3; i++) changed = mutatedJson(changed, random);
  return changed;
};

test('blanks', patient, async () => {
  const faults = await broken(
    1000,
    (seed) =>
      several(
        {
          ...pick(randomFrom(seed), blanks),
          ...(seed % 3 === 0 ? { handle } : {}),
          ...(seed % 5 === 0 ? { fits: [{ foot: 2, lip: -1, climb: 0 }] } : {}),
        },
        seed,
      ),
    (typed) => describeBlank(readBlank(typed, 'b.json'), 'b.json', 'mm'),
  );
  expect(faults).toEqual([]);
});

test('jobs', patient, async () => {
  const files = filesOf({ 'tile.svg': leafTile(60, 40) });
  const faults = await broken(
    150,
    (seed) => several({ job, blank: seed % 4 === 0 ? pick(randomFrom(seed), blanks) : cup }, seed),
    (typed) => {
      const both = typed as { job?: unknown; blank?: unknown } | null;
      const blank = readBlank(both?.blank ?? null, 'b.json');
      const read = readJob(both?.job ?? null, 'j.json');
      // A repeat typed far too small asks for as many lines as a large drawing: `tests/job/numbers` has that, with its limit.
      if ((read.artwork?.around ?? 0) > 100) return undefined;
      return draftPieces({
        job: read,
        jobFile: 'j.json',
        blank,
        blankFile: 'b.json',
        files,
        tools: { normalise, words: () => [], setText },
      });
    },
  );
  expect(faults).toEqual([]);
});

// Slivers at the edges were looked for as deep as such a piece is long: 80 m of pattern, which never came to an end.
test('film that asks for pieces larger than the vessel, or for next to no width', patient, async () => {
  const files = filesOf({ 'tile.svg': leafTile(60, 40) });
  const blank = readBlank(cup, 'b.json');
  for (const film of [{ minPiece: 40_000 }, { minPiece: 1e6 }, { minWidth: 0.001 }]) {
    const typed = { name: 'fuzzed', blank: 'b.json', artwork: { file: 'tile.svg', around: 5 }, film };
    const options = { jobFile: 'j.json', blank, blankFile: 'b.json', files };
    const work = () =>
      draftPieces({
        ...options,
        job: readJob(typed, 'j.json'),
        tools: { normalise, words: () => [], setText },
      });
    expect([film, await faultOf(work)]).toEqual([film, undefined]);
  }
});

test('readings that are none: a step of metres in a few cm, two girths a hair apart', async () => {
  const steps = [68, 7200, 92, 98].map((across, i) => ({ height: [0, 70, 82, 180][i], across }));
  const stepped = { stations: steps, wall: 'stepped' };
  const barrel = [84, 97, 101, 84].map((across, i) => ({ height: [0, 1e-300, 60, 120][i], across }));
  const close = { stations: barrel, wall: 'smooth' };
  // The first took 17 s of processor time, for all runs of places a quarter of a mm apart; the second closed "NaN mm up it".
  for (const typed of [stepped, close])
    expect(await faultOf(() => describeBlank(readBlank(typed, 'b.json'), 'b.json', 'mm'))).toBeUndefined();
});
