// The blocks of a page as what can't be parted on paper: lines, rows, pictures, each with its height.
import { brokenLines } from '../drawing/broken-lines.ts';
import type { DrawnGroup } from '../drawing/drawing.ts';
import { factUnits } from './paper-facts.ts';
import {
  type BlockOptions,
  boxAt,
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
import { picturesUnits, pictureUnits } from './paper-pictures.ts';
import { cellLines, columnsOf } from './paper-table.ts';
import type { Block, Page, Section, TimeSpan } from './write-page.ts';

/** Lines of a text one under another, from a distance on. */
function textUnits(text: string, { words, width }: BlockOptions, from = 0, em: number = sizes.text): Unit[] {
  const setting = { words, em };
  return brokenLines(text, width - from, setting).map((line) => ({
    height: lineFor(em),
    ink: inked(wordsAt(line, setting, from, em)),
  }));
}

/** A unit with something drawn beside it. */
const beside = (unit: Unit, ...groups: readonly DrawnGroup[]): Unit => ({
  ...unit,
  ink: { ...unit.ink, groups: [...groups, ...unit.ink.groups] },
});

/** An item with its mark before the first line; short ones stay whole. */
function itemUnits(text: string, options: BlockOptions, mark: DrawnGroup): Unit[] {
  const [first, ...rest] = textUnits(text, options, 7);
  if (!first) return [];
  const lines = [beside(first, mark), ...rest];
  return [...lines.map((line, i) => ({ ...line, keepsNext: i < Math.min(lines.length, 6) - 1 })), space(0.8)];
}

const listUnits = (items: readonly string[], options: BlockOptions, numbered = false): Unit[] =>
  itemsTogether(
    items.map((item, i) =>
      itemUnits(
        item,
        options,
        wordsAt(numbered ? `${i + 1}.` : '•', { words: options.words, em: sizes.text }, 2, sizes.text),
      ),
    ),
  );

/** An empty box to tick. */
const tickBox = (x: number, y: number): DrawnGroup => ({
  role: 'outline',
  colour: colours.ink,
  paths: [{ contours: [boxAt(x, y, 3, 3)] }],
});

const tickUnits = (items: readonly string[], options: BlockOptions): Unit[] =>
  itemsTogether(items.map((item) => itemUnits(item, options, tickBox(0.6, 0.5))));

/** Items one under another, of which no page has the first or the last alone. */
const itemsTogether = (items: readonly (readonly Unit[])[]): Unit[] =>
  items.flatMap((units, i) => {
    const stays = i < items.length - 1 && (i === 0 || i === items.length - 2);
    return stays ? units.map((unit) => ({ ...unit, keepsNext: true })) : units;
  });

/** A warm bar at the left of every line, and the word itself. */
function cautionUnits(items: readonly string[], options: BlockOptions): Unit[] {
  const inner = [
    ...textUnits('Caution', { ...options, words: options.bold }, 4).map((unit) => ({
      ...unit,
      keepsNext: true,
    })),
    ...items.flatMap((item) =>
      itemUnits(item, options, wordsAt('•', { words: options.words, em: sizes.text }, 4, sizes.text)),
    ),
  ];
  return [...inner.map((unit) => beside(unit, filledBox(0, 0, 1.1, unit.height, colours.caution))), space(2)];
}

/** Tables of up to so many rows stay whole. */
const shortTable = 5;

/** Width of the column of boxes to tick, mm. */
const tickColumn = 6;

function tableUnits(
  { head, rows, ticks = false }: Extract<Block, { kind: 'table' }>,
  { words, bold, width }: BlockOptions,
): Unit[] {
  const from = ticks ? tickColumn : 0;
  const columns = columnsOf([head, ...rows], width - from, { words: bold, em: sizes.small });
  const step = lineFor(sizes.small);
  const unitOf = (row: readonly string[], isHead: boolean): Unit => {
    const setting = { words: isHead ? bold : words, em: sizes.small };
    const cells = cellLines(row, columns, setting);
    const height = 1.8 + step * Math.max(1, ...cells.map((lines) => lines.length));
    const drawn = cells.flatMap((lines, i) =>
      lines.map((line, k) =>
        wordsAt(line, setting, from + (columns[i]?.x ?? 0), sizes.small + 0.7 + k * step),
      ),
    );
    const box = ticks && !isHead ? [tickBox(0.6, 0.9)] : [];
    const rule = lineFrom(0, height, width, height, isHead ? colours.ink : colours.rule);
    return { height, ink: inked(...box, ...drawn, rule) };
  };
  const top = { ...unitOf(head, true), keepsNext: true };
  // No row stands alone: a short table is one, and of a long one the first two stay together, and the last two.
  const keeps = (i: number) => rows.length <= shortTable || i === 0 || i === rows.length - 2;
  const body = rows.map(
    (row, i): Unit => ({ ...unitOf(row, false), head: top, keepsNext: i < rows.length - 1 && keeps(i) }),
  );
  return [top, ...body, space(3)];
}

/** Room for what a span is called, mm, and height of a row. */
const spans = { words: 72, row: 5.2, bar: 2.6 } as const;

/** Filled bars for work, empty ones for waiting, one a row, on a line of hours. */
function timelineUnits(all: readonly TimeSpan[], options: BlockOptions): Unit[] {
  const setting = { words: options.words, em: sizes.small };
  const end = Math.max(...all.map(({ to }) => to), 1e-9);
  const scale = (options.width - spans.words) / end;
  const rows = all.map(({ says, from, to, isWait }): Unit => {
    const [line = ''] = brokenLines(says, spans.words - 3, setting);
    const place = [spans.words + from * scale, 1.2, Math.max(0.8, (to - from) * scale), spans.bar] as const;
    const bar: DrawnGroup = isWait
      ? { role: 'outline', colour: colours.work, paths: [{ contours: [boxAt(...place)] }] }
      : filledBox(...place, colours.work);
    const rule = lineFrom(0, spans.row, options.width, spans.row, colours.rule);
    return {
      height: spans.row,
      ink: inked(rule, wordsAt(line, setting, 0, sizes.small + 0.5), bar),
      keepsNext: true,
    };
  });
  const axis = `from 0 to ${Math.ceil(end)} hours; filled is work, empty is waiting`;
  const words = wordsAt(axis, setting, spans.words, sizes.small + 1, colours.quiet);
  return [...rows, { height: spans.row + 2, ink: inked(words) }];
}

function blockUnits(block: Block, options: BlockOptions): Unit[] {
  switch (block.kind) {
    case 'words':
      return [...textUnits(block.text, options), space(1.5)];
    case 'list':
      return [...listUnits(block.items, options, block.numbered), space(1)];
    case 'ticks':
      return [...tickUnits(block.items, options), space(1)];
    case 'links':
      return listUnits(
        block.items.map(({ file, says }) => `${file}: ${says}`),
        options,
      );
    case 'caution':
      return cautionUnits(block.items, options);
    case 'table':
      return tableUnits(block, options);
    case 'picture':
      return pictureUnits(block, options);
    case 'pictures':
      return picturesUnits(block.items, options);
    case 'timeline':
      return timelineUnits(block.spans, options);
  }
}

/** Units whose last line, and the space after it, stay with what follows. */
const keptTo = (units: readonly Unit[]): Unit[] =>
  units.map((unit, i) => (i < units.length - 2 ? unit : { ...unit, keepsNext: true }));

/** A heading, its rule, and what stands under it; nothing where that is nothing. */
export function sectionUnits({ heading, blocks }: Section, options: BlockOptions): Unit[] {
  const inside = blocks.flatMap((block, i) => {
    const units = blockUnits(block, options);
    // Words under a table or a timeline are about it.
    return blocks[i + 1]?.kind === 'words' ? keptTo(units) : units;
  });
  if (inside.length === 0) return [];
  const setting = { words: options.bold, em: sizes.heading };
  const height = 4.5 + sizes.heading * 1.5;
  const bar = filledBox(0, height - 1.9, options.width, 0.45, colours.ink);
  return [
    { height, ink: inked(wordsAt(heading, setting, 0, 2.8 + sizes.heading), bar), keepsNext: true },
    ...inside,
  ];
}

/** The head of a page: its title, the line under it, and the facts it is known by. */
export const titleUnits = ({ title, lead, facts = [] }: Page, options: BlockOptions): Unit[] => [
  ...textUnits(title, { ...options, words: options.bold }, 0, sizes.title),
  ...textUnits(lead, options),
  space(1.5),
  ...(facts.length > 0 ? factUnits(facts, options) : []),
];
