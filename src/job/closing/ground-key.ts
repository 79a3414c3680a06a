// What two jobs have in common where only what is laid singly sets them apart.
import type { MakeInput } from '../make-input.ts';
import { isParted } from '../plan/panels.ts';
import { planPieces } from '../plan/pieces.ts';
import { decoratesApart } from '../typed/placed-motif.ts';

/**
 * What decides how a job is laid before single motifs go onto it: all of it but its name, and what is laid singly, beyond that it is all there is. A seam
 * that winds goes around that too, and joints keep off it.
 */
export function groundKey(input: MakeInput): string {
  const { job, jobFile, blank, blankFile, plain } = input;
  const { name: _, items, lettering, ...ground } = job;
  const isKeptOff =
    job.seam.style === 'winding' || (job.sheet !== undefined && isParted(planPieces(input), job));
  const around = isKeptOff ? [items, lettering] : [decoratesApart(job)];
  return JSON.stringify([ground, around, jobFile, blank, blankFile, plain]);
}
