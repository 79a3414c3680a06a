// A guide on paper: a PDF at true size. Loads the PDF writer, so it is itself loaded only where a print is asked for.

import { pagesOf } from '../../deliver/pages.ts';
import type { Paper } from '../../deliver/paper.ts';
import { readSvg } from '../../deliver/read-svg.ts';
import { writePdf } from '../../deliver/write-pdf.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { type Correction, correctionInWords } from '../typed/measured.ts';

export interface PrintOptions {
  readonly paper: Paper;
  /** What the print is of; stands on every page. */
  readonly title: string;
  readonly words: DrawWords;
  /** What the printer makes too large or too small is drawn so much smaller or larger. */
  readonly correction?: Correction | undefined;
}

/**
 * The bytes of a PDF that shows a written guide at true size, on as many pages as it takes.
 * @throws Refused where the guide can't be read; `file` is named then.
 */
export function printOf(
  guide: string,
  file: string,
  { paper, title, words, correction }: PrintOptions,
): Promise<Uint8Array> {
  const drawing = readSvg(guide, file);
  if (!correction) return writePdf(drawing, pagesOf(drawing, { paper, title, words }), title);
  const { across, up } = correction;
  // What is laid out on a page of this size fills the paper once it is corrected.
  const drawn = { ...paper, across: paper.across / across, up: paper.up / up };
  const corrected = correctionInWords(correction);
  return writePdf(drawing, pagesOf(drawing, { paper: drawn, title, words, corrected }), title, correction);
}
