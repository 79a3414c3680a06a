// What two jobs have in common where only what is laid singly sets them apart.
import type { MakeInput } from './make-input.ts';

/**
 * What decides how a job is laid before single motifs go onto it: all of it but its name, and what is laid singly. A seam
 * that winds goes around that too.
 */
export function groundKey({ job, jobFile, blank, blankFile, plain }: MakeInput): string {
  const { name: _, items, lettering, ...ground } = job;
  const around = job.seam.style === 'winding' ? [items, lettering] : [];
  return JSON.stringify([ground, around, jobFile, blank, blankFile, plain]);
}
