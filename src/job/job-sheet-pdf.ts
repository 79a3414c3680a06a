// The job sheet on paper. Loads the PDF writer, so it is itself loaded only where the sheet is asked for.
import { flatPicture } from '../deliver/flat-picture.ts';
import { pageOnPaper } from '../deliver/page-on-paper.ts';
import { type Paper, papers } from '../deliver/paper.ts';
import type { Page } from '../deliver/write-page.ts';
import { writePdf } from '../deliver/write-pdf.ts';
import type { NamedFile } from './deliverables.ts';
import type { JobTools } from './tools.ts';

/** Width of pictures on it, px: some 120 to the inch across the paper. */
const pictureWidth = 850;

/** More pictures than this are not looked at on paper: a batch on hundreds of sheets has its files for that. */
const mostPictures = 12;

/** The bytes of job-sheet.pdf: the page as on screen, with its pictures from `files`. Paper is A4 unless another is given. */
export function jobSheetPdf(
  page: Page,
  files: readonly NamedFile[],
  { words, rasterise }: Pick<JobTools, 'words' | 'rasterise'>,
  paper: Paper | undefined = papers[0],
): Promise<Uint8Array> {
  if (!paper) throw new Error('there is no paper');
  let shown = 0;
  const pictureOf = (name: string) => {
    const content = files.find(({ file }) => file === name)?.content;
    if (typeof content !== 'string' || ++shown > mostPictures) return undefined;
    return flatPicture(rasterise(content, pictureWidth));
  };
  const drawing = { width: paper.across, height: paper.up, groups: [] };
  return writePdf(drawing, pageOnPaper(page, { paper, words, pictureOf }), page.title);
}
