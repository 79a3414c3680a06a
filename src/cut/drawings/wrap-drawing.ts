// The two drawings of a wrap that share coordinates: what the blade follows, and the guide for the eye, printer or pen.
import { type DrawnGroup, type DrawnPath, movedGroups } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { moveContour, rotation } from '../../geometry/affine.ts';
import { type Box, grow } from '../../geometry/box.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { turnMotion } from '../../unroll/flat-wall.ts';
import { edgeLine, finishedEdge, outline, type Template } from '../../unroll/template.ts';
import { windingLine } from '../../unroll/winding.ts';
import { type GuideSheet, guideSheet } from '../guide/guide-sheet.ts';
import { handleHalves } from '../guide/handle-mark.ts';
import {
  besideWords,
  crossMark,
  edgeTicks,
  edgeWords,
  type NotedPlace,
  notedMeaning,
  placeWords,
  quarterTicks,
} from '../guide/marks.ts';
import type { LineMeaning } from '../guide/note-strip.ts';
import { type PanelJoints, panelMarks } from '../guide/panel-marks.ts';

export interface WrapDrawingOptions {
  readonly template: Template;
  /** What is cut around, where that is not the whole template: in its frame, and within it. */
  readonly border?: Contour;
  /** Flat limits of the blank, mm along the wall. */
  readonly flatLimits: readonly number[];
  readonly layers: readonly {
    readonly name: string;
    readonly colour: string;
    readonly shapes: readonly Shape[];
  }[];
  /** Cuts across the waste, so that it lifts in strips. */
  readonly relief?: readonly Contour[];
  /** How far art runs past the outline, mm. */
  readonly runOff: number;
  /** Lines of words for the guide. */
  readonly notes: readonly string[];
  /** Places outlined on the guide, each with the word to write in it. */
  readonly noted?: readonly NotedPlace[];
  /** Girth a handle takes, mm, if there is one. */
  readonly handleSpan?: number;
  /** What the seam lines mean, where they are more than a seam. */
  readonly seamSays?: string;
  /** Of an overlap: the end that lies on top, told at both sides. */
  readonly top?: 'start' | 'finish';
  /** Of a panel: its joints. */
  readonly joints?: PanelJoints;
  /** How far all but the words below is turned on its sheet, radians, x towards y; 0 where it is left out. */
  readonly turned?: number;
  readonly words: DrawWords;
}

/** Room around the piece for marks, mm. */
const margin = 10;

/** How far within the piece's width the crosses stand: clear of the ticks at its corners and at a usual overlap, mm. */
const inward = 12;

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

/** The straight lines up the wall at the finished sides: where the ends wind, to lay by. */
const seamLines = ({ wall, band, seam }: Template): readonly DrawnPath[] => [
  path(edgeLine(wall, seam.start, band.from, band.to), 'seam-start'),
  path(edgeLine(wall, seam.finish, band.from, band.to), 'seam-finish'),
];

function guideLines(options: WrapDrawingOptions): DrawnGroup[] {
  const { template } = options;
  const { band } = template;
  return [
    { role: 'seam', paths: seamLines(template) },
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

/**
 * Crosses above and below the piece, near its corners: what is wider than the piece costs paper. A joint has its own.
 */
function corners({ minX, minY, maxX, maxY }: Box, runOff: number, joints: PanelJoints): DrawnPath[] {
  const away = (margin + runOff) / 2;
  const places = [...(joints.left ? [] : [minX + inward]), ...(joints.right ? [] : [maxX - inward])];
  return [minY - away, maxY + away].flatMap((y) => places.map((x) => ({ contours: crossMark({ x, y }) })));
}

/** What the lines of a wrap's guide mean. */
const meaningsOf = (
  { handleSpan, seamSays = 'seam', template }: WrapDrawingOptions,
  { left, right, foot, lip }: PanelJoints,
  noted: readonly NotedPlace[],
): readonly LineMeaning[] => [
  { role: 'outline', says: 'cut' },
  { role: 'relief', says: 'relief cut' },
  {
    role: 'seam',
    says: `${handleSpan === undefined ? seamSays : 'end by the handle'}${left || right ? ', or joint' : ''}`,
  },
  ...(left && left.overlap > 0
    ? [{ role: 'register' as const, says: 'where the panel at the left ends' }]
    : []),
  ...(foot && foot.overlap > 0
    ? [{ role: 'register' as const, says: 'where the level below ends, under this' }]
    : []),
  ...(template.winding && template.winding.lap > 0
    ? [{ role: 'register' as const, says: 'where the edge of the start lies' }]
    : []),
  { role: 'trim', says: foot || lip ? 'trim to here, or level joint' : 'trim to here' },
  { role: 'flat-limit', says: 'flat up to here' },
  { role: 'note', says: notedMeaning(noted) },
];

/** Where the winding edge of the start will lie on the finish, if the finish goes on past it. */
function startOnFinish({ wall, band, winding }: Template): DrawnGroup[] {
  if (!winding || winding.lap === 0) return [];
  const line = moveContour(turnMotion(wall, 1), windingLine(wall, winding, band.from, band.to));
  return [{ role: 'register', paths: [path(line, 'start-on-finish')] }];
}

/** Register marks and words of the guide, in the sheet's own frame. */
function guideMarks(options: WrapDrawingOptions, noted: readonly NotedPlace[]): DrawnGroup[] {
  const { template, runOff, joints = {}, words } = options;
  const panel = panelMarks(template, joints, runOff, words);
  const ticks = [...quarterTicks(template, runOff), ...edgeTicks(template, runOff)];
  return [
    {
      role: 'register',
      paths: [...[...ticks, ...panel.crosses].map((mark) => path(mark)), ...panel.landings],
    },
    ...startOnFinish(template),
    { role: 'note', lines: true, paths: noted.flatMap(({ shapes }) => shapes) },
    {
      role: 'note',
      paths: [
        ...noted.flatMap((place) => placeWords(place, words)),
        ...edgeWords(template, runOff, words),
        ...endWords(options),
        ...panel.words,
      ].map((contours) => ({ contours })),
    },
  ];
}

/** Which end lies on top at the seam, up the wall beside both ends; at a joint of panels no end is. */
function endWords({ template, runOff, top, joints = {}, words }: WrapDrawingOptions): (readonly Contour[])[] {
  if (top === undefined) return [];
  const says = (end: 'start' | 'finish') => (end === top ? 'this end on top' : 'this end under');
  return [
    ...(joints.left ? [] : [besideWords(template, 'left', says('start'), runOff, words)]),
    ...(joints.right ? [] : [besideWords(template, 'right', says('finish'), runOff, words)]),
  ];
}

const reliefGroups = ({ relief = [] }: WrapDrawingOptions): DrawnGroup[] =>
  relief.length === 0 ? [] : [{ role: 'relief', paths: relief.map((cut) => path(cut)) }];

/** The cut drawing and the guide of a wrap, or of one panel of it. */
export function wrapDrawings(options: WrapDrawingOptions): GuideSheet {
  const { template, layers, runOff, notes, handleSpan, joints = {}, turned = 0, words } = options;
  const handle =
    handleSpan === undefined ? [] : [{ says: 'handle', shapes: handleHalves(template, handleSpan) }];
  const noted: readonly NotedPlace[] = [...(options.noted ?? []), ...handle];
  const move = rotation(turned);
  const moved = (contour: Contour) => (turned === 0 ? contour : moveContour(move, contour));
  const groups = (of: readonly DrawnGroup[]) => (turned === 0 ? of : movedGroups(of, move));
  const whole = moved(outline(template));
  const border = options.border ? moved(options.border) : whole;
  // The lines at turn 0 and 1 may lie beside a piece whose ends wind.
  const lines = template.winding ? seamLines(template).flatMap(({ contours }) => contours.map(moved)) : [];
  const beside = handle.flatMap(({ shapes }) => shapes.flatMap(({ contours }) => contours.map(moved)));
  const artwork = layers.map(
    ({ name, colour, shapes }): DrawnGroup => ({ role: 'artwork', layer: name, colour, paths: shapes }),
  );
  return guideSheet({
    blade: [...groups([...artwork, ...reliefGroups(options)]), { role: 'outline', paths: [path(border)] }],
    guide: [
      ...groups(guideLines(options)),
      { role: 'register', paths: corners(tightBox([whole]), runOff, joints) },
      ...groups(guideMarks(options, noted)),
    ],
    room: grow(tightBox([whole, ...lines, ...beside]), margin + runOff),
    margin,
    notes,
    meanings: meaningsOf(options, joints, noted),
    words,
  });
}
