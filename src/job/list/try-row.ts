// What all rows of a list share before they are made: each looked at first, words of one ready for the next.

import { laidJob } from '../lay/laid-job.ts';
import { draftPieces } from '../lay/make.ts';
import type { MakeInput } from '../make-input.ts';
import { tryMotifs } from '../motifs/motifs.ts';
import { partsOf } from '../parts/parts.ts';
import { draftGores, looseGores } from '../proof/gores.ts';
import type { JobTools } from '../tools.ts';
import type { Job } from '../typed/resolved-job.ts';
import { rememberedWords } from './remembered-words.ts';

/** More lines than two vessels have on their guides: what one has, the next has again, but for its name. */
const linesKept = 250;

export const toolsForRows = (tools: JobTools): JobTools => ({
  ...tools,
  words: rememberedWords(tools.words, linesKept),
});

/** Whether a job may be refused for what its motifs come to on the wall, or beside it. */
const asksOfWhole = ({ mask, stencil, collars, layers }: Job): boolean =>
  mask !== undefined || stencil !== undefined || collars !== undefined || layers?.order !== undefined;

/** Looks for all that may keep a row from being made. @throws Refused */
export function tryRow(input: MakeInput): void {
  const { job } = input;
  if (job.pieces === 'gores') draftGores({ ...input, gores: looseGores(job) });
  else if (asksOfWhole(job)) partsOf(input, draftPieces({ ...input, unchecked: true, linesOnly: true }));
  else {
    laidJob(input);
    tryMotifs(input);
  }
}
