// The job sheet as files: on screen, and on paper where pictures are made. The PDF writer is loaded only then.
import { writePage } from '../deliver/write-page.ts';
import type { NamedFile } from './deliverables.ts';
import { type JobSheetInput, jobSheet } from './job-sheet.ts';
import type { MakeOptions } from './make-options.ts';
import type { JobTools } from './tools.ts';

/** `files`: what its pictures are among. */
export async function jobSheetFiles(
  input: Omit<JobSheetInput, 'files'>,
  files: readonly NamedFile[],
  { pictures, paper }: Pick<MakeOptions, 'pictures' | 'paper'>,
  tools: JobTools,
): Promise<readonly NamedFile[]> {
  const page = jobSheet({ ...input, files });
  const onScreen = { file: 'job-sheet.html', role: 'job-sheet', content: writePage(page) };
  if (!pictures) return [onScreen];
  const { jobSheetPdf } = await import('./job-sheet-pdf.ts');
  const onPaper = await jobSheetPdf(page, files, tools, paper);
  return [onScreen, { file: 'job-sheet.pdf', role: 'job-sheet', content: onPaper }];
}
