// The prints of written guides, where they are asked for. The PDF writer is loaded only then.
import type { NamedFile, WrittenPiece } from '../deliverables.ts';
import type { JobTools } from '../tools.ts';
import { correctionOf } from '../typed/measured.ts';
import type { Paper } from '../typed/print-paper.ts';
import type { Printer } from '../typed/read-printer.ts';

/** Paper, and what its printer is to be corrected by. */
export interface PrintOn {
  readonly paper: Paper;
  readonly printer?: Printer | undefined;
}

/** The guide of each piece, or what else of it is to print, at true size on paper: none without paper. */
export async function printFiles(
  on: PrintOn | undefined,
  pieces: readonly Pick<WrittenPiece, 'stem' | 'guide'>[],
  name: string,
  words: JobTools['words'],
): Promise<readonly NamedFile[]> {
  if (!on) return [];
  const { paper, printer } = on;
  const correction = correctionOf(printer?.measured);
  const { printOf } = await import('./print.ts');
  return Promise.all(
    pieces.map(async ({ stem, guide }) => {
      const content = await printOf(guide, `${stem}.guide.svg`, {
        paper,
        title: `${name}: ${stem}`,
        words,
        correction,
      });
      return { file: `${stem}.print.pdf`, role: 'print', content };
    }),
  );
}

/** What a job's prints are to be made on; nothing where none are asked for. */
export const printOn = (
  { paper }: { readonly paper?: Paper | undefined },
  { printer }: { readonly printer?: Printer },
): PrintOn | undefined => (paper ? { paper, printer } : undefined);
