// Rings on a grid of whole numbers, as the polygon engine takes and gives them.

/** A corner on the grid: whole numbers. */
export interface GridPoint {
  readonly x: number;
  readonly y: number;
}

export type GridRing = readonly GridPoint[];

/** An outer ring with its holes. Outer rings run counter-clockwise with y up, holes clockwise. */
export interface GridRegion {
  readonly outer: GridRing;
  readonly holes: readonly GridRing[];
}

/** What a ring encloses, square grid units; above zero where it runs counter-clockwise with y up. */
export function ringArea(ring: GridRing): number {
  let twice = 0;
  let p = ring.at(-1);
  for (const q of ring) {
    if (p) twice += p.x * q.y - p.y * q.x;
    p = q;
  }
  return twice / 2;
}

/** All rings of regions, each outer one before its holes. */
export const ringsIn = (regions: readonly GridRegion[]): GridRing[] =>
  regions.flatMap(({ outer, holes }) => [outer, ...holes]);
