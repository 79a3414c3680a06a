// Loading the heavy tools, only when a command needs them.
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { JobTools } from '../job/tools.ts';

const find = createRequire(import.meta.url).resolve;

const svgEngine = () => find('@resvg/resvg-wasm/index_bg.wasm');

/** The engine that reads SVG, as it is compiled on other threads: begun at once, it takes none of the time in which modules are read. */
export function compiledSvgEngine(): Promise<object> {
  const compiled = WebAssembly.compile(readFileSync(svgEngine()));
  // Where the job is refused before it is asked for, nobody looks.
  compiled.catch(() => undefined);
  return compiled;
}

/** The lettering of guides: an open font (OFL-1.1) made to be legible when small. */
const readFont = () =>
  readFile(find('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf'));

/** The same for headings. */
const readBold = () =>
  readFile(find('@expo-google-fonts/atkinson-hyperlegible/700Bold/AtkinsonHyperlegible_700Bold.ttf'));

/** `engine`: as it was begun before. */
export async function loadTools(engine?: Promise<object>): Promise<JobTools> {
  const [{ startTools }, svg, font, bold] = await Promise.all([
    import('../job/tools.ts'),
    engine ?? readFile(svgEngine()),
    readFont(),
    readBold(),
  ]);
  return startTools({ svg, font, bold });
}

export async function loadWords(): Promise<JobTools['words']> {
  const [{ startWords }, font] = await Promise.all([import('../job/tools.ts'), readFont()]);
  return startWords(font);
}
