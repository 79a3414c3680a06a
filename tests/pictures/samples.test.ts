// The pictures the README shows, made from the samples as the command makes them.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { draftPieces } from '../../src/job/lay/make.ts';
import { rolledOf } from '../../src/job/pictures/rolled.ts';
import { startTools } from '../../src/job/tools.ts';
import { filesNamed } from '../../src/job/typed/named-files.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { pictureFault } from './compare.ts';

const find = createRequire(import.meta.url).resolve;
const samples = join(import.meta.dirname, '../../samples');
const folder = join(samples, 'pictures');

const tools = await startTools({
  svg: readFileSync(find('@resvg/resvg-wasm/index_bg.wasm')),
  font: readFileSync(
    find('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf'),
  ),
});

const parsed = (file: string): unknown => JSON.parse(readFileSync(file, 'utf8'));

/** A sample's written files and its rolled picture. */
function made(jobFile: string): { guide: string; rolled: string } {
  const job = readJob(parsed(jobFile), jobFile);
  const beside = (file: string) => join(dirname(jobFile), file);
  if (job.blank.kind !== 'file' || !job.artwork) throw new Error(`${jobFile} is not like the samples`);
  const blank = readBlank(parsed(beside(job.blank.file)), job.blank.file);
  const files = new Map(filesNamed(job).map(({ file }) => [file, readFileSync(beside(file))]));
  const [draft] = draftPieces({ job, jobFile, blank, blankFile: job.blank.file, files, tools });
  if (!draft) throw new Error('a job has at least one piece');
  return { guide: draft.guide, rolled: rolledOf([draft], blank, [draft], tools.words) };
}

/** A guide has no ground of its own; a page may be dark. */
const onWhite = (svg: string): string =>
  svg.replace('</title>\n', '</title>\n<rect width="100%" height="100%" fill="#fff"/>\n');

describe.each(['tapered-cup/cup', 'canister/canister', 'pot/pot', 'mug/mug'])('the sample %s', (sample) => {
  const name = dirname(sample);

  test('looks as its pictures show: on the vessel and laid flat', async () => {
    const { guide, rolled } = made(join(samples, `${sample}.job.json`));
    const options = { folder, tolerance: 0.001 };
    expect(await pictureFault(rolled, { ...options, name: `${name}-rolled`, widthPx: 1000 })).toBeUndefined();
    expect(
      await pictureFault(onWhite(guide), { ...options, name: `${name}-guide`, widthPx: 1000 }),
    ).toBeUndefined();
  });
});
