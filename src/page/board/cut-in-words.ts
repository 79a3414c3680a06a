// What is cut, in words: one piece by its size and shape, several by their number and the largest of them.
import type { TemplateReport } from '../../job/report.ts';
import { measuredLength, type Units } from '../../lengths/length.ts';

/** Less of a ring than this lies within 0.1 mm of a rectangle, at the girth of a cup. Degrees. */
const asGoodAsStraight = 0.1;

export function cutInWords(template: TemplateReport, units: Units): string {
  const shown = (mm: number) => measuredLength(mm, units);
  const sizeOf = ({ width, height }: TemplateReport) => `${shown(width)} by ${shown(height)}`;
  if (template.gores) {
    const { count, width } = template.gores;
    return `${count} gores, each ${shown(width)} at its widest, drawn on ${sizeOf(template)}.`;
  }
  const pieces = piecesOf(template);
  if (pieces.length === 1) return `Cut piece ${sizeOf(template)}: ${shapeInWords(template)}.`;
  const largest = pieces.reduce((a, b) => (b.width * b.height > a.width * a.height ? b : a));
  return `${pieces.length} cut pieces, the largest ${sizeOf(largest)}.`;
}

/** Those that are cut: stacked pieces, panels, or panels of stacked pieces. */
const piecesOf = (template: TemplateReport): readonly TemplateReport[] =>
  template.parts.length === 0 ? [template] : template.parts.flatMap(piecesOf);

function shapeInWords({ shape, sweepDeg }: TemplateReport): string {
  if (shape !== 'sector') return shape;
  return Math.abs(sweepDeg) < asGoodAsStraight
    ? 'as good as a rectangle'
    : `part of a ring, ${sweepDeg.toFixed(2)}° of it`;
}
