// Loading the heavy tools, only when a command needs them.
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { JobTools } from '../job/tools.ts';

const find = createRequire(import.meta.url).resolve;

const readSvgEngine = () => readFile(find('@resvg/resvg-wasm/index_bg.wasm'));

/** The lettering of guides: an open font (OFL-1.1) made to be legible when small. */
const readFont = () =>
  readFile(find('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf'));

/** The same for headings. */
const readBold = () =>
  readFile(find('@expo-google-fonts/atkinson-hyperlegible/700Bold/AtkinsonHyperlegible_700Bold.ttf'));

export async function loadTools(): Promise<JobTools> {
  const [{ startTools }, svg, font, bold] = await Promise.all([
    import('../job/tools.ts'),
    readSvgEngine(),
    readFont(),
    readBold(),
  ]);
  return startTools({ svg, font, bold });
}

export async function loadWords(): Promise<JobTools['words']> {
  const [{ startWords }, font] = await Promise.all([import('../job/tools.ts'), readFont()]);
  return startWords(font);
}
