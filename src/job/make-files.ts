// All the files of a job, as `make` delivers them.
import type { Blank } from '../blank/blank.ts';
import type { Finding } from '../finding.ts';
import { cutterReport } from './blade/cutter-words.ts';
import { filmsOfFile, readCutFile, weedingReport } from './blade/weeding.ts';
import { withLayerCuts } from './cutter/layer-cuts.ts';
import { forCutter, sheetsForCutter } from './cutter/machine-files.ts';
import {
  type Deliverables,
  filesOfPiece,
  jsonContent,
  type LaidPiece,
  type NamedFile,
  stemOf,
  type WrittenPiece,
} from './deliverables.ts';
import { type Draft, wholePieces } from './draft.ts';
import { indexOfJob } from './index-page.ts';
import { jobSheetFiles } from './job-sheet/job-sheet-files.ts';
import { decoratesApart, draftPieces } from './lay/make.ts';
import { makeGoreFiles } from './make-gore-files.ts';
import type { MakeFilesInput, MakeOptions } from './make-options.ts';
import { mendedFiles } from './mended-files.ts';
import { placesOf } from './parts/part.ts';
import { partsOf } from './parts/parts.ts';
import { checksPicture, needsPicture } from './pictures/checks-picture.ts';
import { knifePictures } from './pictures/knife-picture.ts';
import { layerStackPictures } from './pictures/layer-stack-picture.ts';
import { profileOfDraft } from './pictures/profile-picture.ts';
import { revealPictures } from './pictures/reveal-picture.ts';
import { rolledOf } from './pictures/rolled.ts';
import { sheetsPictures } from './pictures/sheets-picture.ts';
import { weedingPictures } from './pictures/weeding-picture.ts';
import { printFiles, printOn } from './prints/prints.ts';
import { layersAsMade, proofOfDrafts } from './proof/proof.ts';
import { reportDrafts } from './proof/report-drafts.ts';
import { nestSheets } from './sheets/nest-sheets.ts';
import { joiningBlocks, piecesOfDrafts, piecesOfParts } from './sheets/sheet-pieces.ts';
import type { JobTools } from './tools.ts';
import type { Job } from './typed/resolved-job.ts';
import { blankContent, jobContent } from './typed/write-job.ts';

const widthPx = 1600;

/** The pictures of a job; of a band in several pieces only the profile, for each piece is a picture of its own. */
function pictures(
  drafts: readonly Draft[],
  blank: Blank,
  written: readonly WrittenPiece[],
  parts: readonly WrittenPiece[],
  tools: JobTools,
): NamedFile[] {
  const [draft] = drafts;
  if (!draft) return [];
  const profile = profileOfDraft(draft, blank, tools.words);
  const rolled = rolledOf(drafts, blank, written, tools.words, parts);
  return [
    { file: 'rolled.svg', role: 'picture', content: rolled },
    { file: 'rolled.png', role: 'picture', content: tools.rasterise(rolled, widthPx) },
    { file: 'profile.svg', role: 'picture', content: profile },
  ];
}

/** A picture of each piece that the checks found something on. */
const checksPictures = (
  drafts: readonly Draft[],
  job: Pick<Job, 'name' | 'units'> & { readonly checks: readonly Finding[] },
  { words, rasterise }: JobTools,
): NamedFile[] => {
  const pieces = wholePieces(drafts);
  return pieces.flatMap(({ filmChecks }, i) => {
    if (!filmChecks || !needsPicture(filmChecks)) return [];
    const stem = stemOf('checks', pieces.length === 1 ? '' : String(i + 1));
    const picture = checksPicture(filmChecks, job, words);
    return [
      { file: `${stem}.svg`, role: 'picture', content: picture },
      { file: `${stem}.png`, role: 'picture', content: rasterise(picture, widthPx) },
    ];
  });
};

const layersOf = ({ layers }: WrittenPiece) => (layers ? { layers } : {});

/** The job worked out, ready to be written. @throws Refused where the input can't be made. */
export async function makeFiles(input: MakeFilesInput, options: MakeOptions): Promise<Deliverables> {
  if (input.job.pieces === 'gores') return makeGoreFiles(input, options);
  const { blank, tools } = input;
  const drafts = draftPieces(input);
  const parts = partsOf(input, drafts);
  const wraps = drafts.map(({ cut, guide, mark, turned }) => ({
    stem: stemOf('wrap', mark),
    cut,
    guide,
    turned,
  }));
  const { name, cutter } = input.job;
  const lines = [...wraps, ...parts.map((part) => ({ ...part, turned: 0 }))];
  const isShared = options.sheets === 'shared' && input.job.sheet !== undefined;
  const nested = sheetsForCutter(
    await nestSheets({ job: input.job, pieces: isShared ? [] : lines }, options.search),
    name,
    cutter,
  );
  const pieces = lines.map((piece) => ({
    ...forCutter(piece, name, cutter),
    ...layersOf(withLayerCuts(piece, input.job)),
  }));
  const rest = async (written: readonly WrittenPiece[]) => {
    const asWritten = [written.slice(0, drafts.length), written.slice(drafts.length)] as const;
    const layers = layersAsMade(drafts);
    const proof = proofOfDrafts(drafts, blank, ...asWritten, nested.texts, layers);
    const ofFilm = written.filter((_, i) => parts[i - drafts.length]?.material === undefined);
    const cutFiles = ofFilm.map(({ stem, cut, layers }) =>
      readCutFile({
        stem,
        cut,
        ...(layers ? { layers } : {}),
        wanted: lines.find((line) => line.stem === stem)?.cut ?? cut,
      }),
    );
    const films = cutFiles.flatMap((file) => filmsOfFile(file, input.job.film.use, input.recall));
    const weeding = weedingReport(cutFiles, input.job, films);
    const report = {
      ...reportDrafts(drafts, proof, parts, layers),
      ...(weeding ? { weeding } : {}),
      cutter: cutterReport(cutter),
      ...(nested.reports.length > 0 ? { sheets: nested.reports } : {}),
    };
    // Pictures show the lines that are wanted.
    const wanted = written.map((piece, i) => ({ ...piece, cut: lines[i]?.cut ?? piece.cut }));
    const [laid, others] = [wanted.slice(0, drafts.length), wanted.slice(drafts.length)];
    const paper = printOn(options, input.job);
    const onPaper = paper ? [...written, ...placesOf(parts)] : [];
    const prints = await printFiles(paper, onPaper, input.job.name, tools.words);
    const shown = options.pictures
      ? [
          ...pictures(drafts, blank, laid, others, tools),
          ...layerStackPictures(input.job, laid[0], tools),
          ...revealPictures(input, drafts, blank, wanted, tools),
          ...mendedFiles(drafts[0]?.pattern, input.job.units, tools),
          ...checksPictures(drafts, { ...input.job, checks: report.checks }, tools),
          ...knifePictures(laid[0], cutter, tools),
          ...weedingPictures(films, name, tools),
          ...sheetsPictures(nested, name, tools),
        ]
      : [];
    const [first] = drafts;
    if (!first) throw new Error('a job has at least one piece');
    const cuts = written.slice(0, drafts.length).map((piece) =>
      filesOfPiece(piece)
        .filter(({ role }) => role === 'cut')
        .map(({ file }) => file)
        .join(', '),
    );
    const about = {
      job: first.job,
      blank,
      ground: first.plan,
      band: first.job.band ?? first.plan.band,
      pieces: [...piecesOfDrafts(drafts, cuts, first.job.units), ...piecesOfParts(parts)],
      wraps: { count: drafts.length, joints: wholePieces(drafts).length - 1 },
      joining: joiningBlocks(drafts, first.job.units),
      isShared,
      isWrapLaid: !decoratesApart(first),
      apart: first.laid.filter(({ placed }) => placed.isApart).length,
      report,
    };
    const looked = [...written.flatMap(filesOfPiece), ...nested.files, ...shown];
    const sheet = await jobSheetFiles(about, looked, options, tools);
    const job = jobContent(first.job, 'blank.json', options.fromFolder);
    const files = [
      ...nested.files,
      ...shown,
      ...sheet,
      { file: 'job.json', role: 'job', content: jsonContent(job) },
      { file: 'blank.json', role: 'blank', content: jsonContent(blankContent(blank)) },
      ...prints,
    ];
    const index = indexOfJob(name, [...written.flatMap(filesOfPiece), ...files]);
    return { files: [...files, index], report };
  };
  const sharing: readonly LaidPiece[] = [
    ...wraps.map(({ stem, turned }) => ({ stem, turned })),
    ...parts.map(({ stem, material }) => ({ stem, turned: 0, ...(material ? { material } : {}) })),
  ];
  return { pieces, rest, ...(isShared ? { sharing } : {}) };
}
