// The blocks of a page as what can't be parted on paper: lines, rows, pictures, each with its height.
import { brokenLines, type Setting } from '../drawing/broken-lines.ts';
import type { DrawnGroup } from '../drawing/drawing.ts';
import type { DrawWords } from '../drawing/words.ts';
import { shifted } from '../geometry/affine.ts';
import { boxCorners } from '../geometry/box.ts';
import { polygon, polyline } from '../geometry/contour.ts';
import type { FlatPicture } from './flat-picture.ts';
import { cellLines, columnsOf } from './paper-table.ts';
import type { PlacedPicture } from './placed-picture.ts';
import type { Block, Section, TimeSpan } from './write-page.ts';

/** What is drawn, mm from the top left corner of its own place. */
export interface Ink {
  readonly groups: readonly DrawnGroup[];
  readonly pictures: readonly PlacedPicture[];
}

/** What stays whole on a page. */
export interface Unit {
  /** mm, what is clear below it too. */
  readonly height: number;
  readonly ink: Ink;
  /** Whether the next one has to stand on the same page. */
  readonly keepsNext?: boolean;
  /** What stands above it again where it begins a page: the head of its table. */
  readonly head?: Unit;
}

export interface BlockOptions {
  readonly words: DrawWords;
  /** Width there is, mm. */
  readonly width: number;
  /** Tallest picture, mm. */
  readonly tallest: number;
  /** A picture by its file's name; undefined where there is none. */
  readonly pictureOf: (file: string) => FlatPicture | undefined;
}

/** Heights of words, mm, and of a line over them. */
const sizes = { title: 6.2, heading: 4.6, text: 3.4, small: 2.9 } as const;
const lineFor = (em: number): number => em * 1.42;

const colours = { ink: '#1c1c1c', rule: '#8a8a8a', caution: '#b3541e', work: '#3a5a8c' } as const;

export const wordsAt = (text: string, { words, em }: Setting, x: number, y: number): DrawnGroup => ({
  role: 'note',
  colour: colours.ink,
  paths: [{ contours: shifted(words(text, em), { x, y }) }].filter(({ contours }) => contours.length > 0),
});

/** `outline` is drawn without dashes. */
const lineFrom = (x1: number, y1: number, x2: number, y2: number, colour: string): DrawnGroup => ({
  role: 'outline',
  colour,
  paths: [
    {
      contours: [
        polyline([
          { x: x1, y: y1 },
          { x: x2, y: y2 },
        ]),
      ],
    },
  ],
});

const boxAt = (x: number, y: number, width: number, height: number) =>
  polygon(boxCorners({ minX: x, minY: y, maxX: x + width, maxY: y + height }));

const inked = (...groups: readonly DrawnGroup[]): Ink => ({ groups, pictures: [] });

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

const space = (height: number): Unit => ({ height, ink: inked() });

/** An item with its mark before the first line. */
function itemUnits(text: string, options: BlockOptions, mark: DrawnGroup): Unit[] {
  const [first, ...rest] = textUnits(text, options, 7);
  return first ? [beside(first, mark), ...rest, space(0.8)] : [];
}

const listUnits = (items: readonly string[], options: BlockOptions, numbered = false): Unit[] =>
  items.flatMap((item, i) =>
    itemUnits(
      item,
      options,
      wordsAt(numbered ? `${i + 1}.` : '•', { words: options.words, em: sizes.text }, 2, sizes.text),
    ),
  );

const tickUnits = (items: readonly string[], options: BlockOptions): Unit[] =>
  items.flatMap((item) =>
    itemUnits(item, options, {
      role: 'outline',
      colour: colours.ink,
      paths: [{ contours: [boxAt(1, 0.4, 3.4, 3.4)] }],
    }),
  );

/** A warm bar at the left of every line, and the word itself. */
function cautionUnits(items: readonly string[], options: BlockOptions): Unit[] {
  const inner = [
    ...textUnits('Caution', options, 4).map((unit) => ({ ...unit, keepsNext: true })),
    ...items.flatMap((item) =>
      itemUnits(item, options, wordsAt('•', { words: options.words, em: sizes.text }, 4, sizes.text)),
    ),
  ];
  const bar = (height: number): DrawnGroup => ({
    role: 'outline',
    colour: colours.caution,
    paths: [0, 0.3, 0.6].map((x) => ({
      contours: [
        polyline([
          { x, y: 0 },
          { x, y: height },
        ]),
      ],
    })),
  });
  return [...inner.map((unit) => beside(unit, bar(unit.height))), space(2)];
}

function tableUnits(
  { head, rows }: Extract<Block, { kind: 'table' }>,
  { words, width }: BlockOptions,
): Unit[] {
  const setting = { words, em: sizes.small };
  const columns = columnsOf([head, ...rows], width, setting);
  const step = lineFor(sizes.small);
  const unitOf = (row: readonly string[], colour: string): Unit => {
    const cells = cellLines(row, columns, setting);
    const height = 1.6 + step * Math.max(1, ...cells.map((lines) => lines.length));
    const drawn = cells.flatMap((lines, i) =>
      lines.map((line, k) => wordsAt(line, setting, columns[i]?.x ?? 0, sizes.small + 0.6 + k * step)),
    );
    return { height, ink: inked(...drawn, lineFrom(0, height, width, height, colour)) };
  };
  const top = { ...unitOf(head, colours.ink), keepsNext: true };
  return [top, ...rows.map((row) => ({ ...unitOf(row, colours.rule), head: top })), space(3)];
}

function pictureUnits({ file, says }: Extract<Block, { kind: 'picture' }>, options: BlockOptions): Unit[] {
  const picture = options.pictureOf(file);
  if (!picture) return [];
  const width = Math.min(options.width, options.tallest / picture.aspect);
  const height = width * picture.aspect;
  const drawn = { png: picture.png, x: 0, y: 0, width, height };
  return [
    { height: height + 1, ink: { groups: [], pictures: [drawn] }, keepsNext: true },
    ...textUnits(says, options, 0, sizes.small),
    space(3),
  ];
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
    const bar = boxAt(spans.words + from * scale, 1.2, Math.max(0.6, (to - from) * scale), spans.bar);
    return {
      height: spans.row,
      ink: inked(wordsAt(line, setting, 0, sizes.small + 0.5), {
        role: isWait ? 'outline' : 'artwork',
        colour: colours.work,
        paths: [{ contours: [bar] }],
      }),
      keepsNext: true,
    };
  });
  const axis = `from 0 to ${Math.ceil(end)} hours; filled is work, empty is waiting`;
  return [...rows, { height: spans.row, ink: inked(wordsAt(axis, setting, spans.words, sizes.small)) }];
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
    case 'timeline':
      return timelineUnits(block.spans, options);
  }
}

/** A heading, its rule, and what stands under it; nothing where that is nothing. */
export function sectionUnits({ heading, blocks }: Section, options: BlockOptions): Unit[] {
  const inside = blocks.flatMap((block) => blockUnits(block, options));
  if (inside.length === 0) return [];
  const setting = { words: options.words, em: sizes.heading };
  const height = 4 + sizes.heading * 1.5;
  const rule = lineFrom(0, height - 1.4, options.width, height - 1.4, colours.rule);
  return [
    { height, ink: inked(wordsAt(heading, setting, 0, 3 + sizes.heading), rule), keepsNext: true },
    ...inside,
  ];
}

/** The title of a page and the line under it. */
export const titleUnits = (title: string, lead: string, options: BlockOptions): Unit[] => [
  ...textUnits(title, options, 0, sizes.title),
  ...textUnits(lead, options),
];
