// All the files of a job in gores, as `make` delivers them.

import type { Blank } from '../blank/blank.ts';
import { measuredLength } from '../lengths/length.ts';
import type { FilmsOfFile } from './blade/weeding.ts';
import { forCutter, sheetsForCutter } from './cutter/machine-files.ts';
import type { Deliverables, NamedFile, WrittenPiece } from './deliverables.ts';
import { cutWork, folderOfJob } from './job-folder.ts';
import type { JobSheetInput } from './job-sheet/job-sheet.ts';
import { betweenSteps, type MakeFilesInput, type MakeOptions } from './make-options.ts';
import { mendedFiles } from './mended-files.ts';
import { knifePictures } from './pictures/knife-picture.ts';
import { pictureFiles } from './pictures/picture-files.ts';
import { profileOfGores } from './pictures/profile-picture.ts';
import { rolledGoresOf } from './pictures/rolled-gores.ts';
import { sheetsPictures } from './pictures/sheets-picture.ts';
import { weedingPictures } from './pictures/weeding-picture.ts';
import { printFiles, printOn } from './prints/prints.ts';
import { goreLayersAsMade, proofOfGoresDraft } from './proof/gore-proof.ts';
import { draftGores, type GoresDraft, looseGores, reportGores } from './proof/gores.ts';
import type { SheetPiece } from './sheets/film-piece.ts';
import { goresApart } from './sheets/gores-apart.ts';
import { type NestedSheets, nestSheets } from './sheets/nest-sheets.ts';

/** Gores cover the wall by one file: `wrap.cut.svg` holds all of them. @throws Refused where the input can't be made. */
export async function makeGoreFiles(input: MakeFilesInput, options: MakeOptions): Promise<Deliverables> {
  const { blank, tools, job: asked } = input;
  const draft = draftGores({ ...input, gores: looseGores(asked) });
  const layers = goreLayersAsMade(draft);
  const { cut, guide } = draft;
  const nested = sheetsForCutter(
    await nestSheets({ job: asked, pieces: asked.sheet ? goresApart(cut) : [] }, options.search),
    asked.name,
    asked.cutter,
  );
  const rest = async (written: readonly WrittenPiece[]) => {
    const [wrap] = written;
    const step = betweenSteps(input, options);
    input.next?.('proving the files');
    const proof = wrap && proofOfGoresDraft(draft, blank, layers, wrap, nested.texts);
    const cutFiles = written.map((piece) => ({ stem: 'wrap', cut: piece.cut, wanted: cut }));
    await step('reckoning what is weeded');
    const { films, told } = cutWork(cutFiles, input, nested);
    const report = { ...reportGores(draft, layers, proof), ...told };
    await step(options.pictures ? 'drawing the pictures' : 'writing the report');
    const shown = options.pictures ? pictures(input, draft, films, nested) : [];
    const prints = await printFiles(printOn(options, asked), written, asked.name, tools.words);
    await step('writing the job sheet');
    const about = toldOnSheet(draft, blank, report);
    return folderOfJob({ about, written, sheets: nested.files, pictures: shown, prints }, options, input);
  };
  return { pieces: [forCutter({ stem: 'wrap', cut, guide }, asked.name, asked.cutter)], rest };
}

/** Pictures show the lines that are wanted. */
function pictures(
  { job, blank, tools }: MakeFilesInput,
  draft: GoresDraft,
  films: FilmsOfFile,
  nested: NestedSheets,
): NamedFile[] {
  const { cut, guide } = draft;
  const rolled = rolledGoresOf(draft, blank, draft, tools.words);
  return [
    ...mendedFiles(draft.art, job.units, tools),
    ...pictureFiles('rolled', rolled, tools),
    { file: 'profile.svg', role: 'picture', content: profileOfGores(draft, blank, tools.words) },
    ...knifePictures({ stem: 'wrap', cut, guide }, job.cutter, tools),
    ...weedingPictures(films, job.name, tools),
    ...sheetsPictures(nested, job.name, tools),
  ];
}

/** What the job sheet tells of gores. */
const toldOnSheet = (
  draft: GoresDraft,
  blank: Blank,
  report: JobSheetInput['report'],
): Omit<JobSheetInput, 'files'> => ({
  job: draft.job,
  blank,
  ground: draft.plan,
  band: draft.plan.band,
  pieces: [sheetPiece(draft)],
  wraps: { count: draft.plan.options.count, files: ['wrap.cut.svg'], joints: 0 },
  borderStrips: 0,
  joining: [],
  isWrapLaid: true,
  apart: 0,
  report,
});

const mm = (value: number): string => measuredLength(value, 'mm');

function sheetPiece({ plan, outlines }: GoresDraft): SheetPiece {
  const { options, band, onSheet, bent } = plan;
  const girth = (on: number) => 2 * Math.PI * bent.at(on).radius;
  const [first, last] = [outlines[0], outlines.at(-1)];
  const film =
    first && last
      ? [
          { outline: first, count: options.count - 1 },
          { outline: last, count: 1 },
        ]
      : [];
  return {
    says: `gores 1 to ${options.count}, from left to right`,
    file: 'wrap.cut.svg',
    where: `${mm(band.from)} to ${mm(band.to)}`,
    size: `together ${mm(girth(onSheet.from))} at the foot edge, ${mm(girth(onSheet.to))} at the lip edge`,
    film,
  };
}
