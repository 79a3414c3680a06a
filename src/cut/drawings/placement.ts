// A paper template that shows where a motif goes: from the seam or the handle, and from the foot or the lip, to a window for its film.
import { widthOf } from '../../drawing/broken-lines.ts';
import type { Drawing, DrawnPath } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { type Box, boxCorners, grow } from '../../geometry/box.ts';
import { type Contour, polygon } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { type FlatWall, girthAt, toFlat, toWall } from '../../unroll/flat-wall.ts';
import {
  edgeLine,
  edgePoint,
  finishedEdge,
  outline,
  type SideEdge,
  type Template,
  templateOf,
  turnOfEdge,
} from '../../unroll/template.ts';
import { bentWords } from '../guide/bent-words.ts';
import { guideSheet } from '../guide/guide-sheet.ts';
import { capital, wordSize } from '../guide/marks.ts';
import { artOfMotif, filmOfMotif, type MotifOnSheet, uprightTurn } from './motif-drawing.ts';

export interface PlacementOptions extends MotifOnSheet {
  /** The level edge that the paper is held by, mm along, and what is said there. */
  readonly base: { readonly along: number; readonly says: string };
  /** Turns from the motif to the seam, or to the middle of the handle, the shorter way: to the left negative. */
  readonly toSeam: number;
  /**
   * How far from there the paper's side stands, towards the motif, mm; what is said there, and what where the paper lies across instead.
   */
  readonly side: { readonly offset: number; readonly says: string; readonly across: string };
  readonly notes: readonly string[];
  readonly words: DrawWords;
}

/** Paper left around the window, and room of words from an edge, mm. */
const rim = 12;
const besideEdge = 1.6;

/** Bare border of the drawing, mm. */
const margin = 6;

/**
 * The template at true size, for the eye and for paper: `placement` is its outline, `window` the piece of film, and its
 * level line and plumb line go on across the paper. Where the film lies over the seam the paper lies over it too, and `seam-line` is
 * drawn across it.
 */
export function placementDrawing(options: PlacementOptions): Drawing {
  const { wall, along, base, side, notes, words } = options;
  const film = filmOfMotif(options);
  const template = paperOf(options);
  const seam = { turn: uprightTurn + options.toSeam, offset: 0 };
  const isAcross = seamInside(options);
  const border = outline(template);
  const { piece } = template;
  const plumb = { turn: uprightTurn, offset: 0 };
  // Words stand on the paper; across it, on the side away from the plumb line.
  const isRight = isAcross ? options.toSeam > 0 : options.toSeam < 0;
  const line = isAcross ? seam : options.toSeam < 0 ? template.left : template.right;
  const said = [
    levelWords(
      base.says,
      template,
      { along: base.along, lines: isAcross ? [seam, plumb] : [plumb], window: windowOn(film, wall) },
      words,
    ),
    uprightWords(
      isAcross ? side.across : side.says,
      template,
      { line, isRight, crossed: along, ...(isAcross ? { window: windowOn(film, wall) } : {}) },
      words,
    ),
  ].filter((contours) => contours.length > 0);
  const path = (id: string, contour: Contour): DrawnPath => ({ id, contours: [contour] });
  const { guide } = guideSheet({
    blade: [
      ...artOfMotif(options),
      {
        role: 'outline',
        paths: [path('placement', border), path('window', polygon(boxCorners(film)))],
      },
    ],
    guide: [
      {
        role: 'seam',
        paths: isAcross ? [path('seam-line', edgeLine(wall, seam, piece.from, piece.to))] : [],
      },
      { role: 'trim', paths: [path('level-line', finishedEdge(template, along))] },
      { role: 'register', paths: [path('plumb-line', edgeLine(wall, plumb, piece.from, piece.to))] },
      { role: 'note', paths: said.map((contours) => ({ contours })) },
    ],
    room: grow(tightBox([border]), margin),
    margin,
    notes,
    meanings: [
      { role: 'outline', says: 'cut the paper' },
      { role: 'seam', says: 'seam' },
      { role: 'trim', says: 'level line' },
      { role: 'register', says: 'plumb line' },
    ],
    words,
  });
  return guide;
}

/** How far a motif's film reaches to the left and right of its plumb line, where the sheet is upright, mm. */
function reachOf(options: MotifOnSheet): { readonly left: number; readonly right: number } {
  const { minX, maxX } = filmOfMotif(options);
  const { x } = toFlat(options.wall, { turn: uprightTurn, along: options.along });
  return { left: x - minX, right: maxX - x };
}

/** Whether the seam runs under the film or so near it that no paper would be left between. */
function seamInside(options: PlacementOptions): boolean {
  const { wall, along, toSeam, side } = options;
  const { left, right } = reachOf(options);
  const away = Math.abs(toSeam) * girthAt(wall, along) - side.offset;
  return away < (toSeam < 0 ? left : right) + rim / 2;
}

/** How far up the wall the corners of a piece of film lie, mm. */
const heightsOf = (film: Box, wall: FlatWall): number[] =>
  boxCorners(film).map((corner) => toWall(wall, corner).along);

/** What the window takes of the wall. */
interface Window {
  readonly turns: readonly [number, number];
  readonly heights: readonly [number, number];
}

/** The corners and the middles of the sides: of a straight side that lies across arcs one of them reaches furthest. */
function windowOn(film: Box, wall: FlatWall): Window {
  const corners = boxCorners(film);
  const places = corners
    .flatMap((corner, i) => {
      const next = corners[(i + 1) % corners.length] ?? corner;
      return [corner, { x: (corner.x + next.x) / 2, y: (corner.y + next.y) / 2 }];
    })
    .map((corner) => toWall(wall, corner));
  const [turns, heights] = [places.map(({ turn }) => turn), places.map(({ along }) => along)];
  return {
    turns: [Math.min(...turns), Math.max(...turns)],
    heights: [Math.min(...heights), Math.max(...heights)],
  };
}

/** The piece of paper. */
function paperOf(options: PlacementOptions): Template {
  const { wall, base, toSeam, side } = options;
  const heights = heightsOf(filmOfMotif(options), wall);
  const [low, high] = [Math.min(...heights) - rim, Math.max(...heights) + rim];
  const isBelow = base.along < options.along;
  const band = isBelow
    ? { from: base.along, to: Math.max(high, base.along + rim) }
    : { from: Math.min(low, base.along - rim), to: base.along };
  const { left, right } = reachOf(options);
  const atSeam = (offset: number): SideEdge => ({ turn: uprightTurn + toSeam, offset });
  const atMotif = (offset: number): SideEdge => ({ turn: uprightTurn, offset });
  const isAcross = seamInside(options);
  const whole = templateOf(wall, { band, trim: { foot: 0, lip: 0 }, overlap: 0 });
  return {
    ...whole,
    left: !isAcross && toSeam < 0 ? atSeam(side.offset) : atMotif(-left - rim),
    right: !isAcross && toSeam >= 0 ? atSeam(-side.offset) : atMotif(right + rim),
  };
}

type Gap = readonly [number, number];

/** The stretches between places on a line. */
function gapsBetween(places: readonly number[]): readonly Gap[] {
  const sorted = [...places].sort((a, b) => a - b);
  return sorted.slice(1).map((to, i): Gap => [sorted[i] ?? to, to]);
}

const widest = (gaps: readonly Gap[]): Gap =>
  gaps.reduce((best, gap) => (gap[1] - gap[0] > best[1] - best[0] ? gap : best), [0, 0] as const);

/** Height of letters above their line and below it, as a share of their size; from memory. */
const lettersHigh = capital + 0.3;

/**
 * Words along a level edge of the paper, on the paper's side of it, where lines up the wall leave most room: between the edge and the
 * window, or beside the window where they are larger so.
 */
function levelWords(
  says: string,
  { wall, piece, left, right }: Template,
  {
    along: at,
    lines,
    window: { turns, heights },
  }: { readonly along: number; readonly lines: readonly SideEdge[]; readonly window: Window },
  words: DrawWords,
): Contour[] {
  const places = [left, right, ...lines].map((edge) => turnOfEdge(wall, edge, at));
  const girth = girthAt(wall, at);
  const between = at === piece.from ? heights[0] - at : at - heights[1];
  const past = widest(gapsBetween(places));
  const beside = widest(
    gapsBetween([...places, ...turns]).filter(([start, end]) => end <= turns[0] || start >= turns[1]),
  );
  const inGap = ([start, end]: Gap, most: number) => ({
    middle: (start + end) / 2,
    ...fitted(says, (end - start) * girth - 2 * besideEdge, words, most),
  });
  const [one, other] = [inGap(past, (between - 2 * besideEdge) / lettersHigh), inGap(beside, wordSize)];
  const { drawn, width, em, middle } = other.em > one.em ? other : one;
  const along = at === piece.from ? at + besideEdge : at - besideEdge - em * capital;
  const start = middle - width / 2 / girth;
  return bentWords(drawn, (p) => toFlat(wall, { turn: start + p.x / girth, along: along - p.y }));
}

/** Words that run up a line, to its right or left, where the level line that crosses it, and the window where it does, leave most room. */
function uprightWords(
  says: string,
  { wall, piece }: Template,
  {
    line,
    isRight,
    crossed,
    window,
  }: {
    readonly line: SideEdge;
    readonly isRight: boolean;
    readonly crossed: number;
    readonly window?: Window;
  },
  words: DrawWords,
): Contour[] {
  // The words along the level edges keep their room.
  const ends = [piece.from + 2 * wordSize, piece.to - 2 * wordSize];
  const [low, high] = window?.heights ?? [crossed, crossed];
  // What is said within the window is cut out with it.
  const [from, to] = widest(
    gapsBetween([...ends, crossed, low, high]).filter(([start, end]) => end <= low || start >= high),
  );
  const { drawn, width, em } = fitted(says, to - from - 2 * besideEdge, words);
  const start = (from + to - width) / 2;
  const offset = line.offset + (isRight ? besideEdge + em * capital : -besideEdge);
  return bentWords(
    drawn,
    (p: Point): Point => edgePoint(wall, { ...line, offset: offset + p.y }, start + p.x),
  );
}

/** Words no wider than there is room, and no larger than `most`, mm. */
function fitted(says: string, room: number, words: DrawWords, most = wordSize) {
  const full = widthOf(says, { words, em: wordSize });
  const em = Math.max(0, Math.min(most, wordSize, (wordSize * room) / (full || 1)));
  const drawn = em > 0 ? words(says, em) : [];
  return { drawn, em, width: drawn.length > 0 ? tightBox(drawn).maxX : 0 };
}
