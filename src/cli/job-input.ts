// A job and its blank from their files.
import { basename, dirname, isAbsolute, join } from 'node:path';
import { type Blank, readBlank } from '../job/read-blank.ts';
import { readJob } from '../job/read-job.ts';
import { parseJson } from '../job/read-json.ts';
import { materialFiles } from '../job/read-material.ts';
import type { Job } from '../job/resolved-job.ts';
import { readText } from './files.ts';

export interface GivenJob {
  readonly job: Job;
  readonly blank: Blank;
  /** How the job names it, or the job's own name where the blank is given in it. */
  readonly blankFile: string;
  /** The path of a file that the job names. */
  readonly beside: (file: string) => string;
}

/** The job that a parsed file holds, with the files it names. @throws Refused */
export async function givenJob(typed: unknown, jobFile: string): Promise<GivenJob> {
  const beside = (file: string) => (isAbsolute(file) ? file : join(dirname(jobFile), file));
  const named: Record<string, unknown> = {};
  for (const { key, file } of materialFiles(typed))
    named[file] = parseJson(await readText(beside(file), file, { file: jobFile, key }), file);
  const job = readJob(typed, jobFile, named);
  if (job.blank.kind === 'here') return { job, blank: job.blank.blank, blankFile: basename(jobFile), beside };
  const { file } = job.blank;
  const text = await readText(beside(file), file, { file: jobFile, key: 'blank' });
  return { job, blank: readBlank(parseJson(text, file), file), blankFile: file, beside };
}
