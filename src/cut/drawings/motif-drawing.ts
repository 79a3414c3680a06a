// The two drawings of a motif that is cut apart: what the blade follows, and the guide with the lines it is laid by.
import type { DrawnGroup } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { shifted } from '../../geometry/affine.ts';
import { type Box, boxCorners, grow } from '../../geometry/box.ts';
import { type Contour, polygon, polyline, type Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { type FlatWall, girthAt, toFlat } from '../../unroll/flat-wall.ts';
import { levelLine } from '../../unroll/template.ts';
import { type GuideSheet, guideSheet } from '../guide/guide-sheet.ts';
import { wordSize } from '../guide/marks.ts';

/** A motif on a sheet of its own. */
export interface MotifOnSheet {
  /** The wall it is laid on, and the height of its place; it is drawn about turn 0.5, where the sheet is upright. */
  readonly wall: FlatWall;
  readonly along: number;
  /** Its layers in the flat wall's frame. */
  readonly layers: readonly {
    readonly name: string;
    readonly colour: string;
    readonly shapes: readonly Shape[];
  }[];
}

export interface MotifDrawingOptions extends MotifOnSheet {
  /** Cuts across the waste, so that it lifts in strips. */
  readonly relief: readonly Contour[];
  readonly notes: readonly string[];
  readonly words: DrawWords;
}

/** Where a motif is drawn on a sheet of its own. */
export const uprightTurn = 0.5;

/** How far its lines and its piece of film go on past the art, mm, and room around all, mm. Common practice, no source. */
const past = 6;
const margin = 6;

/** The piece of film that a motif is cut in, in the flat wall's frame. */
export function filmOfMotif({ wall, along, layers }: MotifOnSheet): Box {
  const art = tightBox(layers.flatMap(({ shapes }) => shapes.flatMap(({ contours }) => contours)));
  return grow(around(art, toFlat(wall, { turn: uprightTurn, along })), past);
}

/** A motif's art as the files have it. */
export const artOfMotif = ({ layers }: Pick<MotifOnSheet, 'layers'>): DrawnGroup[] =>
  layers.map(({ name, colour, shapes }) => ({ role: 'artwork', layer: name, colour, paths: shapes }));

/**
 * The cut drawing and the guide: the art in a piece of film of its own, by which its colours are laid together too. The lines cross at the
 * motif's place: `plumb-line` up the wall, `level-line` around it.
 */
export function motifDrawings({ notes, words, relief, ...motif }: MotifDrawingOptions): GuideSheet {
  const { wall, along } = motif;
  const place = toFlat(wall, { turn: uprightTurn, along });
  const reach = filmOfMotif(motif);
  const plumb = polyline(
    [along - (reach.maxY - place.y), along + (place.y - reach.minY)].map((at) =>
      toFlat(wall, { turn: uprightTurn, along: at }),
    ),
  );
  const [left, right] = [reach.minX, reach.maxX].map(
    (x) => uprightTurn + (x - place.x) / girthAt(wall, along),
  );
  const level = levelLine(wall, along, left ?? uprightTurn, right ?? uprightTurn);
  const border = polygon(boxCorners(reach));
  const room = grow(tightBox([plumb, level, border]), margin);
  const said = [
    { text: 'lip', x: place.x + 1.2, y: reach.minY + wordSize },
    { text: 'foot', x: place.x + 1.2, y: reach.maxY - wordSize / 3 },
  ].map(({ text, x, y }) => ({ contours: shifted(words(text, wordSize), { x, y }) }));
  return guideSheet({
    blade: [
      ...artOfMotif(motif),
      { role: 'relief' as const, paths: relief.map((cut) => ({ contours: [cut] })) },
      { role: 'outline' as const, paths: [{ contours: [border] }] },
    ].filter(({ paths }) => paths.length > 0),
    guide: [
      { role: 'trim', paths: [{ id: 'level-line', contours: [level] }] },
      { role: 'register', paths: [{ id: 'plumb-line', contours: [plumb] }] },
      { role: 'note', paths: said.filter(({ contours }) => contours.length > 0) },
    ],
    room,
    margin,
    notes,
    meanings: [
      { role: 'outline', says: 'cut' },
      { role: 'relief', says: 'relief cut' },
      { role: 'trim', says: 'level line' },
      { role: 'register', says: 'plumb line' },
    ],
    words,
  });
}

/** A box that holds another and a point. */
const around = (box: Box, { x, y }: { readonly x: number; readonly y: number }): Box => ({
  minX: Math.min(box.minX, x),
  minY: Math.min(box.minY, y),
  maxX: Math.max(box.maxX, x),
  maxY: Math.max(box.maxY, y),
});
