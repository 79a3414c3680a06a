// `seamwright make`: the whole job.
import { basename, dirname, join, relative, resolve } from 'node:path';
import type { Draft } from '../job/draft.ts';
import { jobSheet } from '../job/job-sheet.ts';
import { draftPieces, type MakeInput, reportDrafts } from '../job/make.ts';
import { profileOfDraft } from '../job/profile-picture.ts';
import { proofOfDrafts } from '../job/proof.ts';
import type { Blank } from '../job/read-blank.ts';
import { parseJson } from '../job/read-json.ts';
import { rolledOf } from '../job/rolled.ts';
import type { JobTools } from '../job/tools.ts';
import { blankContent, jobContent } from '../job/write-job.ts';
import { deliverDrafts, type NamedFile, type WrittenPiece } from './deliver-draft.ts';
import { readText } from './files.ts';
import { givenJob } from './job-input.ts';
import type { CommonOptions } from './options.ts';
import { type PrintFlags, printFiles, printPaper } from './print-file.ts';
import { loadTools } from './tools.ts';

export interface MakeFlags extends CommonOptions, PrintFlags {
  readonly pictures: boolean;
}

const content = (value: object): string => `${JSON.stringify(value, undefined, 2)}\n`;

async function readInputs(jobFile: string): Promise<Omit<MakeInput, 'tools'>> {
  const typed = parseJson(await readText(jobFile, jobFile), jobFile);
  const { job, blank, blankFile, beside } = await givenJob(typed, jobFile);
  const { artwork, items = [] } = job;
  const itemTexts: string[] = [];
  for (const [i, { file }] of items.entries())
    itemTexts.push(await readText(beside(file), file, { file: jobFile, key: `items[${i}].file` }));
  // A finding of a job that is made names the file alone, so that the report is the same wherever the job stands.
  const fileName = basename(jobFile);
  if (!artwork) return { job, jobFile: fileName, blank, blankFile, itemTexts };
  const text = await readText(beside(artwork.file), artwork.file, { file: jobFile, key: 'artwork.file' });
  return { job, jobFile: fileName, blank, blankFile, itemTexts, artwork: { text, file: artwork.file } };
}

/** The pictures of a job; of a band in several pieces only the profile, for each piece is a picture of its own. */
function pictures(
  drafts: readonly Draft[],
  blank: Blank,
  written: readonly WrittenPiece[],
  tools: JobTools,
): NamedFile[] {
  const [draft] = drafts;
  const [piece] = written;
  if (!draft || !piece) return [];
  const profile = profileOfDraft(draft, blank, tools.words);
  const profileFile = { file: 'profile.svg', role: 'picture', content: profile };
  if (drafts.length > 1) return [profileFile];
  const rolled = rolledOf(draft, blank, piece, tools.words);
  return [
    { file: 'rolled.svg', role: 'picture', content: rolled },
    { file: 'rolled.png', role: 'picture', content: tools.rasterise(rolled, 1600) },
    profileFile,
  ];
}

export async function makeCommand(jobFile: string, flags: MakeFlags): Promise<number> {
  const paper = printPaper(flags);
  const inputs = await readInputs(jobFile);
  const tools = await loadTools();
  const drafts = draftPieces({ ...inputs, tools });
  const [draft] = drafts;
  const folder = flags.out ?? join(dirname(jobFile), 'out');
  const fromFolder = (file: string) =>
    relative(resolve(folder), resolve(dirname(jobFile), file)).replaceAll('\\', '/');
  const artFile = inputs.artwork && fromFolder(inputs.artwork.file);
  const job = jobContent(draft?.job ?? inputs.job, 'blank.json', artFile, fromFolder);
  let report: ReturnType<typeof reportDrafts> | undefined;
  // The files are read back and measured once, for the report and for the job sheet.
  const reportOf = (written: readonly WrittenPiece[]) => {
    report ??= reportDrafts(drafts, proofOfDrafts(drafts, inputs.blank, written));
    return report;
  };
  return deliverDrafts(drafts, {
    ...flags,
    folder,
    stem: 'wrap',
    report: (written) => reportOf(written),
    more: async (written) => {
      const prints = await Promise.all(
        written.map(({ guide, stem }) => printFiles(paper, guide, stem, inputs.job.name, tools.words)),
      );
      const shown = flags.pictures ? pictures(drafts, inputs.blank, written, tools) : [];
      const cuts = written.flatMap(({ stem }) => [
        { file: `${stem}.cut.svg`, role: 'cut' },
        { file: `${stem}.guide.svg`, role: 'guide' },
      ]);
      const sheet = jobSheet({
        drafts,
        blank: inputs.blank,
        report: reportOf(written),
        files: [...cuts, ...shown],
      });
      return [
        ...shown,
        { file: 'job-sheet.html', role: 'job-sheet', content: sheet },
        { file: 'job.json', role: 'job', content: content(job) },
        { file: 'blank.json', role: 'blank', content: content(blankContent(inputs.blank)) },
        ...prints.flat(),
      ];
    },
  });
}
