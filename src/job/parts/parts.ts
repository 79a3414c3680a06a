// All the pieces of film that a job takes besides its wrap.
import { collarParts } from './collar-parts.ts';
import { maskParts } from './masks.ts';
import { motifParts } from './motif-parts.ts';
import type { PartMaker } from './part.ts';
import { stripParts } from './strip-parts.ts';

/** Every kind of part there is, in the order their files are listed. */
const makers: readonly PartMaker[] = [stripParts, motifParts, maskParts, collarParts];

/** All the parts of a job. @throws Refused where one can't be made. */
export const partsOf: PartMaker = (input, drafts) => makers.flatMap((make) => make(input, drafts));
