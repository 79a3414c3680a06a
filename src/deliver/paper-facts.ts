// Facts on paper, three to a row: what each is called, small, above what it is; a line where it is to be written in.
import { brokenLines } from '../drawing/broken-lines.ts';
import {
  type BlockOptions,
  colours,
  filledBox,
  inked,
  lineFor,
  lineFrom,
  sizes,
  space,
  type Unit,
  wordsAt,
} from './paper-ink.ts';
import type { Fact } from './write-page.ts';

const perRow = 3;
/** Clear between two facts, and least height of what is written in, mm. */
const gutter = 5;
const byHand = 6;

export function factUnits(facts: readonly Fact[], options: BlockOptions): Unit[] {
  const own = (options.width - gutter * (perRow - 1)) / perRow;
  const bar = filledBox(0, 0, options.width, 0.7, colours.ink);
  const rows: Unit[] = [{ height: 1.6, ink: inked(bar), keepsNext: true }];
  for (let i = 0; i < facts.length; i += perRow)
    rows.push({ ...factRow(facts.slice(i, i + perRow), own, options), keepsNext: true });
  return [...rows, space(1.5)];
}

function factRow(facts: readonly Fact[], own: number, { words, bold, width }: BlockOptions): Unit {
  const label = { words, em: sizes.label };
  const value = { words: bold, em: sizes.text };
  const step = lineFor(sizes.text);
  const first = lineFor(sizes.label);
  const lines = facts.map(({ is }) => (is === '' ? [] : brokenLines(is, own, value)));
  const tallest = Math.max(...lines.map((all) => (all.length === 0 ? byHand : all.length * step)));
  const height = first + tallest + 1.4;
  const drawn = facts.flatMap(({ says, is }, i) => {
    const x = i * (own + gutter);
    const written = (lines[i] ?? []).map((line, k) => wordsAt(line, value, x, first + sizes.text + k * step));
    const toWrite = is === '' ? [lineFrom(x, height - 1.6, x + own, height - 1.6, colours.ink)] : [];
    return [wordsAt(says, label, x, sizes.label, colours.quiet), ...written, ...toWrite];
  });
  return { height: height + 0.6, ink: inked(...drawn, lineFrom(0, height, width, height, colours.rule)) };
}
