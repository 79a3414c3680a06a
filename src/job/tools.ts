// The heavy tools a job needs, started from their bytes.
import { loadFont } from '../artwork/lettering.ts';
import { type SvgEngine, startSvgEngine } from '../artwork/svg-normalise.ts';
import type { DrawWords } from '../drawing/words.ts';

export interface JobTools extends SvgEngine {
  readonly words: DrawWords;
}

/** Start the SVG reader from its WebAssembly and the lettering from a font file. */
export async function startTools(bytes: {
  readonly svg: Uint8Array;
  readonly font: Uint8Array;
}): Promise<JobTools> {
  return { ...(await startSvgEngine(bytes.svg)), words: loadFont(bytes.font) };
}

/** The lettering alone, for commands that read no artwork. */
export const startWords = loadFont;
