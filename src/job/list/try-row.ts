// What all rows of a list share before they are made: each looked at first, words of one ready for the next.
import { laidJob } from '../lay/laid-job.ts';
import type { MakeInput } from '../make-input.ts';
import { tryMotifs } from '../motifs/motifs.ts';
import type { JobTools } from '../tools.ts';
import { rememberedWords } from './remembered-words.ts';

/** More lines than two vessels have on their guides: what one has, the next has again, but for its name. */
const linesKept = 250;

export const toolsForRows = (tools: JobTools): JobTools => ({
  ...tools,
  words: rememberedWords(tools.words, linesKept),
});

/** Looks for all that may keep a row from being made. @throws Refused */
export function tryRow(input: MakeInput): void {
  if (input.job.pieces !== 'gores') laidJob(input);
  tryMotifs(input);
}
