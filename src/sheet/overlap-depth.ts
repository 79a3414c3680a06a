// How deep two pieces lie in one another.
import type { NoFit } from './no-fit.ts';

/** The shortest move that takes a piece out of another. */
export interface Escape {
  readonly x: number;
  readonly y: number;
}

/**
 * How far a point at (x, y) lies inside a no-fit region: the shortest move that parts the two pieces, mm; 0 where they
 * touch or are apart.
 */
export function depthAt(region: NoFit, x: number, y: number): number {
  if (x <= region.minX || x >= region.maxX || y <= region.minY || y >= region.maxY) return 0;
  return isInside(region, x, y) ? Math.sqrt(leastSquare(region, x, y)) : 0;
}

/** Even-odd: rings are outer ones and holes, never one within another of its kind. */
function isInside({ x0, y0, x1, y1 }: NoFit, x: number, y: number): boolean {
  let inside = false;
  for (let k = 0; k < x0.length; k++) {
    const ya = y0[k] as number;
    const yb = y1[k] as number;
    // Each end is compared as it stands: a corner must fall on the same side for both sides that meet there.
    if (y < ya === y < yb) continue;
    const xa = x0[k] as number;
    if (x - xa < ((y - ya) * ((x1[k] as number) - xa)) / (yb - ya)) inside = !inside;
  }
  return inside;
}

/** The square of the distance to the nearest side. */
function leastSquare({ x0, y0, x1, y1 }: NoFit, x: number, y: number): number {
  let least = Infinity;
  for (let k = 0; k < x0.length; k++) {
    const ax = x - (x0[k] as number);
    const ay = y - (y0[k] as number);
    const dx = (x1[k] as number) - (x0[k] as number);
    const dy = (y1[k] as number) - (y0[k] as number);
    const along = ax * dx + ay * dy;
    const length = dx * dx + dy * dy;
    let square: number;
    if (along <= 0) square = ax * ax + ay * ay;
    else if (along >= length) square = (ax - dx) * (ax - dx) + (ay - dy) * (ay - dy);
    else {
      const across = ax * dy - ay * dx;
      square = (across * across) / length;
    }
    if (square < least) least = square;
  }
  return least;
}

/** The move from (x, y) to the nearest point of the region's border. */
export function escapeFrom(region: NoFit, x: number, y: number): Escape {
  const { x0, y0, x1, y1 } = region;
  let least = Infinity;
  let out: Escape = { x: 0, y: 0 };
  for (let k = 0; k < x0.length; k++) {
    const ax = x - (x0[k] as number);
    const ay = y - (y0[k] as number);
    const dx = (x1[k] as number) - (x0[k] as number);
    const dy = (y1[k] as number) - (y0[k] as number);
    const length = dx * dx + dy * dy;
    const t = length > 0 ? Math.min(1, Math.max(0, (ax * dx + ay * dy) / length)) : 0;
    const to = { x: t * dx - ax, y: t * dy - ay };
    const square = to.x * to.x + to.y * to.y;
    if (square < least) {
      least = square;
      out = to;
    }
  }
  return out;
}
