// The borders of a tile as lines, and the film that copies of it show just past them.
import type { Box } from '../../geometry/box.ts';
import type { Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { filmAlong, type Stretch, together, within } from '../film/film-along.ts';
import { type Lattice, stepsIn } from '../lattice/lattice.ts';
import type { BoxedShape, Size } from '../tile/cut-shapes.ts';
import { hair } from '../tile/flush.ts';
import type { Border } from './border-sides.ts';

export interface BorderLine {
  readonly border: Border;
  readonly through: Point;
  readonly direction: Point;
  /** Of length 1, out of the tile. */
  readonly outward: Point;
  readonly length: number;
}

export const bordersOf = ({ width, height }: Size): readonly BorderLine[] => {
  const [around, down] = [
    { x: 1, y: 0 },
    { x: 0, y: 1 },
  ];
  const [back, up] = [
    { x: -1, y: 0 },
    { x: 0, y: -1 },
  ];
  const side = (x: number, outward: Point): BorderLine => ({
    border: 'side',
    through: { x, y: 0 },
    direction: down,
    outward,
    length: height,
  });
  const level = (y: number, outward: Point): BorderLine => ({
    border: 'level',
    through: { x: 0, y },
    direction: around,
    outward,
    length: width,
  });
  return [side(0, back), side(width, around), level(0, up), level(height, down)];
};

/** Lines are held this far beside a border, inside the hair that sides along it are moved by, so that no node lies on them. */
export const beside = 0.31 * hair;

export interface Held {
  readonly drawn: readonly BoxedShape[];
  readonly frame: Size;
  readonly lattice: Lattice;
}

/** The film that copies of the tile show just past a border, along the border. */
export function filmBeyond(
  { drawn, frame, lattice }: Held,
  { through, direction, outward, length }: BorderLine,
): readonly Stretch[] {
  const outside = { x: through.x + outward.x * beside, y: through.y + outward.y * beside };
  const found: Stretch[] = [];
  for (const { i, j, at } of stepsIn(lattice, reachOf(frame))) {
    const home = { x: outside.x - at.x, y: outside.y - at.y };
    const shown = shownOf(home, direction, frame, length);
    if ((i === 0 && j === 0) || !shown) continue;
    // Where a copy stands flush with the border, its own hair lies beyond it.
    for (const stretch of within(filmAlong(drawn, home, direction), shown.from, shown.to))
      found.push(stretch);
  }
  return together(found);
}

/** Steps that bring a copy of the tile beside itself or over itself. */
const reachOf = ({ width, height }: Size): Box => ({
  minX: -width - joinTolerance,
  maxX: width + joinTolerance,
  minY: -height - joinTolerance,
  maxY: height + joinTolerance,
});

/** What of a border's line a copy covers, the line put where it runs through the copy; undefined where it misses it. */
function shownOf(
  home: Point,
  direction: Point,
  { width, height }: Size,
  length: number,
): { readonly from: number; readonly to: number } | undefined {
  const isUpright = direction.x === 0;
  const [across, most] = isUpright ? [home.x, width] : [home.y, height];
  if (across < -joinTolerance || across > most + joinTolerance) return undefined;
  const start = isUpright ? home.y : home.x;
  const from = Math.max(0, -start);
  const to = Math.min(length, (isUpright ? height : width) - start);
  return to > from ? { from, to } : undefined;
}
