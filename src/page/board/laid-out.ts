// The pieces of a job on one sheet to look at: the lip's on top, as they sit on the vessel.
import { coversPlace, onGuide, onWall } from '../../job/view/flat-place.ts';
import type { FlatPiece, FlatView } from '../../job/view/flat-view.ts';
import type { InkedGroup } from '../../job/view/followed-view.ts';
import { inkOf } from '../../job/view/ink.ts';
import type { Box, Point } from './sheet-view.ts';

export interface LaidPiece {
  readonly piece: FlatPiece;
  /** How far it is moved from where its file has it, mm. */
  readonly at: Point;
  readonly groups: readonly InkedGroup[];
}

export interface LaidOut {
  readonly pieces: readonly LaidPiece[];
  readonly box: Box;
}

interface WallPlace {
  readonly turn: number;
  readonly along: number;
}

/** Between pieces, mm. */
const gap = 12;

/** A piece and where it is moved, mm. */
interface Stand {
  readonly piece: FlatPiece;
  readonly at: Point;
}

interface Stood {
  readonly stands: readonly Stand[];
  readonly width: number;
  readonly height: number;
}

/** `art`: of each piece what is drawn below its own groups. */
export function laidOut({ pieces }: FlatView, art: readonly (readonly InkedGroup[])[] = []): LaidOut {
  const { stands, width, height } = stoodOut(pieces);
  const laid = stands.map(({ piece, at }): LaidPiece => {
    const below = art[pieces.indexOf(piece)] ?? [];
    return {
      piece,
      at,
      groups: [...below, ...piece.groups.map(({ d, ...group }) => ({ ...group, ink: inkOf(d) }))],
    };
  });
  return { pieces: laid, box: { minX: 0, minY: 0, maxX: width, maxY: Math.max(1, height) } };
}

/** The wraps, the lip's on top; what is cut apart in rows of its own below them or beside them, where all is seen larger. */
function stoodOut(pieces: readonly FlatPiece[]): Stood {
  // Gores are one drawing, and alone.
  const apart = pieces.length > 1 ? pieces.filter(({ place }) => !place) : [];
  const rows: FlatPiece[][] = [];
  for (const piece of pieces.filter((piece) => !apart.includes(piece))) {
    const row = rows.at(-1);
    if (row && piece.beside > 0) row.push(piece);
    else rows.push([piece]);
  }
  const wraps = inColumn(rows.reverse());
  if (apart.length === 0) return wraps;
  const [below, beside] = [inColumn(inRows(apart, wraps.width)), inColumn([apart])];
  const stacked = both(wraps, below, { x: 0, y: wraps.height + gap });
  const abreast = both(wraps, beside, { x: wraps.width + gap, y: 0 });
  return sizeSeen(abreast) < sizeSeen(stacked) ? abreast : stacked;
}

/** How many times as wide as high most windows are. */
const windowShape = 1.4;

const sizeSeen = ({ width, height }: Stood): number => Math.max(width, windowShape * height);

/** Rows under one another, each from its left end on. */
function inColumn(rows: readonly (readonly FlatPiece[])[]): Stood {
  let y = 0;
  const laid = rows.map((row) => {
    let x = 0;
    const stood = row.map((piece): Stand => {
      const at = { x: x - piece.box.minX, y: y - piece.box.minY };
      x += piece.box.maxX - piece.box.minX + gap;
      return { piece, at };
    });
    y += Math.max(...row.map(({ box }) => box.maxY - box.minY)) + gap;
    return stood;
  });
  return {
    stands: laid.reverse().flat(),
    width: Math.max(0, ...rows.map(widthOf)),
    height: Math.max(0, y - gap),
  };
}

/** `more` beside `first`, moved by so much. */
const both = (first: Stood, more: Stood, { x, y }: Point): Stood => ({
  stands: [
    ...more.stands.map(({ piece, at }) => ({ piece, at: { x: at.x + x, y: at.y + y } })),
    ...first.stands,
  ],
  width: Math.max(first.width, x + more.width),
  height: Math.max(first.height, y + more.height),
});

const widthOf = (row: readonly FlatPiece[]): number =>
  row.reduce((sum, { box }) => sum + box.maxX - box.minX + gap, -gap);

/** So much wider than the wraps a row of what is cut apart may be: in one long row all would be small. */
const wider = 1.5;

/** Pieces in rows, each as many as fit. */
function inRows(pieces: readonly FlatPiece[], width: number): FlatPiece[][] {
  const rows: FlatPiece[][] = [];
  for (const piece of pieces) {
    const row = rows.at(-1);
    if (row && widthOf([...row, piece]) <= wider * width) row.push(piece);
    else rows.push([piece]);
  }
  return rows;
}

/** Where a place of the wall lies on the sheet; undefined where no piece covers it. */
export function placeOnSheet({ pieces }: LaidOut, place: WallPlace): Point | undefined {
  for (const { piece, at } of pieces) {
    if (!piece.place || !coversPlace(piece.place, place)) continue;
    const { x, y } = onGuide(piece.place, place);
    return { x: x + at.x, y: y + at.y };
  }
  return undefined;
}

/** The place of the wall under a point of the sheet; undefined beside the pieces. */
export function placeOnWall({ pieces }: LaidOut, point: Point): WallPlace | undefined {
  for (const { piece, at } of pieces) {
    if (!piece.place) continue;
    const place = onWall(piece.place, { x: point.x - at.x, y: point.y - at.y });
    if (coversPlace(piece.place, place)) return place;
  }
  return undefined;
}

/** The place of the wall under a point, by the piece that lies nearest to it, past its edges too. */
export function placePastEdges({ pieces }: LaidOut, point: Point): WallPlace | undefined {
  const off = ({ piece: { box }, at }: LaidPiece): number => {
    const [x, y] = [point.x - at.x, point.y - at.y];
    return Math.hypot(Math.max(box.minX - x, 0, x - box.maxX), Math.max(box.minY - y, 0, y - box.maxY));
  };
  const [nearest] = pieces.filter(({ piece }) => piece.place).sort((a, b) => off(a) - off(b));
  return (
    nearest?.piece.place &&
    onWall(nearest.piece.place, { x: point.x - nearest.at.x, y: point.y - nearest.at.y })
  );
}
