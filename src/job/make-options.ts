// What `make` is to deliver, and where.
import type { MakeInput } from './make-input.ts';
import type { NestSearch } from './sheets/nest-sheets.ts';
import type { JobTools } from './tools.ts';
import type { Paper } from './typed/print-paper.ts';

export interface MakeFilesInput extends MakeInput {
  readonly tools: JobTools;
}

export interface MakeOptions {
  /** Whether the finished vessel is drawn. */
  readonly pictures: boolean;
  /** Paper of the prints; none are made without it. */
  readonly paper?: Paper | undefined;
  /** How long the sheets are searched for; a second or two if it is left out. */
  readonly search?: NestSearch;
  /** Whether sheets are laid for these vessels alone; `shared`: they are laid with others, by whoever makes those too. */
  readonly sheets?: 'own' | 'shared';
  /** Waited for between the steps of what is made of the written pieces, seconds each, so that a shell hears what else comes in. */
  readonly between?: () => Promise<void>;
  /** The path of a file that the job names, as seen from where the files will stand. */
  readonly fromFolder: (file: string) => string;
}

/** Called between steps of long work: says what is done next, and lets in who waits. */
export const betweenSteps =
  ({ next }: Pick<MakeInput, 'next'>, { between }: Pick<MakeOptions, 'between'>) =>
  async (says: string): Promise<void> => {
    next?.(says);
    await between?.();
  };
