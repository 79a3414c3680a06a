// A contact sheet of the ways a pattern can close: each rolled on the vessel, numbered as in the list.
import type { DrawWords } from '../../drawing/words.ts';
import { brokenRows } from '../inspected.ts';
import { ink, widthsOf, wordsWith } from '../profile-ink.ts';
import { millimetres } from '../rolled-path.ts';
import type { RolledInside } from './rolled.ts';

/** One way: its number in the list, its key, and what is said of it in a line or two. */
export interface WayShown {
  readonly number: number;
  readonly key: string;
  readonly says: string;
  /** Why it is not drawn, where it could not be. */
  readonly picture: RolledInside | { readonly missing: string };
  /** Whether it is the one that is taken unasked. */
  readonly taken: boolean;
}

/** Ways beside one another. */
const columns = 3;

/** The text of the sheet, mm, y down; the pictures are all of one vessel, and of one size. */
export function waysSheet(
  { title, ways }: { readonly title: string; readonly ways: readonly WayShown[] },
  caption: DrawWords,
): string {
  const sizes = ways.flatMap(({ picture }) => ('inside' in picture ? [picture] : []));
  const [width, height] = [
    Math.max(60, ...sizes.map((one) => Number(one.width))),
    Math.max(40, ...sizes.map((one) => Number(one.height))),
  ];
  const em = width / 40;
  const put = wordsWith(caption);
  const measure = widthsOf(put, em);
  const said = ways.map(({ says }) => brokenRows(says, width - 2 * em, measure));
  const lines = Math.max(1, ...said.map((rows) => rows.length));
  const step = { x: width + 2 * em, y: height + (3.4 + 1.4 * lines) * em };
  const across = Math.min(columns, Math.max(1, ways.length));
  const sheet = {
    width: across * step.x + 2 * em,
    height: 5 * em + Math.ceil(ways.length / across) * step.y + em,
  };
  const cells = ways.map((way, i) => {
    const at = { x: 2 * em + (i % across) * step.x, y: 5 * em + Math.floor(i / across) * step.y };
    return cellText(way, said[i] ?? [], { ...at, width, height, em }, put);
  });
  const [w, h] = [millimetres(sheet.width), millimetres(sheet.height)];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">\n` +
    `<title>The ways a pattern can close, each rolled on the vessel</title>\n` +
    `<rect width="${w}" height="${h}" fill="#fbfaf8"/>\n` +
    put(title, { x: 2 * em, y: 3.2 * em }, { size: 1.4 * em, fill: ink.wall, anchor: 'left' }).text +
    `${cells.join('')}</svg>\n`
  );
}

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly em: number;
}

function cellText(
  { number, key, picture, taken }: WayShown,
  said: readonly string[],
  { x, y, width, height, em }: Cell,
  put: ReturnType<typeof wordsWith>,
): string {
  const name = `${number}  ${key}`;
  const below = y + height + 1.9 * em;
  const title = put(name, { x, y: below }, { size: 1.3 * em, fill: ink.wall, anchor: 'left' });
  const mark = taken
    ? put(
        'taken unless another is named',
        { x: x + width, y: below },
        { size: em, fill: ink.flat, anchor: 'right' },
      ).text
    : '';
  const rows = said
    .map(
      (row, i) =>
        put(row, { x, y: below + (1.7 + 1.4 * i) * em }, { size: em, fill: ink.words, anchor: 'left' }).text,
    )
    .join('');
  const frame = `<rect x="${millimetres(x)}" y="${millimetres(y)}" width="${millimetres(width)}" height="${millimetres(height)}" fill="${ink.ground}" stroke="${taken ? ink.flat : ink.quiet}" stroke-width="${millimetres(taken ? 0.25 * em : 0.06 * em)}"/>\n`;
  const drawn =
    'inside' in picture
      ? `<svg x="${millimetres(x)}" y="${millimetres(y)}" width="${picture.width}" height="${picture.height}" viewBox="0 0 ${picture.width} ${picture.height}">${picture.inside}</svg>\n`
      : put(
          picture.missing,
          { x: x + width / 2, y: y + height / 2 },
          { size: em, fill: ink.words, anchor: 'middle' },
        ).text;
  return `<g data-way="${key}">\n${drawn}${frame.replace(`fill="${ink.ground}"`, 'fill="none"')}${title.text}${mark}${rows}</g>\n`;
}
