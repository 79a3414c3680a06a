// The pieces of a job on one sheet to look at: the lip's on top, as they sit on the vessel.
import { type FlatPlace, onGuide, onWall } from '../../job/flat-place.ts';
import type { FlatPiece, FlatView } from '../../job/flat-view.ts';
import type { Box, Point } from './sheet-view.ts';

export interface LaidPiece {
  readonly piece: FlatPiece;
  /** How far it is moved from where its file has it, mm. */
  readonly at: Point;
  readonly groups: readonly { readonly group: FlatPiece['groups'][number]; readonly path: Path2D }[];
}

export interface LaidOut {
  readonly pieces: readonly LaidPiece[];
  readonly box: Box;
}

/** Between pieces, mm. */
const gap = 12;

export function laidOut({ pieces }: FlatView): LaidOut {
  let y = 0;
  let width = 0;
  const laid = [...pieces].reverse().map((piece): LaidPiece => {
    const { minX, minY, maxX, maxY } = piece.box;
    const at = { x: -minX, y: y - minY };
    y += maxY - minY + gap;
    width = Math.max(width, maxX - minX);
    return { piece, at, groups: piece.groups.map((group) => ({ group, path: new Path2D(group.d) })) };
  });
  return { pieces: laid.reverse(), box: { minX: 0, minY: 0, maxX: width, maxY: Math.max(1, y - gap) } };
}

interface WallPlace {
  readonly turn: number;
  readonly along: number;
}

const holds = ({ piece }: FlatPlace, along: number): boolean => along >= piece.from && along <= piece.to;

/** Where a place of the wall lies on the sheet; undefined where no piece covers it. */
export function placeOnSheet({ pieces }: LaidOut, place: WallPlace): Point | undefined {
  const there = pieces.find(({ piece }) => holds(piece, place.along));
  if (!there) return undefined;
  const { x, y } = onGuide(there.piece, place);
  return { x: x + there.at.x, y: y + there.at.y };
}

/** The place of the wall under a point of the sheet; undefined beside the pieces. */
export function placeOnWall({ pieces }: LaidOut, point: Point): WallPlace | undefined {
  for (const { piece, at } of pieces) {
    const place = onWall(piece, { x: point.x - at.x, y: point.y - at.y });
    const isAround = place.turn > -0.02 && place.turn < 1.2;
    if (isAround && holds(piece, place.along)) return place;
  }
  return undefined;
}
