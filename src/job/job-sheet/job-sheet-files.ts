// The job sheet as files: on screen, and on paper where pictures are made. The PDF writer is loaded only then.
import { dataUrl } from '../../deliver/data-url.ts';
import { reworded } from '../../deliver/reworded.ts';
import { writePage } from '../../deliver/write-page.ts';
import { toldIn } from '../../lengths/told-in.ts';
import type { NamedFile } from '../deliverables.ts';
import type { MakeOptions } from '../make-options.ts';
import type { JobTools } from '../tools.ts';
import { type JobSheetInput, jobSheet } from './job-sheet.ts';
import { pagePictures } from './job-sheet-pictures.ts';

/** `files`: what its pictures are among. */
export async function jobSheetFiles(
  input: Omit<JobSheetInput, 'files'>,
  files: readonly NamedFile[],
  { pictures, paper }: Pick<MakeOptions, 'pictures' | 'paper'>,
  tools: JobTools,
): Promise<readonly NamedFile[]> {
  const { units } = input.job;
  const page = reworded(jobSheet({ ...input, files }), (text) => toldIn(text, units));
  const shown = pictures ? pagePictures(page, files, tools) : [];
  // Held by the page itself, so that it can be sent as one file.
  const within = (name: string) => {
    const picture = shown.find(({ file }) => file === name);
    return picture && dataUrl(picture.png, 'image/png');
  };
  const onScreen = { file: 'job-sheet.html', role: 'job-sheet', content: writePage(page, within) };
  if (!pictures) return [onScreen];
  const { jobSheetPdf } = await import('./job-sheet-pdf.ts');
  const onPaper = await jobSheetPdf(page, shown, tools, paper);
  return [onScreen, { file: 'job-sheet.pdf', role: 'job-sheet', content: onPaper }];
}
