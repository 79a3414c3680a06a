// The print of a written guide, where one is asked for. The PDF writer is loaded only then.
import { type Paper, paperNamed } from '../job/print-paper.ts';
import type { JobTools } from '../job/tools.ts';
import type { NamedFile } from './deliver-draft.ts';

export interface PrintFlags {
  readonly print?: boolean;
  readonly paperSize: string;
}

/** The paper to print on; undefined where no print is asked for. @throws Refused where there is none of that name. */
export const printPaper = ({ print, paperSize }: PrintFlags): Paper | undefined =>
  print ? paperNamed(paperSize) : undefined;

/** The print as a file to deliver: none without paper. */
export async function printFiles(
  paper: Paper | undefined,
  guide: string,
  stem: string,
  title: string,
  words: JobTools['words'],
): Promise<readonly NamedFile[]> {
  if (!paper) return [];
  const { printOf } = await import('../job/print.ts');
  const content = await printOf(guide, `${stem}.guide.svg`, { paper, title, words });
  return [{ file: `${stem}.print.pdf`, role: 'print', content }];
}
