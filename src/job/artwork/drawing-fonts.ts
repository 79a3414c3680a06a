// The fonts that texts in a job's drawings are set in.
import type { MakeInput } from '../make-input.ts';
import { drawingFonts } from '../tools.ts';
import { bytesOf } from '../typed/named-files.ts';

/** Those that the job names, and ours. @throws Refused where a file was not given, or is no font. */
export const fontsOf = ({
  job,
  files,
  tools,
}: Pick<MakeInput, 'job' | 'files' | 'tools'>): readonly Uint8Array[] =>
  drawingFonts(
    tools,
    (job.artwork?.fonts ?? []).map((file) => ({ file, bytes: bytesOf(files, file) })),
  );
