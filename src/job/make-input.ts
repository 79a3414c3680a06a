// What a job is made from.
import type { Tile } from '../artwork/tile.ts';
import type { Blank } from '../blank/blank.ts';
import type { ChosenWay } from './closing/choose-way.ts';
import type { Recall } from './recall.ts';
import type { JobTools } from './tools.ts';
import type { FileBytes } from './typed/named-files.ts';
import type { Job } from './typed/resolved-job.ts';
import type { TypedIn } from './typed/typed-at.ts';

export interface ChosenArt {
  readonly tile: Tile;
  readonly chosen: ChosenWay;
}

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
  /** Whether only what the guide shows on the piece is wanted: then nothing is put in order for the blade, told in words beside it or written to be cut. */
  readonly linesOnly?: boolean;
  /** Artwork that was read already, and the way it is laid by: its file and what the job says of ways are then not looked at. */
  readonly chosen?: ChosenArt;
  /** What is worked out once for several jobs that have it in common; left out, nothing is kept. */
  readonly recall?: Recall;
  /** Told what is done next, before each of the longer steps. */
  readonly next?: (says: string) => void;
  readonly tools: Pick<JobTools, 'normalise' | 'words' | 'setText' | 'fonts'>;
}
