// The job sheet on paper. Loads the PDF writer, so it is itself loaded only where the sheet is asked for.
import { pageOnPaper } from '../../deliver/page-on-paper.ts';
import { type Paper, papers } from '../../deliver/paper.ts';
import type { Page } from '../../deliver/write-page.ts';
import { writePdf } from '../../deliver/write-pdf.ts';
import type { JobTools } from '../tools.ts';
import type { SheetPicture } from './job-sheet-pictures.ts';

/** The bytes of job-sheet.pdf: the page as on screen. Paper is A4 unless another is given. */
export function jobSheetPdf(
  page: Page,
  pictures: readonly SheetPicture[],
  { words, bold = words }: Pick<JobTools, 'words' | 'bold'>,
  paper: Paper | undefined = papers[0],
): Promise<Uint8Array> {
  if (!paper) throw new Error('there is no paper');
  const pictureOf = (name: string) => pictures.find(({ file }) => file === name);
  const drawing = { width: paper.across, height: paper.up, groups: [] };
  return writePdf(drawing, pageOnPaper(page, { paper, words, bold, pictureOf }), page.title);
}
