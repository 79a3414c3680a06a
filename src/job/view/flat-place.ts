// Between a place on the wall and a place on a written guide, for whoever shows the guide and points at it.
import { type Affine, inverse, movePoint } from '../../geometry/affine.ts';
import type { Point } from '../../geometry/point.ts';
import { type FlatWall, toFlat, toWall, type WallPoint } from '../../unroll/flat-wall.ts';
import { type SideEdge, turnOfEdge } from '../../unroll/template.ts';

/** Where a written piece lies: plain values, so that they can be handed from one thread to another. */
export interface FlatPlace {
  readonly wall: FlatWall;
  /** From the flat wall's own frame to the file, mm. */
  readonly toFile: Affine;
  /** The finished band, mm along the bare wall. */
  readonly band: { readonly from: number; readonly to: number };
  /** Where the sheet's own lengths are not the bare wall's: places of both, close together, from the foot up. */
  readonly lengths?: readonly { readonly along: number; readonly on: number }[];
  /** The cut piece on the sheet, trims included. */
  readonly piece: { readonly from: number; readonly to: number };
  /** Its sides, overlap included. */
  readonly left: SideEdge;
  readonly right: SideEdge;
}

/** A place of the wall on the guide, mm, y down. */
export const onGuide = (place: FlatPlace, { turn, along }: WallPoint): Point =>
  movePoint(place.toFile, toFlat(place.wall, { turn, along: carried(place, along, 'along', 'on') }));

/** The place of the wall that a point of the guide shows; past the seam `turn` leaves 0 to 1. */
export function onWall(place: FlatPlace, point: Point): WallPoint {
  const { turn, along } = toWall(place.wall, movePoint(inverse(place.toFile), point));
  return { turn, along: carried(place, along, 'on', 'along') };
}

/** Levels that turn on a larger radius than this are straight on any sheet, mm. */
const straight = 1e6;

/** The point of the guide that the level lines of a piece turn about, mm; undefined where they are straight. */
export function levelCentre({ wall, toFile }: FlatPlace): Point | undefined {
  const radius = 1 / wall.curvature;
  return Math.abs(radius) < straight ? movePoint(toFile, { x: 0, y: radius }) : undefined;
}

/** Whether the piece covers a place of the wall. */
export function coversPlace(place: FlatPlace, { turn, along }: WallPoint): boolean {
  const { wall, piece, left, right } = place;
  const on = carried(place, along, 'along', 'on');
  return (
    on >= piece.from &&
    on <= piece.to &&
    turn >= turnOfEdge(wall, left, on) &&
    turn <= turnOfEdge(wall, right, on)
  );
}

/** A height from one of the two lengths to the other, between places that are known; past their ends mm for mm. */
function carried({ lengths }: FlatPlace, height: number, from: 'along' | 'on', to: 'along' | 'on'): number {
  if (!lengths) return height;
  const next = lengths.findIndex((known) => known[from] >= height);
  const [low, high] = [lengths[next - 1], lengths[next]];
  const end = next < 0 ? lengths.at(-1) : lengths[0];
  if (!low || !high) return end ? height + end[to] - end[from] : height;
  return low[to] + ((height - low[from]) / (high[from] - low[from])) * (high[to] - low[to]);
}
