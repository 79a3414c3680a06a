// Writing pages as a PDF at true size: lines and areas, words among them as outlines, and pictures. Adapter of pdfkit (MIT).
import PDFDocument from 'pdfkit';
import type { Drawing, DrawnGroup, DrawnPath } from '../drawing/drawing.ts';
import { seenOnPaper } from '../drawing/seen-on-paper.ts';
import { moveContour } from '../geometry/affine.ts';
import { type Box, boxesMeet, hullBox } from '../geometry/box.ts';
import type { Contour } from '../geometry/contour.ts';
import { packed } from './compress.ts';
import type { Page } from './pages.ts';
import { artworkOpacity, colours, dashes, lineWidth, lookOf } from './write-svg.ts';

/** PDF counts in points, 72 to the inch. */
const pointsPerMm = 72 / 25.4;

/** What every length is multiplied by, across the paper as it goes through the printer and along it. */
export interface PageCorrection {
  readonly across: number;
  readonly up: number;
}

/** The library must have a date, and makes the file's mark from it; the true one would make every print another. */
const noDate = new Date(0);

/**
 * The bytes of a PDF that shows a drawing on these pages. Same drawing and pages, same bytes: its date is always the same one.
 * @throws Error where a coordinate is not a number, which the library would write down without a word.
 */
export function writePdf(
  drawing: Drawing,
  pages: readonly Page[],
  title: string,
  correction: PageCorrection = { across: 1, up: 1 },
): Promise<Uint8Array> {
  const info = { Title: title, Producer: 'seamwright', Creator: 'seamwright', CreationDate: noDate };
  const document = new PDFDocument({ autoFirstPage: false, compress: false, font: null, info });
  const bytes = collected(document);
  for (const page of pages) {
    drawPage(document, drawing, page, correction);
    packPage(document);
  }
  document.end();
  return bytes;
}

/** The library would pack pages with what its platform has, and the same print would be other bytes in a browser. */
function packPage({ page: { content } }: PDFDocument): void {
  content.buffer = [packed(joined(content.buffer))];
  content.data.Filter = 'FlateDecode';
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

function collected(document: PDFDocument): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    document.on('data', (chunk) => void chunks.push(chunk));
    document.on('error', reject);
    document.on('end', () => resolve(joined(chunks)));
  });
}

function drawPage(document: PDFDocument, drawing: Drawing, page: Page, correction: PageCorrection): void {
  const { width, height, window, place, marks, pictures = [] } = page;
  const { across, up } = correction;
  // A page that lies across goes through the printer turned.
  const [x, y] = (width > height ? [up, across] : [across, up]).map((factor) => factor * pointsPerMm);
  document.addPage({ size: [width * (x ?? 1), height * (y ?? 1)], margin: 0 });
  document
    .save()
    .scale(x ?? 1, y ?? 1)
    .lineWidth(lineWidth)
    .lineCap('round')
    .lineJoin('round');
  document
    .save()
    .rect(window.minX, window.minY, window.maxX - window.minX, window.maxY - window.minY)
    .clip();
  for (const group of drawing.groups.filter(({ apart }) => !apart))
    drawGroup(document, {
      ...group,
      paths: group.paths
        .map((path) => ({ ...path, contours: path.contours.map((contour) => moveContour(place, contour)) }))
        .filter((path) => isShown(path, window)),
    });
  document.restore();
  for (const { png, x: left, y: top, ...size } of pictures) document.image(png, left, top, size);
  for (const group of marks) drawGroup(document, group);
  document.restore();
}

/** A path with a coordinate that is no number has a box that meets none: it is shown too, so that it is refused. */
function isShown({ contours }: DrawnPath, window: Box): boolean {
  const box = hullBox(contours);
  return Object.values(box).some(Number.isNaN) || boxesMeet(box, window);
}

function drawGroup(document: PDFDocument, group: DrawnGroup): void {
  const { role, colour, lines, paths } = group;
  const look = lookOf(group);
  const line = colour ?? colours[look];
  const dash = dashes[look];
  if (dash) document.dash(dash.pattern, { phase: dash.from });
  else document.undash();
  for (const { contours } of paths) {
    const isWords = role === 'note' && !lines;
    if (isWords || role === 'artwork') {
      trace(document, contours);
      document.fillColor(line, isWords ? 1 : artworkOpacity).fill('even-odd');
    }
    if (isWords) continue;
    trace(document, contours);
    document.strokeColor(seenOnPaper(line)).stroke();
  }
}

/** A coordinate as it is written, to a thousandth of a mm: a printer's dots are forty times as large, and words are most of a page. */
function written(mm: number): number {
  if (!Number.isFinite(mm)) throw new Error(`a coordinate of a print is ${mm}`);
  return Math.round(mm * 1000) / 1000;
}

function trace(document: PDFDocument, contours: readonly Contour[]): void {
  for (const { closed, segments } of contours) {
    const [first] = segments;
    if (!first) continue;
    document.moveTo(written(first.from.x), written(first.from.y));
    for (const s of segments)
      if (s.kind === 'line') document.lineTo(written(s.to.x), written(s.to.y));
      else
        document.bezierCurveTo(
          written(s.c1.x),
          written(s.c1.y),
          written(s.c2.x),
          written(s.c2.y),
          written(s.to.x),
          written(s.to.y),
        );
    if (closed) document.closePath();
  }
}
