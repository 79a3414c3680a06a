// What the two ends of a job's wrap miss each other by, measured on its files as they would be written.
import type { SeamGap } from '../../prove/seams/seam-gap.ts';
import { stemOf } from '../deliverables.ts';
import { draftPieces } from '../lay/make.ts';
import type { MakeInput } from '../make-input.ts';
import { partsOf } from '../parts/parts.ts';
import { goreLayersAsMade, proofOfGoresDraft } from './gore-proof.ts';
import { draftGores, looseGores } from './gores.ts';
import { proofOfDrafts } from './proof.ts';

/** Undefined where the job has no pattern. @throws Refused where the input can't be made. */
export function gapAtSeam(input: MakeInput): SeamGap | undefined {
  const { job, blank } = input;
  if (job.pieces === 'gores') {
    const draft = draftGores({ ...input, gores: looseGores(job) });
    return proofOfGoresDraft(draft, blank, goreLayersAsMade(draft), { ...draft, stem: 'wrap' }).seamGap;
  }
  const drafts = draftPieces(input);
  const written = drafts.map(({ mark, cut, guide }) => ({ stem: stemOf('wrap', mark), cut, guide }));
  return proofOfDrafts(drafts, blank, written, partsOf(input, drafts)).seamGap;
}
