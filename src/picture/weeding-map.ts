// Where a piece is hard to weed: its film, hatched along its edges, the closer the longer their weeding takes.
import { writePathData } from '../drawing/path-data.ts';
import { seenOnPaper } from '../drawing/seen-on-paper.ts';
import type { DrawWords } from '../drawing/words.ts';
import { boxCorners, grow } from '../geometry/box.ts';
import { type Contour, polygon, type Shape } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { thinned } from '../geometry/thinned.ts';
import { brokenRows } from './inspected.ts';
import { fittedSize, ink, widthsOf, wordsWith } from './profile-ink.ts';
import { millimetres, picturePath } from './rolled-path.ts';

export interface WeedingMap {
  readonly title: string;
  readonly outlines: readonly Contour[];
  /** Cuts across the waste. */
  readonly relief?: readonly Contour[];
  /** What stays, layer by layer. */
  readonly layers: readonly { readonly colour: string; readonly shapes: readonly Shape[] }[];
  /** Places along each edge, in order, with the seconds that a square cm around them takes. */
  readonly edges: readonly (readonly { readonly at: Point; readonly seconds: number }[])[];
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

/** The grade of a place by its seconds for a square cm. */
const gradeOf = (seconds: number): number =>
  grades.reduce((best, { from }, i) => (seconds >= from ? i : best), 0);

/** The strip along an edge that is hatched, mm wide. */
const stripWidth = 5;

/** How far its middle may stray from the edge, mm: what nobody sees in a strip so wide, and drawing it takes by its corners. */
const strayed = stripWidth / 20;

/** The square of the hatching, mm. */
const hatchSide = 8;

/** The hatching of a grade as a pattern: slanting lines, as many across its square as the grade has. */
function hatchPattern({ lines, colour, opacity }: Grade, i: number): string {
  if (lines === 0) return '';
  const pitch = millimetres(hatchSide / lines);
  return (
    `<pattern id="grade-${i}" width="${pitch}" height="${pitch}" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">` +
    `<rect width="${pitch}" height="${pitch}" fill="${colour}" fill-opacity="${opacity}"/>` +
    `<rect width="${millimetres(hatchSide / 30)}" height="${pitch}" fill="${colour}"/></pattern>\n`
  );
}

/** The stretches of the edges that are of a grade: runs of places. */
function runsOfGrade(edges: WeedingMap['edges'], grade: number): Point[][] {
  return edges.flatMap((edge) => {
    const runs: Point[][] = [];
    let run: Point[] | undefined;
    for (const { at, seconds } of edge) {
      if (gradeOf(seconds) === grade) {
        if (run) run.push(at);
        else {
          run = [at];
          runs.push(run);
        }
      } else run = undefined;
    }
    const [first] = edge;
    // An edge that is all of one grade is closed.
    if (first && runs.length === 1 && runs[0]?.length === edge.length) runs[0].push(first.at);
    return runs;
  });
}

/** Strips along edges, each where its grade says: one path a grade, so that strips side by side are hatched once. */
const stripsText = (edges: WeedingMap['edges']): string =>
  grades
    .map(({ lines }, i) => {
      const runs = lines === 0 ? [] : runsOfGrade(edges, i);
      if (runs.length === 0) return '';
      const data = runs
        .map((run) => picturePath(run.length > 1 ? thinned(run, strayed) : [...run, ...run], false))
        .join('');
      return `<path fill="none" stroke="url(#grade-${i})" stroke-width="${stripWidth}" stroke-linecap="round" stroke-linejoin="round" d="${data}"/>\n`;
    })
    .join('');

/** What stays, painted; light film is seen by its edge alone. */
function filmText(layers: WeedingMap['layers'], em: number): string {
  const edgeOf = (colour: string) =>
    seenOnPaper(colour) === colour
      ? ''
      : ` stroke="${seenOnPaper(colour)}" stroke-width="${millimetres(0.05 * em)}"`;
  return layers
    .flatMap(({ colour, shapes }) =>
      shapes.map(
        ({ contours }) =>
          `<path fill="${colour}" fill-opacity=".3" fill-rule="evenodd"${edgeOf(colour)} d="${writePathData(contours, 1000)}"/>\n`,
      ),
    )
    .join('');
}

/** A square as the strips of a grade are hatched. */
const gradeSquare = (i: number, { x, y }: Point, side: number, em: number): string =>
  `<rect x="${millimetres(x)}" y="${millimetres(y)}" width="${millimetres(side)}" height="${millimetres(side)}" fill="${grades[i]?.lines ? `url(#grade-${i})` : '#fff'}" stroke="${ink.quiet}" stroke-width="${millimetres(0.05 * em)}"/>\n`;

/** A grade in words. */
function gradeSays({ from, says }: Grade, i: number): string {
  const until = grades[i + 1]?.from;
  const rate = until === undefined ? `${from} s or more` : `${from} to ${until} s`;
  return `${rate} for a square cm: ${says}`;
}

/** The text of the picture: mm, y down, words as outlines. Same input, same bytes. */
export function weedingMap(map: WeedingMap, caption: DrawWords): string {
  const { title, outlines, relief = [], layers, edges, notes } = map;
  const box = grow(tightBox(outlines), 2);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const em = Math.max(width, height) / 55;
  const margin = 3 * em;
  const put = wordsWith(caption);
  const say = (text: string, at: Point, size = em) =>
    put(text, at, { size, fill: ink.words, anchor: 'left' }).text;
  const measure = widthsOf(put, em);
  const sheet = Math.max(width, 45 * em) + 2 * margin;
  const border = `<path fill="none" stroke="${ink.wall}" stroke-width="${millimetres(0.1 * em)}" d="${writePathData(outlines, 1000)}"/>\n`;
  // Laid over what strips show past the piece.
  const corners = boxCorners(grow(box, stripWidth));
  const around = `<path fill="${ink.ground}" fill-rule="evenodd" d="${writePathData([polygon(corners), ...outlines], 1000)}"/>\n`;
  const reliefText =
    relief.length === 0
      ? ''
      : `<path fill="none" stroke="${ink.wall}" stroke-width="${millimetres(0.2 * em)}" stroke-dasharray="${millimetres(0.6 * em)} ${millimetres(0.4 * em)}" d="${writePathData(relief, 1000)}"/>\n`;
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
    list += gradeSquare(i, { x: margin, y: y - legend + 0.2 * em }, legend, em);
    write(gradeSays(grade, i), margin + 2 * em);
  });
  for (const note of notes) write(note, margin);
  if (relief.length > 0) write('Dashed: relief cuts; the waste lifts in strips between them.', margin);
  const [w, h] = [millimetres(sheet), millimetres(y + margin)];
  const move = `translate(${millimetres((sheet - width) / 2 - box.minX)} ${millimetres(3.2 * em + margin - box.minY)})`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">\n` +
    `<title>Where it is hard to weed</title>\n<defs>\n${grades.map(hatchPattern).join('')}</defs>\n<rect width="${w}" height="${h}" fill="${ink.ground}"/>\n` +
    `<g transform="${move}">\n<path fill="#fff" d="${writePathData(outlines, 1000)}"/>\n<g data-role="artwork">\n${filmText(layers, em)}</g>\n<g data-role="mark">\n${stripsText(edges)}</g>\n` +
    around +
    reliefText +
    border +
    `</g>\n${say(title, { x: margin, y: margin + em }, fittedSize(put, title, 1.4 * em, sheet - 2 * margin))}<g data-role="note">\n${list}</g>\n</svg>\n`
  );
}
