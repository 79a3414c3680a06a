// All the pieces of film that a job takes besides its wrap.
import type { MakeInput } from '../make-input.ts';
import { partTooLarge } from '../plan/sheet-room.ts';
import { collarParts } from './collar-parts.ts';
import { maskParts } from './masks.ts';
import { motifParts } from './motif-parts.ts';
import type { Part, PartMaker } from './part.ts';
import { stripParts } from './strip-parts.ts';

/** Every kind of part there is, in the order their files are listed. */
const makers: readonly PartMaker[] = [stripParts, motifParts, maskParts, collarParts];

/** All the parts of a job. @throws Refused where one can't be made. */
export const partsOf: PartMaker = (input, drafts) =>
  makers.flatMap((make) => make(input, drafts)).map((part) => heldToSheet(part, input));

/** The part, told of where it fits no sheet. Paper that none holds is cut by itself. */
function heldToSheet(part: Part, { job, jobFile }: MakeInput): Part {
  const { sheet, material, findings } = part;
  const large = sheet && material === undefined ? partTooLarge(sheet, job, jobFile) : [];
  return large.length === 0 ? part : { ...part, findings: [...findings, ...large] };
}
