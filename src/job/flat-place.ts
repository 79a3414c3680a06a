// Between a place on the wall and a place on a written guide, for whoever shows the guide and points at it.
import { type Affine, inverse, movePoint } from '../geometry/affine.ts';
import type { Point } from '../geometry/point.ts';
import { type FlatWall, toFlat, toWall, type WallPoint } from '../unroll/flat-wall.ts';
import { type SideEdge, turnOfEdge } from '../unroll/template.ts';

/** Where a written piece lies: plain values, so that they can be handed from one thread to another. */
export interface FlatPlace {
  readonly wall: FlatWall;
  /** From the flat wall's own frame to the file, mm. */
  readonly toFile: Affine;
  readonly band: { readonly from: number; readonly to: number };
  /** The cut piece along the wall, trims included. */
  readonly piece: { readonly from: number; readonly to: number };
  /** Its sides, overlap included. */
  readonly left: SideEdge;
  readonly right: SideEdge;
}

/** A place of the wall on the guide, mm, y down. */
export const onGuide = ({ wall, toFile }: FlatPlace, place: WallPoint): Point =>
  movePoint(toFile, toFlat(wall, place));

/** The place of the wall that a point of the guide shows; past the seam `turn` leaves 0 to 1. */
export const onWall = ({ wall, toFile }: FlatPlace, point: Point): WallPoint =>
  toWall(wall, movePoint(inverse(toFile), point));

/** Whether the piece covers a place of the wall. */
export const coversPlace = ({ wall, piece, left, right }: FlatPlace, { turn, along }: WallPoint): boolean =>
  along >= piece.from &&
  along <= piece.to &&
  turn >= turnOfEdge(wall, left, along) &&
  turn <= turnOfEdge(wall, right, along);
