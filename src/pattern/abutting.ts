// Shapes drawn edge to edge, as a pattern expanded copy by copy has them where its tile cut them: made one.
import { BoxIndex } from '../geometry/box-index.ts';
import type { Segment, Shape } from '../geometry/contour.ts';
import { Joined } from '../geometry/joined.ts';
import { cross, distance, dot, type Point, scale, subtract } from '../geometry/point.ts';
import { filledShapes } from '../geometry/regions.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import { rounding } from './cut-shapes.ts';

/** Edges that lie on one another for less are two corners that touch, mm. */
const leastShared = 0.05;

interface Side {
  readonly shape: number;
  readonly from: Point;
  readonly to: Point;
}

/** Straight edges long enough to be shared. */
const sidesOf = (shapes: readonly Shape[]): readonly Side[] =>
  shapes.flatMap(({ contours }, shape) =>
    contours.flatMap(({ segments }) =>
      segments.filter(isLongLine).map(({ from, to }) => ({ shape, from, to })),
    ),
  );

const isLongLine = (s: Segment): boolean => s.kind === 'line' && distance(s.from, s.to) >= leastShared;

/** Whether two straight edges lie on one another, each with its film on the other side. */
function isShared(one: Side, other: Side): boolean {
  const length = distance(one.from, one.to);
  const along = scale(subtract(one.to, one.from), 1 / length);
  if (dot(along, subtract(other.to, other.from)) >= 0) return false;
  const isOn = (p: Point): boolean => Math.abs(cross(along, subtract(p, one.from))) <= rounding;
  if (!isOn(other.from) || !isOn(other.to)) return false;
  const [start, end] = [other.to, other.from].map((p) => dot(along, subtract(p, one.from)));
  return Math.min(end ?? 0, length) - Math.max(start ?? 0, 0) >= leastShared;
}

/**
 * Shapes of a layer, those made one that stand edge to edge along a straight line. What only touches, or lies on others, stays by itself.
 * Pieces of one area would else be laid one by one by a step that was found, which is theirs to a rounding, and be parted by a slit.
 */
export function withoutAbutting(shapes: readonly Shape[]): readonly Shape[] {
  const sides = sidesOf(shapes);
  const index = new BoxIndex(sides.length, (add) => {
    for (const { from, to } of sides)
      add(Math.min(from.x, to.x), Math.min(from.y, to.y), Math.max(from.x, to.x), Math.max(from.y, to.y));
  });
  const joined = new Joined(shapes.length);
  let isAny = false;
  for (const side of sides) {
    const { from, to } = side;
    const reach = index.meeting(
      Math.min(from.x, to.x) - rounding,
      Math.min(from.y, to.y) - rounding,
      Math.max(from.x, to.x) + rounding,
      Math.max(from.y, to.y) + rounding,
    );
    for (const k of reach) {
      const other = sides[k];
      if (!other || other.shape <= side.shape || !isShared(side, other)) continue;
      joined.join(side.shape, other.shape);
      isAny = true;
    }
  }
  return isAny ? unitedSets(shapes, joined) : shapes;
}

function unitedSets(shapes: readonly Shape[], joined: Joined): readonly Shape[] {
  const sets = new Map<number, Shape[]>();
  for (const [i, shape] of shapes.entries()) {
    const root = joined.root(i);
    const set = sets.get(root);
    if (set) set.push(shape);
    else sets.set(root, [shape]);
  }
  return [...sets.values()].flatMap((set) =>
    set.length === 1
      ? set
      : filledShapes(
          set.flatMap(({ contours }) => contours),
          'nonzero',
          chordTolerance,
        ),
  );
}
