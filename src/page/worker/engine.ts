// The heavy tools, fetched beside the page when the first question needs them.
import fontUrl from '@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf?url';
import boldUrl from '@expo-google-fonts/atkinson-hyperlegible/700Bold/AtkinsonHyperlegible_700Bold.ttf?url';
import svgUrl from '@resvg/resvg-wasm/index_bg.wasm?url';
import { rememberedWords } from '../../job/list/remembered-words.ts';
import type { JobTools } from '../../job/tools.ts';

async function bytesAt(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${url} could not be fetched (${answer.status}); load the page again`);
  return new Uint8Array(await answer.arrayBuffer());
}

let words: Promise<JobTools['words']> | undefined;
let tools: Promise<JobTools> | undefined;

/** Lines of words that pictures say again and again are kept, so many of them. */
const linesKept = 200;

/** The lettering alone, for pictures of a vessel. */
export function loadWords(): Promise<JobTools['words']> {
  words ??= (async () => {
    const [{ startWords }, font] = await Promise.all([import('../../job/tools.ts'), bytesAt(fontUrl)]);
    return rememberedWords(await startWords(font), linesKept);
  })();
  return words;
}

export function loadTools(): Promise<JobTools> {
  tools ??= (async () => {
    const [{ startTools }, svg, font, bold] = await Promise.all([
      import('../../job/tools.ts'),
      bytesAt(svgUrl),
      bytesAt(fontUrl),
      bytesAt(boldUrl),
    ]);
    return startTools({ svg, font, bold });
  })();
  return tools;
}
