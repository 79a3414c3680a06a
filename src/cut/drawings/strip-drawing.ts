// The two drawings of a cover strip: what the blade follows, and the guide with the line that it is laid by.
import type { DrawnGroup, DrawnPath } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { grow } from '../../geometry/box.ts';
import type { Contour } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { edgeLine, finishedEdge, outline, type SideEdge, type Template } from '../../unroll/template.ts';
import { type GuideSheet, guideSheet } from '../guide/guide-sheet.ts';
import { edgeTicks, quarterTicks } from '../guide/marks.ts';

export interface StripDrawingOptions {
  readonly template: Template;
  /** What it covers: the seam up the wall, or a level joint at a height. */
  readonly covers: { readonly kind: 'seam' } | { readonly kind: 'joint'; readonly along: number };
  readonly notes: readonly string[];
  readonly words: DrawWords;
}

/** Room around the strip for marks, mm. */
const margin = 8;

const path = (contour: Contour, id: string): DrawnPath => ({ id, contours: [contour] });

const marks = (lines: readonly Contour[]): DrawnGroup => ({
  role: 'register',
  paths: lines.map((line) => ({ contours: [line] })),
});

/** The lines a strip is laid by. */
function linesOf({ template, covers }: StripDrawingOptions): DrawnGroup[] {
  const { wall, band, seam } = template;
  const upright = (id: string, edge: SideEdge) => path(edgeLine(wall, edge, band.from, band.to), id);
  if (covers.kind === 'joint')
    return [
      { role: 'seam', paths: [upright('seam-start', seam.start), upright('seam-finish', seam.finish)] },
      { role: 'trim', paths: [path(finishedEdge(template, covers.along), 'joint-line')] },
      marks(quarterTicks(template, 0)),
    ];
  const ends = [
    path(finishedEdge(template, band.from), 'trim-foot'),
    path(finishedEdge(template, band.to), 'trim-lip'),
  ];
  return [
    { role: 'seam', paths: [upright('seam-line', seam.start)] },
    { role: 'trim', paths: ends },
    marks(edgeTicks(template, 0)),
  ];
}

/** The cut drawing and the guide of a strip. */
export function stripDrawings(options: StripDrawingOptions): GuideSheet {
  const { template, covers, notes, words } = options;
  const border = outline(template);
  const isSeam = covers.kind === 'seam';
  return guideSheet({
    blade: [{ role: 'outline', paths: [{ contours: [border] }] }],
    guide: linesOf(options),
    room: grow(tightBox([border]), margin),
    margin,
    notes,
    meanings: [
      { role: 'outline', says: 'cut' },
      { role: 'seam', says: isSeam ? 'on the seam' : 'where its ends meet' },
      { role: 'trim', says: isSeam ? 'finished edge' : 'on the joint' },
    ],
    words,
  });
}
