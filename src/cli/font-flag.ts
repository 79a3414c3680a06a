// `--font FILE`: fonts that texts in a drawing are set in.
import { drawingFonts, type JobTools } from '../job/tools.ts';
import { readBytes } from './files.ts';

/** A font file as it was named, and what it holds. */
export interface FontGiven {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** The fonts given by flags and by a job, and ours. @throws Refused where a file can't be read, or is no font. */
export async function fontsGiven(
  files: readonly string[] | undefined,
  tools: JobTools,
  byJob: readonly FontGiven[] = [],
): Promise<readonly Uint8Array[]> {
  const given = await Promise.all(
    (files ?? []).map(async (file) => ({ file, bytes: await readBytes(file, file, { key: '--font' }) })),
  );
  return drawingFonts(tools, [...given, ...byJob]);
}
