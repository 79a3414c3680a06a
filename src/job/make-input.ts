// What a job is made from.
import type { Blank } from '../blank/blank.ts';
import type { FileBytes } from './named-files.ts';
import type { Recall } from './recall.ts';
import type { Job } from './resolved-job.ts';
import type { JobTools } from './tools.ts';
import type { TypedIn } from './typed-at.ts';

export interface MakeInput {
  readonly job: Job;
  readonly jobFile: TypedIn;
  readonly blank: Blank;
  readonly blankFile: TypedIn;
  /** The files that the job names (`filesNamed`). */
  readonly files: FileBytes;
  /** A plain template: it decorates nothing yet. */
  readonly plain?: boolean;
  /** Whether the film's checks before the blade are left out: for a drawing that follows what is being typed. */
  readonly unchecked?: boolean;
  /** What is worked out once for several jobs that have it in common; left out, nothing is kept. */
  readonly recall?: Recall;
  readonly tools: Pick<JobTools, 'normalise' | 'words' | 'setText'>;
}
