// The motifs of a job: what is laid once, each at a place of its own.
import { itemMotif } from './items.ts';
import type { MakeInput } from './make-input.ts';
import type { PlacedMotif } from './placed-motif.ts';

/** Every motif of a job. @throws Refused where one can't be read. */
export const readMotifs = (input: Pick<MakeInput, 'job' | 'files' | 'tools'>): readonly PlacedMotif[] =>
  (input.job.items ?? []).map((item, index) => itemMotif(input, item, index));
