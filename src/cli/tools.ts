// Loading the heavy tools, only when a command needs them.
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { JobTools } from '../job/tools.ts';

const find = createRequire(import.meta.url).resolve;

const readSvgEngine = () => readFile(find('@resvg/resvg-wasm/index_bg.wasm'));

/** The lettering of guides: an open font (OFL-1.1) made to be legible when small. */
const readFont = () =>
  readFile(find('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf'));

export async function loadTools(): Promise<JobTools> {
  const [{ startTools }, svg, font] = await Promise.all([
    import('../job/tools.ts'),
    readSvgEngine(),
    readFont(),
  ]);
  return startTools({ svg, font });
}

export async function loadWords(): Promise<JobTools['words']> {
  const [{ startWords }, font] = await Promise.all([import('../job/tools.ts'), readFont()]);
  return startWords(font);
}
