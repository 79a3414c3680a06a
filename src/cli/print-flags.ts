// The flags of prints.

import type { PrintOn } from '../job/prints/prints.ts';
import { type Paper, paperNamed } from '../job/typed/print-paper.ts';
import { parseJson } from '../job/typed/read-json.ts';
import { type Printer, readPrinter } from '../job/typed/read-printer.ts';
import { readText } from './files.ts';

export interface PrinterFlags {
  readonly printer?: string;
}

export interface PrintFlags extends PrinterFlags {
  readonly print?: boolean;
  readonly paperSize: string;
}

/** The paper to print on; undefined where no print is asked for. @throws Refused where there is none of that name. */
export const printPaper = ({ print, paperSize }: Omit<PrintFlags, 'printer'>): Paper | undefined =>
  print ? paperNamed(paperSize) : undefined;

/** The printer that a flag names the file of. @throws Refused */
export async function givenPrinter({ printer: file }: PrinterFlags): Promise<Printer | undefined> {
  if (file === undefined) return undefined;
  return readPrinter(parseJson(await readText(file, file, { key: '--printer' }), file), file);
}

/** What is printed on; undefined where no print is asked for. @throws Refused */
export async function printingOn(flags: PrintFlags): Promise<PrintOn | undefined> {
  const paper = printPaper(flags);
  const printer = await givenPrinter(flags);
  return paper && { paper, printer };
}
