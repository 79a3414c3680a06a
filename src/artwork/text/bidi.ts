// Adapter: bidi-js (MIT), the Unicode bidirectional algorithm: which parts of a line run to the left.
import bidiFactory from 'bidi-js';

export type Direction = 'auto' | 'ltr' | 'rtl';

/** A stretch of a line that runs one way, from one place of the text up to another. */
export interface DirectedRun {
  readonly from: number;
  readonly to: number;
  readonly isRightToLeft: boolean;
}

/** Runs of one line in the order they stand, from left to right. Source: Unicode Standard Annex 9, rule L2. */
export type ReadDirections = (line: string, direction: Direction) => readonly DirectedRun[];

/** Ready the algorithm's tables. */
export function readDirections(): ReadDirections {
  const bidi = bidiFactory();
  return (line, direction) => {
    const { levels } = bidi.getEmbeddingLevels(line, ...(direction === 'auto' ? [] : [direction]));
    const runs: (DirectedRun & { readonly level: number })[] = [];
    for (let from = 0; from < line.length; ) {
      const level = levels[from] ?? 0;
      let to = from + 1;
      while (to < line.length && levels[to] === level) to++;
      runs.push({ from, to, level, isRightToLeft: level % 2 === 1 });
      from = to;
    }
    return inOrder(runs);
  };
}

/** From the highest level down, every stretch of runs at that level or above is turned round. */
function inOrder<R extends { readonly level: number }>(runs: readonly R[]): readonly R[] {
  const order = [...runs];
  for (let level = Math.max(0, ...runs.map((run) => run.level)); level > 0; level--)
    for (let i = 0; i < order.length; i++) {
      let end = i;
      while ((order[end]?.level ?? 0) >= level) end++;
      if (end - i > 1) order.splice(i, end - i, ...order.slice(i, end).reverse());
      i = Math.max(i, end);
    }
  return order;
}
