// The test strip of a film: two marks a known length apart, to be measured again once the strip is laid.
import type { DrawWords } from '../../drawing/words.ts';
import { boxCorners } from '../../geometry/box.ts';
import { type Contour, polygon, polyline } from '../../geometry/contour.ts';
import { type GuideSheet, guideSheet } from '../guide/guide-sheet.ts';

/** Width of the strip, what it goes on past its marks, length of a mark, and bare border, mm. */
const width = 20;
const past = 15;
const mark = 6;
const margin = 6;

/** What is cut of it, and the same with words; its marks `length` apart, mm. */
export function filmStrip(length: number, notes: readonly string[], words: DrawWords): GuideSheet {
  const border = polygon(boxCorners({ minX: -past, minY: 0, maxX: length + past, maxY: width }));
  // In from both edges, so that the strip holds together.
  const marks = [0, length].flatMap((x): Contour[] => [
    polyline([
      { x, y: 0 },
      { x, y: mark },
    ]),
    polyline([
      { x, y: width - mark },
      { x, y: width },
    ]),
  ]);
  return guideSheet({
    blade: [
      { role: 'artwork', layer: 'marks', paths: marks.map((line) => ({ contours: [line] })) },
      { role: 'outline', paths: [{ id: 'strip', contours: [border] }] },
    ],
    guide: [],
    room: { minX: -past - margin, minY: -margin, maxX: length + past + margin, maxY: width + margin },
    margin,
    notes,
    meanings: [{ role: 'outline', says: 'cut' }],
    words,
  });
}
