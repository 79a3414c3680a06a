// Corners of a drawing: whether its outlines bend anywhere but on the borders of the tile.
import type { Tile } from '../../artwork/tile-layer.ts';
import type { Contour } from '../../geometry/contour.ts';
import { cross, dot, type Point } from '../../geometry/point.ts';
import { directionAt } from '../../geometry/segment.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';

/** The sharpest bend of any outline off the tile's borders, radians from 0 to pi; 0 where all is smooth. */
export function sharpestCorner({ width, height, layers }: Pick<Tile, 'width' | 'height' | 'layers'>): number {
  const isInside = ({ x, y }: Point): boolean =>
    Math.min(x, width - x) > joinTolerance && Math.min(y, height - y) > joinTolerance;
  let sharpest = 0;
  for (const { shapes } of layers)
    for (const { contours } of shapes)
      for (const contour of contours)
        for (const { at, angle } of bendsOf(contour)) if (angle > sharpest && isInside(at)) sharpest = angle;
  return sharpest;
}

function bendsOf({ segments, closed }: Contour): { readonly at: Point; readonly angle: number }[] {
  return segments.flatMap((segment, i) => {
    const before = segments[i - 1] ?? (closed ? segments.at(-1) : undefined);
    if (!before) return [];
    const [from, to] = [directionAt(before, 1), directionAt(segment, 0)];
    return [{ at: segment.from, angle: Math.abs(Math.atan2(cross(from, to), dot(from, to))) }];
  });
}
