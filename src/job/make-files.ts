// All the files of a job, as `make` delivers them.
import { withLayerCuts } from './cutter/layer-cuts.ts';
import { forCutter, sheetsForCutter } from './cutter/machine-files.ts';
import {
  type Deliverables,
  filesOfPiece,
  type LaidPiece,
  type NamedFile,
  type Rest,
  stemOf,
  type WrittenPiece,
} from './deliverables.ts';
import { type Draft, wholePieces } from './draft.ts';
import { cutWork, folderOfJob } from './job-folder.ts';
import type { JobSheetInput } from './job-sheet/job-sheet.ts';
import { draftPieces } from './lay/make.ts';
import { makeGoreFiles } from './make-gore-files.ts';
import { betweenSteps, type MakeFilesInput, type MakeOptions } from './make-options.ts';
import { type Part, placesOf } from './parts/part.ts';
import { partsOf } from './parts/parts.ts';
import { wrapPictures } from './pictures/wrap-pictures.ts';
import { printFiles, printOn } from './prints/prints.ts';
import { layersAsMade, proofOfDrafts } from './proof/proof.ts';
import { reportDrafts } from './proof/report-drafts.ts';
import { type NestedSheets, nestSheets } from './sheets/nest-sheets.ts';
import { joiningBlocks, piecesOfDrafts, piecesOfParts } from './sheets/sheet-pieces.ts';
import { decoratesApart } from './typed/placed-motif.ts';

/** A job worked out, before anything of it is written. */
interface WorkedOut {
  readonly drafts: readonly Draft[];
  readonly parts: readonly Part[];
  /** The wraps, then the parts, with the lines that are wanted. */
  readonly lines: readonly (WrittenPiece & LaidPiece)[];
  /** Those of them that are cut from film or paper: not a wrap that is only a template for motifs. */
  readonly film: readonly (WrittenPiece & LaidPiece)[];
  readonly nested: NestedSheets;
  /** Whether its pieces lie on sheets with those of other vessels. */
  readonly isShared: boolean;
}

async function workedOut(input: MakeFilesInput, { sheets, search }: MakeOptions): Promise<WorkedOut> {
  const { job } = input;
  const drafts = draftPieces(input);
  const parts = partsOf(input, drafts);
  const wraps = drafts.map(({ cut, guide, mark, turned }) => ({
    stem: stemOf('wrap', mark),
    cut,
    guide,
    turned,
  }));
  const lines = [...wraps, ...parts.map((part) => ({ ...part, turned: 0 }))];
  const isTooLarge = [...drafts, ...parts].some(({ findings }) =>
    findings.some(({ rule }) => rule === 'sheet-too-small'),
  );
  // What fits no sheet would keep the pieces of all other vessels off theirs.
  const isShared = sheets === 'shared' && job.sheet !== undefined && !isTooLarge;
  const film = decoratesApart(job) ? lines.slice(drafts.length) : lines;
  const nested = await nestSheets({ job, pieces: sheets === 'shared' ? [] : film }, search);
  return { drafts, parts, lines, film, nested: sheetsForCutter(nested, job.name, job.cutter), isShared };
}

const layersOf = ({ layers }: WrittenPiece) => (layers ? { layers } : {});

/** The pieces as the cutter takes them, those with layers of their own in a file each. */
const forBlade = ({ lines }: WorkedOut, { job }: MakeFilesInput): readonly WrittenPiece[] =>
  lines.map((piece) => ({
    ...forCutter(piece, job.name, job.cutter),
    ...layersOf(withLayerCuts(piece, job)),
  }));

/** The cut files of film, paper left out, each beside the lines that are wanted of it. */
const cutFilesOf = ({ film }: WorkedOut, written: readonly WrittenPiece[]) =>
  written.flatMap(({ stem, cut, layers }) => {
    const line = film.find((one) => one.stem === stem);
    if (!line || line.material !== undefined) return [];
    return [{ stem, cut, ...(layers ? { layers } : {}), wanted: line.cut }];
  });

/** What the job sheet tells of wraps and the pieces beside them. */
function toldOnSheet(
  { drafts, parts, isShared }: WorkedOut,
  { blank }: MakeFilesInput,
  written: readonly WrittenPiece[],
  report: JobSheetInput['report'],
): Omit<JobSheetInput, 'files'> {
  const [first] = drafts;
  if (!first) throw new Error('a job has at least one piece');
  const isWrapLaid = !decoratesApart(first.job);
  const cutFiles = written.map((piece) =>
    filesOfPiece(piece)
      .filter(({ role }) => role === 'cut')
      .map(({ file }) => file),
  );
  const cuts = cutFiles.map((files) => files.join(', '));
  return {
    job: first.job,
    blank,
    ground: first.plan,
    band: first.job.band ?? first.plan.band,
    pieces: [
      ...piecesOfDrafts(drafts, cuts, first.job.units, isWrapLaid),
      ...piecesOfParts(parts, cuts.slice(drafts.length)),
    ],
    wraps: {
      count: drafts.length,
      files: cutFiles.slice(0, drafts.length).flat(),
      joints: wholePieces(drafts).length - 1,
    },
    borderStrips: parts.filter(({ isOnBorder }) => isOnBorder).length,
    joining: joiningBlocks(drafts, first.job.units),
    isShared,
    isWrapLaid,
    apart: first.laid.filter(({ placed }) => placed.isApart).length,
    report,
  };
}

async function printsOf(
  { parts }: WorkedOut,
  { job, tools }: MakeFilesInput,
  options: MakeOptions,
  written: readonly WrittenPiece[],
): Promise<readonly NamedFile[]> {
  const paper = printOn(options, job);
  return printFiles(paper, paper ? [...written, ...placesOf(parts)] : [], job.name, tools.words);
}

/** All that is made of the pieces as they were written: proof and report, pictures and pages. */
async function restOf(
  work: WorkedOut,
  input: MakeFilesInput,
  options: MakeOptions,
  written: readonly WrittenPiece[],
): Promise<Rest> {
  const { drafts, parts, lines, nested } = work;
  const layers = layersAsMade(drafts);
  const [wraps, others] = [written.slice(0, drafts.length), written.slice(drafts.length)];
  const step = betweenSteps(input, options);
  input.next?.('proving the files');
  const proof = proofOfDrafts(drafts, input.blank, wraps, others, nested.texts, layers);
  await step('reckoning what is weeded');
  const { films, told } = cutWork(cutFilesOf(work, written), input, nested);
  await step(options.pictures ? 'drawing the pictures' : 'writing the report');
  const report = { ...reportDrafts(drafts, proof, parts, layers), ...told };
  // Pictures show the lines that are wanted.
  const wanted = written.map((piece, i) => ({ ...piece, cut: lines[i]?.cut ?? piece.cut }));
  const prints = await printsOf(work, input, options, written);
  const pictures = options.pictures
    ? wrapPictures(input, { drafts, wanted, films, nested, checks: report.checks })
    : [];
  await step('writing the job sheet');
  const about = toldOnSheet(work, input, written, report);
  return folderOfJob({ about, written, sheets: nested.files, pictures, prints }, options, input);
}

/** Where each piece lies in its file, and what it is cut from. */
const sharingOf = ({ film }: WorkedOut): readonly LaidPiece[] =>
  film.map(({ stem, turned, material }) => ({ stem, turned, ...(material ? { material } : {}) }));

/** The job worked out, ready to be written. @throws Refused where the input can't be made. */
export async function makeFiles(input: MakeFilesInput, options: MakeOptions): Promise<Deliverables> {
  if (input.job.pieces === 'gores') return makeGoreFiles(input, options);
  const work = await workedOut(input, options);
  return {
    pieces: forBlade(work, input),
    rest: (written) => restOf(work, input, options, written),
    ...(work.isShared ? { sharing: sharingOf(work) } : {}),
  };
}
