// A job and its blank from what stands in their files, whoever fetches those.
import { type Blank, blankKeys, readBlank } from './read-blank.ts';
import { jobKeys, readJob } from './read-job.ts';
import { parseJson } from './read-json.ts';
import { materialFiles } from './read-material.ts';
import type { Job } from './resolved-job.ts';
import type { Keys } from './schema.ts';

/** Gives the text of a file that the job names at a key. @throws Refused where it can't be read. */
export type FetchText = (file: string, key: string) => Promise<string>;

/** Gives a parsed file with its columns filled; `keys` are those of the file's own object. */
export type Fill = (value: unknown, keys: Keys, file: string) => unknown;

const asTyped: Fill = (value) => value;

export interface GivenJob {
  readonly job: Job;
  readonly blank: Blank;
  /** How the job names it; undefined where the blank is given in the job. */
  readonly blankFile: string | undefined;
}

/** The job that a parsed file holds, with the files it names. @throws Refused */
export async function givenJob(
  typed: unknown,
  jobFile: string,
  fetchText: FetchText,
  fill: Fill = asTyped,
): Promise<GivenJob> {
  const value = fill(typed, jobKeys, jobFile);
  const named: Record<string, unknown> = {};
  for (const { key, file } of materialFiles(value)) named[file] = parseJson(await fetchText(file, key), file);
  const job = readJob(value, jobFile, named);
  if (job.blank.kind === 'here') return { job, blank: job.blank.blank, blankFile: undefined };
  const { file } = job.blank;
  const blank = fill(parseJson(await fetchText(file, 'blank'), file), blankKeys, file);
  return { job, blank: readBlank(blank, file), blankFile: file };
}
