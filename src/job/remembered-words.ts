// Words for guides, drawn once for many guides that say the same.
import type { DrawWords } from '../drawing/words.ts';
import type { Contour } from '../geometry/contour.ts';

/** The same words, the last `most` lines of them kept. */
export function rememberedWords(words: DrawWords, most: number): DrawWords {
  const kept = new Map<string, readonly Contour[]>();
  return (text, em) => {
    const key = `${em} ${text}`;
    const drawn = kept.get(key) ?? words(text, em);
    kept.delete(key);
    kept.set(key, drawn);
    for (const oldest of kept.keys()) {
      if (kept.size <= most) break;
      kept.delete(oldest);
    }
    return drawn;
  };
}
