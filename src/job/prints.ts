// The prints of written guides, where they are asked for. The PDF writer is loaded only then.
import type { NamedFile, WrittenPiece } from './deliverables.ts';
import type { Paper } from './print-paper.ts';
import type { JobTools } from './tools.ts';

/** The guide of each piece at true size on paper: none without paper. */
export async function printFiles(
  paper: Paper | undefined,
  pieces: readonly WrittenPiece[],
  name: string,
  words: JobTools['words'],
): Promise<readonly NamedFile[]> {
  if (!paper) return [];
  const { printOf } = await import('./print.ts');
  return Promise.all(
    pieces.map(async ({ stem, guide }) => {
      const content = await printOf(guide, `${stem}.guide.svg`, { paper, title: `${name}: ${stem}`, words });
      return { file: `${stem}.print.pdf`, role: 'print', content };
    }),
  );
}
