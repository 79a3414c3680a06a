// A table on paper: how wide its columns are, and its rows.
import { brokenLines, type Setting, widthOf } from '../drawing/broken-lines.ts';

/** Clear between columns, mm. */
const gutter = 4;

/** Width of a column that is to be written in by hand, mm. */
const byHand = 22;

/** Where each column begins and how wide it is, mm. */
export interface Column {
  readonly x: number;
  readonly width: number;
}

/** `rows`: the head, then what is under it. Columns are as wide as their words where all fit; else narrow ones are, and the others share the rest by what they hold. */
export function columnsOf(
  rows: readonly (readonly string[])[],
  width: number,
  setting: Setting,
): readonly Column[] {
  const count = rows[0]?.length ?? 0;
  const [, ...body] = rows;
  const natural = Array.from({ length: count }, (_, i) => {
    const isEmpty = body.length > 0 && body.every((row) => row[i] === '');
    return Math.max(...rows.map((row) => widthOf(row[i] ?? '', setting)), isEmpty ? byHand : 1);
  });
  const room = width - gutter * (count - 1);
  let x = 0;
  return sharedWidths(natural, room).map((own) => {
    const column = { x, width: own };
    x += own + gutter;
    return column;
  });
}

/** Widths that add up to the room: what is narrower than its share keeps its own. */
function sharedWidths(natural: readonly number[], room: number): readonly number[] {
  const total = natural.reduce((sum, one) => sum + one, 0);
  if (total <= room) return natural.map((own) => (own * room) / total);
  const fixed = new Set<number>();
  for (;;) {
    const left = room - [...fixed].reduce((sum, i) => sum + (natural[i] ?? 0), 0);
    const share = left / (natural.length - fixed.size);
    const narrow = natural.flatMap((own, i) => (!fixed.has(i) && own <= share ? [i] : []));
    if (narrow.length === 0) {
      // A cell ten times as long is not to have ten times the width: its lines would still be fewer than the others'.
      const weight = (own: number) => Math.sqrt(own);
      const weights = natural.reduce((sum, own, i) => (fixed.has(i) ? sum : sum + weight(own)), 0);
      return natural.map((own, i) => (fixed.has(i) ? own : (left * weight(own)) / weights));
    }
    for (const i of narrow) fixed.add(i);
  }
}

/** The lines of a row's cells. */
export const cellLines = (
  row: readonly string[],
  columns: readonly Column[],
  setting: Setting,
): readonly (readonly string[])[] => columns.map(({ width }, i) => brokenLines(row[i] ?? '', width, setting));
