// A job and its blank from their files.
import { basename, dirname, isAbsolute, join } from 'node:path';
import { type GivenJob as Given, givenJob as jobFrom } from '../job/typed/given-job.ts';
import { readText } from './files.ts';

export interface GivenJob extends Given {
  /** How the job names it, or the job's own name where the blank is given in it. */
  readonly blankFile: string;
  /** The path of a file that the job names. */
  readonly beside: (file: string) => string;
}

/** The path of a file that a job names. */
export const besideJob =
  (jobFile: string) =>
  (file: string): string =>
    isAbsolute(file) ? file : join(dirname(jobFile), file);

/** The job that a parsed file holds, with the files it names. @throws Refused */
export async function givenJob(typed: unknown, jobFile: string): Promise<GivenJob> {
  const beside = besideJob(jobFile);
  const given = await jobFrom(typed, jobFile, (file, key) =>
    readText(beside(file), file, { file: jobFile, key }),
  );
  return { ...given, blankFile: given.blankFile ?? basename(jobFile), beside };
}
