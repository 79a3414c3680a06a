// The two drawings of a wrap that share coordinates: what the blade follows, and the guide for the eye, printer or pen.
import type { Drawing, DrawnGroup, DrawnPath } from '../drawing/drawing.ts';
import type { DrawWords } from '../drawing/words.ts';
import { shifted } from '../geometry/affine.ts';
import { grow } from '../geometry/box.ts';
import type { Contour, Shape } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { edgeLine, finishedEdge, outline, type Template } from '../unroll/template.ts';
import { handleHalves } from './handle-mark.ts';
import {
  crossMark,
  edgeTicks,
  edgeWords,
  noteStrip,
  placeWords,
  quarterTicks,
  scaleSquares,
} from './marks.ts';

export interface WrapDrawingOptions {
  readonly template: Template;
  /** Flat limits of the blank, mm along the wall. */
  readonly flatLimits: readonly number[];
  readonly layers: readonly {
    readonly name: string;
    readonly colour: string;
    readonly shapes: readonly Shape[];
  }[];
  /** How far art runs past the outline, mm. */
  readonly runOff: number;
  /** Lines of words for the guide. */
  readonly notes: readonly string[];
  /** Places outlined on the guide, each with the word to write in it. */
  readonly noted?: readonly { readonly says: string; readonly shapes: readonly Shape[] }[];
  /** Girth a handle takes, mm, if there is one. */
  readonly handleSpan?: number;
  readonly words: DrawWords;
}

export interface WrapDrawings {
  readonly cut: Drawing;
  readonly guide: Drawing;
  /** Where the flat wall's origin lies in both, mm. */
  readonly origin: Point;
}

/** Room around the piece for marks, mm. */
const margin = 10;

const path = (contour: Contour, id?: string): DrawnPath => ({
  ...(id === undefined ? {} : { id }),
  contours: [contour],
});

/** Level lines where the wall stops being flat, where the piece reaches that far. */
function flatLimitPaths({ template, flatLimits }: WrapDrawingOptions): DrawnPath[] {
  const { piece } = template;
  return [...new Set(flatLimits)]
    .filter((along) => along >= piece.from && along <= piece.to)
    .map((along, i) => path(finishedEdge(template, along), `flat-limit-${i + 1}`));
}

function guideLines(options: WrapDrawingOptions): DrawnGroup[] {
  const { template } = options;
  const { wall, band, seam } = template;
  return [
    {
      role: 'seam',
      paths: [
        path(edgeLine(wall, seam.start, band.from, band.to), 'seam-start'),
        path(edgeLine(wall, seam.finish, band.from, band.to), 'seam-finish'),
      ],
    },
    {
      role: 'trim',
      paths: [
        path(finishedEdge(template, band.from), 'trim-foot'),
        path(finishedEdge(template, band.to), 'trim-lip'),
      ],
    },
    { role: 'flat-limit', paths: flatLimitPaths(options) },
  ];
}

/** The cut drawing and the guide of a wrap. */
export function wrapDrawings(options: WrapDrawingOptions): WrapDrawings {
  const { template, layers, runOff, notes, handleSpan, words } = options;
  const border = outline(template);
  const handle =
    handleSpan === undefined ? [] : [{ says: 'handle', shapes: handleHalves(template, handleSpan) }];
  const noted = [...(options.noted ?? []), ...handle];
  const beside = handle.flatMap(({ shapes }) => shapes.flatMap(({ contours }) => contours));
  const room = grow(tightBox([border, ...beside]), margin + runOff);
  const strip = noteStrip(notes, words, room.maxX - room.minX - 2 * margin);
  const width = room.maxX - room.minX;
  const origin = { x: -room.minX, y: -room.minY };
  const height = room.maxY - room.minY + strip.height + margin;
  const corners = [
    { x: room.minX + margin / 2, y: room.minY + margin / 2 },
    { x: room.maxX - margin / 2, y: room.minY + margin / 2 },
    { x: room.minX + margin / 2, y: room.maxY - margin / 2 },
    { x: room.maxX - margin / 2, y: room.maxY - margin / 2 },
  ];
  const artwork = layers.map(
    ({ name, colour, shapes }): DrawnGroup => ({ role: 'artwork', layer: name, colour, paths: shapes }),
  );
  const blade: DrawnGroup[] = [...artwork, { role: 'outline', paths: [path(border)] }];
  const stripAt = { x: room.minX + margin, y: room.maxY };
  const register: DrawnPath[] = [
    ...corners.map((corner) => ({ contours: crossMark(corner) })),
    ...[...quarterTicks(template, runOff), ...edgeTicks(template, runOff)].map((tick) => path(tick)),
    ...shifted(scaleSquares(), stripAt).map((square) => path(square)),
  ];
  const guide: DrawnGroup[] = [
    ...blade,
    ...guideLines(options),
    { role: 'register', paths: register },
    { role: 'note', lines: true, paths: noted.flatMap(({ shapes }) => shapes) },
    {
      role: 'note',
      paths: [
        ...noted.flatMap((place) => placeWords(place, words)).map((contours) => ({ contours })),
        ...edgeWords(template, runOff, words).map((contours) => ({ contours })),
        ...strip.lines.map((line) => ({ contours: shifted(line, stripAt) })),
      ],
    },
  ];
  const onPage = (groups: readonly DrawnGroup[]): Drawing => ({
    width,
    height,
    groups: groups.map((group) => ({
      ...group,
      paths: group.paths.map((drawn) => ({ ...drawn, contours: shifted(drawn.contours, origin) })),
    })),
  });
  return { cut: onPage(blade), guide: onPage(guide), origin };
}
