// Straight edges drawn on one slanting line: on a grid they share it only where they share their corners.

import { BoxIndex } from './box-index.ts';
import type { GridPoint, GridRing } from './grid-ring.ts';
import { norm } from './point.ts';

/** A straight edge on the grid; `p` is the corner of its ring that it starts from. */
export interface GridEdge {
  readonly p: GridPoint;
  readonly q: GridPoint;
}

/** How far beside an edge a corner of the same drawn line may lie by rounding, grid units: half of one each way, thrice. */
const rounding = 1.5;

const isSlanting = ({ p, q }: GridEdge): boolean => p.x !== q.x && p.y !== q.y;

/** The corners that an edge touches between its own ends, in order from p to q. */
function cornersOn({ p, q }: GridEdge, corners: readonly GridPoint[], index: BoxIndex): GridPoint[] {
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const length = norm(dx, dy);
  const along = ({ x, y }: GridPoint): number => ((x - p.x) * dx + (y - p.y) * dy) / length;
  const isTouched = (i: number): boolean => {
    const corner = corners[i];
    if (!corner) return false;
    const beside = Math.abs((corner.x - p.x) * dy - (corner.y - p.y) * dx) / length;
    if (beside > rounding) return false;
    const at = along(corner);
    return at > rounding && at < length - rounding;
  };
  return index
    .meeting(Math.min(p.x, q.x), Math.min(p.y, q.y), Math.max(p.x, q.x), Math.max(p.y, q.y), isTouched)
    .flatMap((i) => corners[i] ?? [])
    .sort((a, b) => along(a) - along(b));
}

/**
 * The rings with their straight edges led through the corners of other edges that they touch, so that edges drawn on
 * one line coincide and merge without a slit. Level and upright edges do so unaided, and are left as they are.
 */
export function ledThroughCorners(
  rings: readonly GridRing[],
  edges: readonly GridEdge[],
): readonly GridRing[] {
  const slanting = edges.filter(isSlanting);
  if (slanting.length < 2) return rings;
  const corners = slanting.flatMap(({ p, q }) => [p, q]);
  const index = new BoxIndex(corners.length, (add) => {
    for (const { x, y } of corners) add(x, y, x, y);
  });
  const touched = new Map<GridPoint, GridPoint[]>();
  for (const edge of slanting) {
    const found = cornersOn(edge, corners, index);
    if (found.length > 0) touched.set(edge.p, found);
  }
  if (touched.size === 0) return rings;
  return rings.map((ring) =>
    ring.flatMap((corner) => {
      const others = touched.get(corner);
      return others ? [corner, ...others] : corner;
    }),
  );
}
