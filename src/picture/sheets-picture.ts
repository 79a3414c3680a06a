// How pieces lie on their sheets: each sheet drawn to the same scale, its pieces filled and named, what is left over bare.
import { writePathData } from '../drawing/path-data.ts';
import type { DrawWords } from '../drawing/words.ts';
import type { Contour } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';
import { namePlace } from './name-place.ts';
import { fittedSize, ink, lineText, widthsOf, wordsWith } from './profile-ink.ts';
import { millimetres } from './rolled-path.ts';

export interface ShownSheet {
  /** What stands under it. */
  readonly says: string;
  /** mm. */
  readonly across: number;
  readonly up: number;
  /** Kept clear along its edges, mm. */
  readonly margin: number;
  readonly colour: string;
  readonly pieces: readonly { readonly name: string; readonly outlines: readonly Contour[] }[];
}

/** As many sheets side by side as makes the picture about twice as wide as it is high. */
function columnsFor(count: number, { across, up }: { readonly across: number; readonly up: number }): number {
  const off = (columns: number) =>
    Math.abs(Math.log((columns * across) / (Math.ceil(count / columns) * up) / 2));
  const all = Array.from({ length: Math.min(count, 6) }, (_, i) => i + 1);
  return all.reduce((best, columns) => (off(columns) < off(best) ? columns : best), 1);
}

/** The text of the picture: mm, y down, words as outlines. Same sheets, same bytes. */
export function sheetsPicture(sheets: readonly ShownSheet[], title: string, caption: DrawWords): string {
  const cell = {
    across: Math.max(...sheets.map(({ across }) => across)),
    up: Math.max(...sheets.map(({ up }) => up)),
  };
  const columns = columnsFor(sheets.length, cell);
  const em = (columns * cell.across) / 55;
  const margin = 2 * em;
  const rows = Array.from({ length: Math.ceil(sheets.length / columns) }, (_, row) =>
    Math.max(...sheets.slice(row * columns, (row + 1) * columns).map(({ up }) => up)),
  );
  const put = wordsWith(caption);
  const say = (text: string, at: Point, size: number, anchor: 'left' | 'middle' = 'left') =>
    put(text, at, { size, fill: ink.words, anchor }).text;
  const top = margin + 2.6 * em;
  // Under each stands what it is.
  const below = 3.2 * em;
  const drawn = sheets.map((sheet, i) => {
    const above = rows.slice(0, Math.floor(i / columns)).reduce((sum, up) => sum + up + below, 0);
    const at = { x: margin + (i % columns) * (cell.across + margin), y: top + above };
    // What stands beside it has words of its own.
    const size = fittedSize(put, sheet.says, em, cell.across + margin / 2);
    const words = say(sheet.says, { x: at.x, y: at.y + sheet.up + 1.5 * em }, size);
    return `<g transform="translate(${millimetres(at.x)} ${millimetres(at.y)})">\n${sheetText(sheet, em)}${sheet.pieces.map(({ name, outlines }) => nameText(name, outlines)).join('')}</g>\n${words}`;
  });
  /** A name where its piece has room for it, made smaller where it has little. */
  function nameText(name: string, outlines: readonly Contour[]): string {
    const { at, isTall, size } = namePlace(outlines, widthsOf(put, em)(name) / em, 0.85 * em);
    const text = say(name, { x: at.x, y: at.y + 0.35 * size }, size, 'middle');
    return isTall
      ? `<g transform="rotate(-90 ${millimetres(at.x)} ${millimetres(at.y)})">${text}</g>\n`
      : text;
  }
  const [w, h] = [
    columns * (cell.across + margin) + margin,
    rows.reduce((sum, up) => sum + up + below, top) + margin / 2,
  ].map(millimetres);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">\n` +
    `<title>How the pieces lie on their sheets</title>\n<rect width="${w}" height="${h}" fill="${ink.ground}"/>\n` +
    `${say(title, { x: margin, y: margin + em }, fittedSize(put, title, 1.3 * em, columns * (cell.across + margin) - margin))}${drawn.join('')}</svg>\n`
  );
}

/** A sheet, its margin, and its pieces filled. */
function sheetText({ across, up, margin, colour, pieces }: ShownSheet, em: number): string {
  const edge = `<rect width="${millimetres(across)}" height="${millimetres(up)}" fill="#fff" stroke="${ink.wall}" stroke-width="${millimetres(0.08 * em)}"/>\n`;
  const kept = lineText(
    [
      { x: margin, y: margin },
      { x: across - margin, y: margin },
      { x: across - margin, y: up - margin },
      { x: margin, y: up - margin },
      { x: margin, y: margin },
    ],
    { colour: ink.quiet, width: 0.05 * em, dashes: [0.5 * em, 0.4 * em] },
  );
  const films = pieces.map(
    ({ outlines }) =>
      `<path fill="${colour}" fill-opacity=".3" fill-rule="evenodd" stroke="${ink.wall}" stroke-width="${millimetres(0.1 * em)}" d="${writePathData(outlines, 100)}"/>\n`,
  );
  return `${edge}${kept}${films.join('')}`;
}
