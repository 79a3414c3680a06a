// The two drawings of collars that share coordinates: what is cut, and the guide with every line and word.
import type { Drawing, DrawnGroup, DrawnPath } from '../drawing/drawing.ts';
import type { DrawWords } from '../drawing/words.ts';
import { shifted } from '../geometry/affine.ts';
import { boxAround, grow } from '../geometry/box.ts';
import type { Contour } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { edgeLine, finishedEdge, outline } from '../unroll/template.ts';
import type { Collar } from './collar.ts';
import { type CollarWords, collarWords, plumbLines } from './collar-marks.ts';
import { noteStrip, scaleSquares } from './marks.ts';
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

interface Parts {
  readonly outline: DrawnPath[];
  readonly seam: DrawnPath[];
  readonly trim: DrawnPath[];
  readonly register: DrawnPath[];
  readonly note: DrawnPath[];
}

const roles = ['outline', 'seam', 'trim', 'register', 'note'] as const;

/** The cut drawing and the guide of collars, stacked on one sheet. */
export function collarDrawings({ collars, notes, words }: CollarDrawingOptions): CollarDrawings {
  const borders = collars.map(({ collar }) => outline(collar.template));
  const offsets = stacked(borders, margin);
  const boxes = borders.map((border, i) => tightBox(shifted([border], offsets[i] ?? still)));
  const room = grow(boxAround(boxes), margin);
  const strip = noteStrip(notes, words, room.maxX - room.minX - 2 * margin);
  const under = Math.max(...[...scaleSquares(), ...strip.lines.flat()].map((line) => tightBox([line]).maxX));
  const width = Math.max(room.maxX - room.minX, under + 2 * margin);
  const corner = { x: -room.minX, y: -room.minY };
  const origins = offsets.map(({ x, y }) => ({ x: x + corner.x, y: y + corner.y }));
  const parts = collars.map(({ collar, said }, i) => {
    const suffix = collars.length > 1 ? `-${i + 1}` : '';
    return placed(partsOf(collar, said, words, suffix), origins[i] ?? still);
  });
  const below = { x: margin, y: room.maxY - room.minY };
  const strips: Partial<Parts> = {
    register: scaleSquares().map((square) => ({ contours: shifted([square], below) })),
    note: strip.lines.map((line) => ({ contours: shifted(line, below) })),
  };
  const groups = roles.map(
    (role): DrawnGroup => ({
      role,
      paths: [...parts.flatMap((part) => part[role]), ...(strips[role] ?? [])],
    }),
  );
  const size = { width, height: below.y + strip.height + margin };
  return {
    cut: { ...size, groups: groups.filter(({ role }) => role === 'outline') },
    guide: { ...size, groups },
    origins,
  };
}

function partsOf(collar: Collar, said: CollarWords, words: DrawWords, suffix: string): Parts {
  const { template, along } = collar;
  const { wall, piece, seam } = template;
  const path = (contour: Contour, id?: string): DrawnPath => ({
    ...(id === undefined ? {} : { id: id + suffix }),
    contours: [contour],
  });
  return {
    outline: [path(outline(template), 'collar')],
    seam: [
      path(edgeLine(wall, seam.start, piece.from, piece.to), 'seam-start'),
      path(edgeLine(wall, seam.finish, piece.from, piece.to), 'seam-finish'),
    ],
    trim: [path(finishedEdge(template, along), 'level-line')],
    register: plumbLines(collar).map((line) => path(line)),
    note: collarWords(collar, said, words).map((contours) => ({ contours })),
  };
}

const placed = (parts: Parts, by: Point): Parts => {
  const all = (paths: readonly DrawnPath[]) =>
    paths.map((path) => ({ ...path, contours: shifted(path.contours, by) }));
  return {
    outline: all(parts.outline),
    seam: all(parts.seam),
    trim: all(parts.trim),
    register: all(parts.register),
    note: all(parts.note),
  };
};
