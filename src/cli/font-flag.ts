// `--font FILE`: fonts that texts in a drawing are set in.
import { drawingFonts, type JobTools } from '../job/tools.ts';
import { readBytes } from './files.ts';

/** The fonts given, and ours. @throws Refused where a file can't be read, or is no font. */
export async function fontsGiven(
  files: readonly string[] | undefined,
  tools: JobTools,
): Promise<readonly Uint8Array[]> {
  const given = await Promise.all(
    (files ?? []).map(async (file) => ({ file, bytes: await readBytes(file, file, { key: '--font' }) })),
  );
  return drawingFonts(tools, given);
}
