// Where a piece is hard to weed: its film with squares, hatched the closer the longer their weeding takes.
import { writePathData } from '../drawing/path-data.ts';
import type { DrawWords } from '../drawing/words.ts';
import { boxCorners, grow } from '../geometry/box.ts';
import { type Contour, polygon, type Shape } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { brokenRows } from './inspected.ts';
import { ink, wordsWith } from './profile-ink.ts';
import { millimetres } from './rolled-path.ts';

export interface WeedingMap {
  readonly title: string;
  readonly outlines: readonly Contour[];
  /** Cuts across the waste. */
  readonly relief?: readonly Contour[];
  /** What stays, layer by layer. */
  readonly layers: readonly { readonly colour: string; readonly shapes: readonly Shape[] }[];
  /** Side of the squares, mm. */
  readonly side: number;
  /** Each from its top left corner. */
  readonly squares: readonly (Point & { readonly seconds: number })[];
  readonly notes: readonly string[];
}

/** Seconds for a square cm from which a grade begins, how it is painted, and what it means at the bench. Common practice, no source. */
const grades = [
  { from: 0, lines: 0, colour: '#ffffff', opacity: 0, says: 'comes off in one pull' },
  { from: 2, lines: 2, colour: '#b98a2f', opacity: 0.1, says: 'edge by edge' },
  { from: 6, lines: 4, colour: '#b3541e', opacity: 0.12, says: 'slow: tweezers and a good lamp' },
  {
    from: 15,
    lines: 8,
    colour: '#8a2f2f',
    opacity: 0.15,
    says: 'finest: expect to lose a piece; larger art is the cure',
  },
] as const;

type Grade = (typeof grades)[number];

/** The grade of a square that takes so many seconds. */
export function gradeOf(seconds: number, side: number): number {
  const rate = seconds / (side / 10) ** 2;
  return grades.reduce((best, { from }, i) => (rate >= from ? i : best), 0);
}

/** A square, tinted and crossed by as many slanting lines as its grade has. */
function squareText({ x, y }: Point, side: number, { lines, colour, opacity }: Grade): string {
  const at = (dx: number, dy: number) => `${millimetres(x + dx)} ${millimetres(y + dy)}`;
  const steps = Array.from({ length: lines }, (_, i) => ((2 * i + 1) / lines) * side);
  const hatch = steps
    .map((s) => (s <= side ? `M${at(0, s)}L${at(s, 0)}` : `M${at(s - side, side)}L${at(side, s - side)}`))
    .join('');
  return (
    `<path fill="${colour}" fill-opacity="${opacity}" d="M${at(0, 0)}L${at(side, 0)}L${at(side, side)}L${at(0, side)}Z"/>\n` +
    (hatch === ''
      ? ''
      : `<path fill="none" stroke="${colour}" stroke-width="${millimetres(side / 40)}" d="${hatch}"/>\n`)
  );
}

/** The text of the picture: mm, y down, words as outlines. Same input, same bytes. */
export function weedingMap(map: WeedingMap, caption: DrawWords): string {
  const { title, outlines, relief = [], layers, side, squares, notes } = map;
  const box = grow(tightBox(outlines), 2);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const em = Math.max(width, height) / 55;
  const margin = 3 * em;
  const put = wordsWith(caption);
  const say = (text: string, at: Point, size = em) =>
    put(text, at, { size, fill: ink.words, anchor: 'left' }).text;
  const measure = (text: string): number => {
    const placed = put(text, { x: 0, y: 0 }, { size: em, fill: ink.words, anchor: 'left' }).box;
    return placed.maxX - placed.minX;
  };
  const sheet = Math.max(width, 45 * em) + 2 * margin;
  const border = `<path fill="none" stroke="${ink.wall}" stroke-width="${millimetres(0.1 * em)}" d="${writePathData(outlines, 1000)}"/>\n`;
  // Laid over what squares show past the piece.
  const corners = boxCorners(grow(box, side));
  const around = `<path fill="${ink.ground}" fill-rule="evenodd" d="${writePathData([polygon(corners), ...outlines], 1000)}"/>\n`;
  const reliefText =
    relief.length === 0
      ? ''
      : `<path fill="none" stroke="${ink.wall}" stroke-width="${millimetres(0.2 * em)}" stroke-dasharray="${millimetres(0.6 * em)} ${millimetres(0.4 * em)}" d="${writePathData(relief, 1000)}"/>\n`;
  const film = layers
    .flatMap(({ colour, shapes }) =>
      shapes.map(
        ({ contours }) =>
          `<path fill="${colour}" fill-opacity=".3" fill-rule="evenodd" d="${writePathData(contours, 1000)}"/>\n`,
      ),
    )
    .join('');
  const hatched = squares
    .map((square) => {
      const grade = grades[gradeOf(square.seconds, side)];
      return grade && grade.lines > 0 ? squareText(square, side, grade) : '';
    })
    .join('');
  let y = 3.2 * em + height + 2 * margin;
  let list = '';
  const write = (text: string, x: number) => {
    for (const row of brokenRows(text, sheet - margin - x, measure)) {
      list += say(row, { x, y });
      y += 1.6 * em;
    }
  };
  const legend = 1.2 * em;
  grades.forEach((grade, i) => {
    const until = grades[i + 1]?.from;
    const rate = until === undefined ? `${grade.from} s or more` : `${grade.from} to ${until} s`;
    const corner = { x: margin, y: y - legend + 0.2 * em };
    list += squareText(corner, legend, grade);
    list += `<rect x="${millimetres(corner.x)}" y="${millimetres(corner.y)}" width="${millimetres(legend)}" height="${millimetres(legend)}" fill="none" stroke="${ink.quiet}" stroke-width="${millimetres(0.05 * em)}"/>\n`;
    write(`${rate} for a square cm: ${grade.says}`, margin + 2 * em);
  });
  for (const note of notes) write(note, margin);
  if (relief.length > 0) write('Dashed: relief cuts; the waste lifts in strips between them.', margin);
  const [w, h] = [millimetres(sheet), millimetres(y + margin)];
  const move = `translate(${millimetres((sheet - width) / 2 - box.minX)} ${millimetres(3.2 * em + margin - box.minY)})`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">\n` +
    `<title>Where it is hard to weed</title>\n<rect width="${w}" height="${h}" fill="${ink.ground}"/>\n` +
    `<g transform="${move}">\n<path fill="#fff" d="${writePathData(outlines, 1000)}"/>\n<g data-role="artwork">\n${film}</g>\n<g data-role="mark">\n${hatched}</g>\n` +
    around +
    reliefText +
    border +
    `</g>\n${say(title, { x: margin, y: margin + em }, 1.4 * em)}<g data-role="note">\n${list}</g>\n</svg>\n`
  );
}
