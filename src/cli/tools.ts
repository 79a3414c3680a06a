// The heavy tools, loaded only when a command needs them.
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { DrawWords } from '../artwork/lettering.ts';
import type { SvgEngine } from '../artwork/svg-normalise.ts';

const find = createRequire(import.meta.url).resolve;

export async function loadSvgEngine(): Promise<SvgEngine> {
  const [{ startSvgEngine }, wasm] = await Promise.all([
    import('../artwork/svg-normalise.ts'),
    readFile(find('@resvg/resvg-wasm/index_bg.wasm')),
  ]);
  return startSvgEngine(wasm);
}

/** The lettering of guides: an open font (OFL-1.1) made to be legible when small. */
export async function loadWords(): Promise<DrawWords> {
  const [{ loadFont }, bytes] = await Promise.all([
    import('../artwork/lettering.ts'),
    readFile(find('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf')),
  ]);
  return loadFont(bytes);
}
