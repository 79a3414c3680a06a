// The flags of prints.
import { type Paper, paperNamed } from '../job/print-paper.ts';

export interface PrintFlags {
  readonly print?: boolean;
  readonly paperSize: string;
}

/** The paper to print on; undefined where no print is asked for. @throws Refused where there is none of that name. */
export const printPaper = ({ print, paperSize }: PrintFlags): Paper | undefined =>
  print ? paperNamed(paperSize) : undefined;
