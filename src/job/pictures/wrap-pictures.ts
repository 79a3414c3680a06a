// All the pictures of a job in wraps, from its written files.
import type { Blank } from '../../blank/blank.ts';
import type { Finding } from '../../finding.ts';
import type { FilmsOfFile } from '../blade/weeding.ts';
import { type NamedFile, stemOf, type WrittenPiece } from '../deliverables.ts';
import { type Draft, wholePieces } from '../draft.ts';
import type { MakeFilesInput } from '../make-options.ts';
import { mendedFiles } from '../mended-files.ts';
import type { NestedSheets } from '../sheets/nest-sheets.ts';
import type { JobTools } from '../tools.ts';
import type { Job } from '../typed/resolved-job.ts';
import { checksPicture, needsPicture } from './checks-picture.ts';
import { knifePictures } from './knife-picture.ts';
import { layerStackPictures } from './layer-stack-picture.ts';
import { pictureFiles } from './picture-files.ts';
import { profileOfDraft } from './profile-picture.ts';
import { revealPictures } from './reveal-picture.ts';
import { rolledOf } from './rolled.ts';
import { sheetsPictures } from './sheets-picture.ts';
import { weedingPictures } from './weeding-picture.ts';

/** The finished vessel, and its wall in section. */
function vesselPictures(
  drafts: readonly Draft[],
  blank: Blank,
  wraps: readonly WrittenPiece[],
  parts: readonly WrittenPiece[],
  tools: JobTools,
): NamedFile[] {
  const [draft] = drafts;
  if (!draft) return [];
  const profile = profileOfDraft(draft, blank, tools.words);
  const rolled = rolledOf(drafts, blank, wraps, tools.words, parts);
  return [
    ...pictureFiles('rolled', rolled, tools),
    { file: 'profile.svg', role: 'picture', content: profile },
  ];
}

/** A picture of each piece that the checks found something on. */
const checksPictures = (
  drafts: readonly Draft[],
  job: Pick<Job, 'name' | 'units'> & { readonly checks: readonly Finding[] },
  tools: JobTools,
): NamedFile[] => {
  const pieces = wholePieces(drafts);
  return pieces.flatMap(({ filmChecks }, i) => {
    if (!filmChecks || !needsPicture(filmChecks)) return [];
    const stem = stemOf('checks', pieces.length === 1 ? '' : String(i + 1));
    const picture = checksPicture(filmChecks, job, tools.words);
    return pictureFiles(stem, picture, tools);
  });
};

export interface PicturedWraps {
  readonly drafts: readonly Draft[];
  /** The wraps, then the other pieces, each with the lines that are wanted of it. */
  readonly wanted: readonly WrittenPiece[];
  readonly films: FilmsOfFile;
  readonly nested: NestedSheets;
  readonly checks: readonly Finding[];
}

export function wrapPictures(
  input: MakeFilesInput,
  { drafts, wanted, films, nested, checks }: PicturedWraps,
): NamedFile[] {
  const { job, blank, tools } = input;
  const [wraps, parts] = [wanted.slice(0, drafts.length), wanted.slice(drafts.length)];
  return [
    ...vesselPictures(drafts, blank, wraps, parts, tools),
    ...layerStackPictures(job, wraps[0], tools),
    ...revealPictures(input, drafts, blank, wanted, tools),
    ...mendedFiles(drafts[0]?.pattern, job.units, tools),
    ...checksPictures(drafts, { ...job, checks }, tools),
    ...knifePictures(wraps[0], job.cutter, tools),
    ...weedingPictures(films, job.name, tools),
    ...sheetsPictures(nested, job.name, tools),
  ];
}
