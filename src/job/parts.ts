// The pieces of film that a job takes besides its wrap: cut and guided apart, each laid where its report says.
import type { Finding } from '../finding.ts';
import type { WrittenPiece } from './deliverables.ts';
import type { Draft } from './draft.ts';
import type { MakeInput } from './make-input.ts';

export interface Part extends WrittenPiece {
  readonly findings: readonly Finding[];
}

/** Gives the parts of one kind; none where the job has none. */
export type PartMaker = (input: MakeInput, drafts: readonly Draft[]) => readonly Part[];

/** Every kind of part there is, in the order their files are listed. */
const makers: readonly PartMaker[] = [];

/** All the parts of a job. @throws Refused where one can't be made. */
export const partsOf: PartMaker = (input, drafts) => makers.flatMap((make) => make(input, drafts));
