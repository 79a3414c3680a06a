// The job and its blank from what lies on the bench, by the readers that the command line reads files with.
import type { MakeInput } from '../../job/make-input.ts';
import { type FileBytes, textOf } from '../../job/typed/named-files.ts';
import { type Blank, readBlank } from '../../job/typed/read-blank.ts';
import { readJob } from '../../job/typed/read-job.ts';
import { parseJson } from '../../job/typed/read-json.ts';
import { materialFiles } from '../../job/typed/read-material.ts';
import type { BenchAsked } from '../model/messages.ts';

/** A bench by what is typed. */
type Typed = Omit<BenchAsked, 'files'>;

/** @throws Refused with every problem of the blank, each with its key. */
export const givenBlank = ({ blank, blankFile }: Typed): Blank => readBlank(blank, blankFile);

/** @throws Refused with every problem of the job, or else of its blank. */
export function givenJob(bench: Typed, files: FileBytes): Omit<MakeInput, 'tools'> {
  const named = Object.fromEntries(
    materialFiles(bench.job).map(({ file }) => [file, parseJson(textOf(files, file), file)]),
  );
  const job = readJob(bench.job, bench.jobFile, named);
  return { job, jobFile: bench.jobFile, blank: givenBlank(bench), blankFile: bench.blankFile, files };
}
