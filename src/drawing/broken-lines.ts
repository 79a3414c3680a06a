// Words broken into lines that fit a width.
import { tightBox } from '../geometry/measure.ts';
import type { DrawWords } from './words.ts';

/** How words are set. */
export interface Setting {
  readonly words: DrawWords;
  /** Height of the font's em, mm. */
  readonly em: number;
}

/** Width of a line of words, mm. */
export function widthOf(text: string, { words, em }: Setting): number {
  if (words.reach) return words.reach(text, em);
  const drawn = words(text, em);
  return drawn.length > 0 ? tightBox(drawn).maxX : 0;
}

/** The spaces that a line may end at: none between a figure and its unit. */
const betweenWords = /(?<!\d) | (?!(?:mm|cm|in|%)(?!\w))/;

/** A line of words broken between words so that each part fits the width, mm; a single long word stays whole. */
export function brokenLines(text: string, width: number, setting: Setting): string[] {
  const lines: string[] = [];
  let left = text.split(betweenWords);
  while (left.length > 0) {
    const rest = left;
    const count = mostThatFit(
      rest.length,
      (some) => widthOf(rest.slice(0, some).join(' '), setting) <= width,
    );
    lines.push(rest.slice(0, count).join(' '));
    left = rest.slice(count);
  }
  return lines;
}

/** The greatest count from 1 to `most` that fits, by halving: what is longer is wider. At least 1. */
function mostThatFit(most: number, fits: (count: number) => boolean): number {
  if (fits(most)) return most;
  let [holds, fails] = [1, most];
  while (fails - holds > 1) {
    const middle = (holds + fails) >> 1;
    if (fits(middle)) holds = middle;
    else fails = middle;
  }
  return holds;
}
