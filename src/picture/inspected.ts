// Artwork with numbered marks where something stands against cutting it, and the list of what they mean.
import { writePathData } from '../drawing/path-data.ts';
import { seenOnPaper } from '../drawing/seen-on-paper.ts';
import type { DrawWords } from '../drawing/words.ts';
import type { Contour, Shape } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';
import type { Units } from '../lengths/length.ts';
import { toldIn } from '../lengths/told-in.ts';
import { type Mark, marksText, markText, mostNumbered } from './marks.ts';
import { fittedSize, ink, widthsOf, wordsWith } from './profile-ink.ts';
import { millimetres } from './rolled-path.ts';

export interface InspectedSubject {
  readonly title: string;
  /** mm */
  readonly width: number;
  readonly height: number;
  /** Areas in painting order. */
  readonly layers: readonly {
    readonly colour: string;
    readonly shapes: readonly Shape[];
    /** Painted in full, over the pale rest. */
    readonly strong?: boolean;
  }[];
  /** Lines that make no area. */
  readonly lines: readonly Contour[];
  readonly marks: readonly (Mark & { readonly says: string })[];
  /** What else is told, under the list. */
  readonly notes: readonly string[];
  /** Copies of the artwork beside it, pale: by which steps, and how far around it they are seen, mm. */
  readonly copies?: { readonly steps: readonly Point[]; readonly seen: number };
}

/** Most rows of the list: the report has all. */
const mostRows = 40;

/** Rows of words no longer than a width, broken at spaces. */
export function brokenRows(
  text: string,
  width: number,
  measure: (text: string) => number,
): readonly string[] {
  const rows: string[] = [];
  let row = '';
  for (const word of text.split(' ')) {
    const longer = row === '' ? word : `${row} ${word}`;
    if (row !== '' && measure(longer) > width) {
      rows.push(row);
      row = word;
    } else row = longer;
  }
  return [...rows, row];
}

/** The text of the picture: mm, y down, words as outlines, their lengths in `units`. Same input, same bytes. */
export function inspectedPicture(subject: InspectedSubject, caption: DrawWords, units: Units = 'mm'): string {
  const { title, width, height, layers, lines, marks, notes, copies } = subject;
  const seen = copies?.seen ?? 0;
  const em = Math.max(width, height, 1) / 55;
  const put = wordsWith(caption);
  const margin = 3 * em;
  const sheet = Math.max(width + 2 * seen, 45 * em) + 2 * margin;
  const measure = widthsOf(put, em);
  const left = (sheet - width) / 2;
  const art = areasText(layers, em);
  const open = lines
    .map(
      (contour) =>
        `<path fill="none" stroke="${ink.wall}" stroke-width="${millimetres(0.1 * em)}" d="${writePathData([contour], 1000)}"/>\n`,
    )
    .join('');
  let y = 3.2 * em + height + 2 * (margin + seen);
  let list = '';
  const write = (text: string, x: number) => {
    for (const row of brokenRows(text, sheet - margin - x, measure)) {
      list += put(row, { x, y }, { size: em, fill: ink.words, anchor: 'left' }).text;
      y += 1.5 * em;
    }
  };
  for (const { number, rule, says } of marks.slice(0, mostRows)) {
    list += markText(rule, { x: margin + 0.5 * em, y: y - 0.35 * em }, 0.5 * em, 0.12 * em);
    list += put(
      String(number),
      { x: margin + 3.4 * em, y },
      { size: em, fill: ink.words, anchor: 'right' },
    ).text;
    write(`${rule}: ${toldIn(says, units)}`, margin + 4.2 * em);
  }
  if (marks.length > mostRows) {
    const isAll = marks.length <= mostNumbered;
    const rest = `and ${marks.length - mostRows} more, in the report`;
    write(
      isAll ? rest : `${rest}; past ${mostNumbered} the marks are small and have no number`,
      margin + 4.2 * em,
    );
  }
  for (const note of notes) write(toldIn(note, units), margin);
  const box = { width: millimetres(sheet), height: millimetres(y + margin) };
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${box.width}mm" height="${box.height}mm" viewBox="0 0 ${box.width} ${box.height}">\n` +
    `<title>What stands against cutting this artwork</title>\n` +
    `<rect width="${box.width}" height="${box.height}" fill="${ink.ground}"/>\n` +
    put(
      title,
      { x: margin, y: margin + em },
      { size: fittedSize(put, title, 1.4 * em, sheet - 2 * margin), fill: ink.words, anchor: 'left' },
    ).text +
    `<g transform="translate(${millimetres(left)} ${millimetres(3.2 * em + margin + seen)})">\n` +
    (copies ? copiesText(subject, copies, em) : '') +
    `<rect width="${millimetres(width)}" height="${millimetres(height)}" fill="${copies ? 'none' : '#fff'}" stroke="${ink.quiet}" stroke-width="${millimetres(0.05 * em)}"/>\n` +
    `<g data-role="artwork"${copies ? ' clip-path="url(#frame)"' : ''}>\n${art}${open}</g>\n<g data-role="mark">\n${marksText(marks, put, em)}</g>\n</g>\n` +
    `<g data-role="note">\n${list}</g>\n</svg>\n`
  );
}

const areasText = (layers: InspectedSubject['layers'], em: number): string =>
  layers
    .flatMap(({ colour, shapes, strong }) =>
      shapes.map(
        ({ contours }) =>
          `<path fill="${colour}" fill-opacity="${strong ? 0.85 : 0.35}" fill-rule="evenodd" stroke="${seenOnPaper(colour)}" stroke-width="${millimetres(0.05 * em)}" d="${writePathData(contours, 1000)}"/>\n`,
      ),
    )
    .join('');

/** What copies show around the artwork, each as much as is its own: the frame of one ends where the next begins. */
function copiesText(
  { width, height, layers }: InspectedSubject,
  { steps, seen }: NonNullable<InspectedSubject['copies']>,
  em: number,
): string {
  const box = (reach: number) =>
    `x="${millimetres(-reach)}" y="${millimetres(-reach)}" width="${millimetres(width + 2 * reach)}" height="${millimetres(height + 2 * reach)}"`;
  const pale = layers.map((layer) => ({ ...layer, strong: false }));
  const one = `<g id="copy" clip-path="url(#frame)">\n${areasText(pale, em)}</g>`;
  const placed = steps
    .map(({ x, y }) => `<use href="#copy" x="${millimetres(x)}" y="${millimetres(y)}"/>\n`)
    .join('');
  return (
    `<defs><clipPath id="frame"><rect ${box(0)}/></clipPath><clipPath id="seen"><rect ${box(seen)}/></clipPath>\n${one}</defs>\n` +
    `<rect ${box(seen)} fill="#fff"/>\n<g clip-path="url(#seen)">\n${placed}</g>\n`
  );
}
