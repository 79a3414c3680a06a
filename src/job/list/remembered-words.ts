// Words for guides, drawn and measured once for many guides that say the same.
import type { DrawWords } from '../../drawing/words.ts';

/** The same words, the last `most` lines of them kept. */
export function rememberedWords(words: DrawWords, most: number): DrawWords {
  const draw = remembered(words, most);
  return words.reach ? Object.assign(draw, { reach: remembered(words.reach, most) }) : draw;
}

/** What is worked out of a line of words, the last `most` lines kept. */
function remembered<T>(ofLine: (text: string, em: number) => T, most: number) {
  const kept = new Map<string, { readonly value: T }>();
  return (text: string, em: number): T => {
    const key = `${em} ${text}`;
    const known = kept.get(key) ?? { value: ofLine(text, em) };
    kept.delete(key);
    kept.set(key, known);
    for (const oldest of kept.keys()) {
      if (kept.size <= most) break;
      kept.delete(oldest);
    }
    return known.value;
  };
}
