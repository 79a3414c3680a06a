// What stands in a job's folder beside its pieces, whether they are wraps or gores.
import { cutterReport } from './blade/cutter-words.ts';
import { type CutFile, type FilmsOfFile, filmsOfFile, readCutFile, weedingReport } from './blade/weeding.ts';
import { filesOfPiece, jsonContent, type NamedFile, type Rest, type WrittenPiece } from './deliverables.ts';
import { indexOfJob } from './index-page.ts';
import type { JobSheetInput } from './job-sheet/job-sheet.ts';
import { jobSheetFiles } from './job-sheet/job-sheet-files.ts';
import type { MakeFilesInput, MakeOptions } from './make-options.ts';
import type { Report } from './report.ts';
import type { NestedSheets } from './sheets/nest-sheets.ts';
import { blankContent, jobContent } from './typed/write-job.ts';

/** What the blade does with a job's cut files: their films, and what the report tells of blade, waste and sheets. */
export interface CutWork {
  readonly films: FilmsOfFile;
  readonly told: Pick<Report, 'weeding' | 'cutter' | 'sheets'>;
}

/** @param files the cut files of film, as they were written. */
export function cutWork(
  files: readonly CutFile[],
  { job, recall }: Pick<MakeFilesInput, 'job' | 'recall'>,
  { reports }: Pick<NestedSheets, 'reports'>,
): CutWork {
  const read = files.map(readCutFile);
  const films = read.flatMap((file) => filmsOfFile(file, job.film.use, recall));
  const weeding = weedingReport(read, job, films);
  const told = {
    ...(weeding ? { weeding } : {}),
    cutter: cutterReport(job.cutter),
    ...(reports.length > 0 ? { sheets: reports } : {}),
  };
  return { films, told };
}

/** What a folder is filled with, once its pieces are written. */
export interface FolderInput {
  /** What the job sheet tells. */
  readonly about: Omit<JobSheetInput, 'files'>;
  readonly written: readonly WrittenPiece[];
  readonly sheets: readonly NamedFile[];
  readonly pictures: readonly NamedFile[];
  readonly prints: readonly NamedFile[];
}

/** All files of a job but its pieces: sheets, pictures, job sheet, prints, the job itself, and the page that opens them. */
export async function folderOfJob(
  { about, written, sheets, pictures, prints }: FolderInput,
  options: MakeOptions,
  { tools }: Pick<MakeFilesInput, 'tools'>,
): Promise<Rest> {
  const { job, blank, report } = about;
  const pieces = written.flatMap(filesOfPiece);
  const sheet = await jobSheetFiles(about, [...pieces, ...sheets, ...pictures], options, tools);
  const files = [
    ...sheets,
    ...pictures,
    ...sheet,
    {
      file: 'job.json',
      role: 'job',
      content: jsonContent(jobContent(job, 'blank.json', options.fromFolder)),
    },
    { file: 'blank.json', role: 'blank', content: jsonContent(blankContent(blank)) },
    ...prints,
  ];
  return { files: [...files, indexOfJob(job.name, [...pieces, ...files])], report };
}
