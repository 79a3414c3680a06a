// Between a place on the wall and a place on a written guide, for whoever shows the guide and points at it.
import { type FlatWall, girthAt, toFlat, toWall, type WallPoint } from '../unroll/flat-wall.ts';

/** Where a written piece lies: plain values, so that they can be handed from one thread to another. */
export interface FlatPlace {
  readonly wall: FlatWall;
  /** The flat frame's origin in the file, mm. */
  readonly origin: { readonly x: number; readonly y: number };
  readonly band: { readonly from: number; readonly to: number };
  /** The cut piece along the wall, trims included. */
  readonly piece: { readonly from: number; readonly to: number };
}

/** A place of the wall on the guide, mm, y down. */
export function onGuide({ wall, origin }: FlatPlace, place: WallPoint): { x: number; y: number } {
  const { x, y } = toFlat(wall, place);
  return { x: x + origin.x, y: y + origin.y };
}

/** The place of the wall that a point of the guide shows; past the seam `turn` leaves 0 to 1. */
export const onWall = (
  { wall, origin }: FlatPlace,
  point: { readonly x: number; readonly y: number },
): WallPoint => toWall(wall, { x: point.x - origin.x, y: point.y - origin.y });

/** Girth of the sheet at a height, mm. */
export const girthOfSheet = ({ wall }: FlatPlace, along: number): number => girthAt(wall, along);
