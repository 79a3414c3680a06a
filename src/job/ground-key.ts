// What two jobs have in common where only what is laid singly sets them apart.
import type { MakeInput } from './make-input.ts';

/** What decides how a job is laid before single motifs go onto it: all of it but its name, and what is laid singly. */
export function groundKey({ job, jobFile, blank, blankFile, plain }: MakeInput): string {
  const { name: _, items: __, lettering: ___, ...ground } = job;
  return JSON.stringify([ground, jobFile, blank, blankFile, plain]);
}
