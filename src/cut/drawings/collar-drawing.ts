// The two drawings of collars that share coordinates: what is cut, and the guide with every line and word.
import { type Drawing, type DrawnGroup, type DrawnPath, shiftedGroups } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { shifted } from '../../geometry/affine.ts';
import { boxAround, grow } from '../../geometry/box.ts';
import type { Contour } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { edgeLine, finishedEdge, outline } from '../../unroll/template.ts';
import { guideSheet } from '../guide/guide-sheet.ts';
import type { LineMeaning } from '../guide/note-strip.ts';
import type { Collar } from './collar.ts';
import { type CollarWords, collarWords, plumbLines } from './collar-marks.ts';
import { stacked } from './stack.ts';

export interface CollarDrawingOptions {
  /** Those lower on the wall first; they are drawn from the foot of the sheet up. */
  readonly collars: readonly { readonly collar: Collar; readonly said: CollarWords }[];
  /** Lines of words for the guide. */
  readonly notes: readonly string[];
  readonly words: DrawWords;
}

export interface CollarDrawings {
  readonly cut: Drawing;
  readonly guide: Drawing;
  /** Where each collar's flat wall has its origin in both, mm. */
  readonly origins: readonly Point[];
}

/** Room around the strips and between them, mm. */
const margin = 6;

const still: Point = { x: 0, y: 0 };

const meaningsOf = (hasHandle: boolean): readonly LineMeaning[] => [
  { role: 'outline', says: 'cut' },
  { role: 'trim', says: 'level line' },
  { role: 'seam', says: hasHandle ? 'end by the handle' : 'where the ends meet' },
  { role: 'register', says: 'plumb line' },
];

/** The cut drawing and the guide of collars, stacked on one sheet. */
export function collarDrawings({ collars, notes, words }: CollarDrawingOptions): CollarDrawings {
  const borders = collars.map(({ collar }) => outline(collar.template));
  const offsets = stacked(borders, margin);
  const boxes = borders.map((border, i) => tightBox(shifted([border], offsets[i] ?? still)));
  const parts = collars.flatMap(({ collar, said }, i) => {
    const suffix = collars.length > 1 ? `-${i + 1}` : '';
    return shiftedGroups(partsOf(collar, said, words, suffix), offsets[i] ?? still);
  });
  const { cut, guide, origin } = guideSheet({
    blade: parts.filter(({ role }) => role === 'outline'),
    guide: parts.filter(({ role }) => role !== 'outline'),
    room: grow(boxAround(boxes), margin),
    margin,
    notes,
    meanings: meaningsOf(collars.some(({ collar }) => collar.clear !== undefined)),
    words,
  });
  return { cut, guide, origins: offsets.map(({ x, y }) => ({ x: x + origin.x, y: y + origin.y })) };
}

/** A strip's own lines and words, in its flat wall's frame. */
function partsOf(collar: Collar, said: CollarWords, words: DrawWords, suffix: string): DrawnGroup[] {
  const { template, along } = collar;
  const { wall, piece, seam } = template;
  const path = (contour: Contour, id?: string): DrawnPath => ({
    ...(id === undefined ? {} : { id: id + suffix }),
    contours: [contour],
  });
  return [
    { role: 'outline', paths: [path(outline(template), 'collar')] },
    {
      role: 'seam',
      paths: [
        path(edgeLine(wall, seam.start, piece.from, piece.to), 'seam-start'),
        path(edgeLine(wall, seam.finish, piece.from, piece.to), 'seam-finish'),
      ],
    },
    { role: 'trim', paths: [path(finishedEdge(template, along), 'level-line')] },
    { role: 'register', paths: plumbLines(collar).map((line) => path(line)) },
    { role: 'note', paths: collarWords(collar, said, words).map((contours) => ({ contours })) },
  ];
}
