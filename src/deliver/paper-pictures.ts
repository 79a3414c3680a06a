// Pictures on paper: one over the whole width, or rows of several that fill it, each with its words below.
import { brokenLines } from '../drawing/broken-lines.ts';
import type { FlatPicture } from './flat-picture.ts';
import { type BlockOptions, colours, inked, lineFor, sizes, space, type Unit, wordsAt } from './paper-ink.ts';
import type { Picture } from './write-page.ts';

/** Clear between two pictures, mm. */
const gutter = 5;
/** Pictures that stand in rows are no taller than this share of the tallest. */
const rowShare = 0.65;

interface Shown {
  readonly says: string;
  readonly picture: FlatPicture;
}

export function pictureUnits(picture: Picture, options: BlockOptions): Unit[] {
  const shown = shownOf([picture], options);
  return shown.length > 0 ? [...rowUnits(shown, options.tallest, options), space(2)] : [];
}

/** Rows as high as fills the width; one that would be too high has room left at its right. */
export function picturesUnits(items: readonly Picture[], options: BlockOptions): Unit[] {
  const tallest = options.tallest * rowShare;
  return rowsOf(shownOf(items, options), tallest, options.width).flatMap((row) => [
    ...rowUnits(row, tallest, options),
    space(2),
  ]);
}

const shownOf = (items: readonly Picture[], { pictureOf }: BlockOptions): Shown[] =>
  items.flatMap(({ file, says }) => {
    const picture = pictureOf(file);
    return picture ? [{ says, picture }] : [];
  });

/** How high a row is that fills the width, mm. */
function filling(row: readonly Shown[], width: number): number {
  const across = row.reduce((sum, { picture }) => sum + 1 / picture.aspect, 0);
  return (width - gutter * (row.length - 1)) / across;
}

function rowsOf(all: readonly Shown[], tallest: number, width: number): Shown[][] {
  const rows: Shown[][] = [];
  for (const shown of all) {
    const last = rows.at(-1);
    if (last && filling(last, width) > tallest) last.push(shown);
    else rows.push([shown]);
  }
  return rows;
}

function rowUnits(row: readonly Shown[], tallest: number, { words, width }: BlockOptions): Unit[] {
  const setting = { words, em: sizes.small };
  const high = Math.min(tallest, filling(row, width));
  let x = 0;
  const placed = row.map(({ picture, says }) => {
    const across = high / picture.aspect;
    const at = { png: picture.png, x, y: 0, width: across, height: high };
    x += across + gutter;
    return { at, lines: brokenLines(says, across, setting) };
  });
  const step = lineFor(sizes.small);
  const caption = placed.flatMap(({ at, lines }) =>
    lines.map((line, k) => wordsAt(line, setting, at.x, sizes.small + k * step, colours.quiet)),
  );
  return [
    { height: high + 1.2, ink: { groups: [], pictures: placed.map(({ at }) => at) }, keepsNext: true },
    { height: step * Math.max(...placed.map(({ lines }) => lines.length)), ink: inked(...caption) },
  ];
}
