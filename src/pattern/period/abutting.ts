// Shapes drawn edge to edge, as a pattern expanded copy by copy has them where its tile cut them: made one.
import { boxOfPoints, grow } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import { type Contour, polygon, type Segment, type Shape } from '../../geometry/contour.ts';
import { Joined } from '../../geometry/joined.ts';
import { signedArea } from '../../geometry/measure.ts';
import { between, cross, distance, dot, type Point, scale, subtract } from '../../geometry/point.ts';
import { filledShapes } from '../../geometry/regions.ts';
import { chordTolerance, precision } from '../../geometry/tolerance.ts';

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

/** Films this near one another are edge to edge, mm: drawings are written rounded, and no blade cuts so narrow a gap. */
const hair = precision;

/** The gap between two straight edges that lie along one another, each with its film on the other side: its four corners. Undefined where they don't. */
function gapBetween(one: Side, other: Side): readonly Point[] | undefined {
  const length = distance(one.from, one.to);
  const along = scale(subtract(one.to, one.from), 1 / length);
  if (dot(along, subtract(other.to, other.from)) >= 0) return undefined;
  const isOn = (p: Point): boolean => Math.abs(cross(along, subtract(p, one.from))) <= hair;
  if (!isOn(other.from) || !isOn(other.to)) return undefined;
  const [start, end] = [other.to, other.from].map((p) => dot(along, subtract(p, one.from)));
  const [from, to] = [Math.max(start ?? 0, 0), Math.min(end ?? 0, length)];
  if (to - from < leastShared) return undefined;
  return [
    pointAlong(one, to / length),
    pointAlong(one, from / length),
    pointFacing(other, one, from),
    pointFacing(other, one, to),
  ];
}

const pointAlong = ({ from, to }: Side, share: number): Point =>
  share <= 0 ? from : share >= 1 ? to : between(from, to, share);

/** The place on an edge that faces a place so far along one it runs along. */
function pointFacing(edge: Side, one: Side, far: number): Point {
  const along = subtract(one.to, one.from);
  const length = Math.hypot(along.x, along.y);
  const [a, b] = [edge.from, edge.to].map((p) => dot(along, subtract(p, one.from)) / length);
  return pointAlong(edge, (far - (a ?? 0)) / ((b ?? 0) - (a ?? 0)));
}

/** Twice the area of a gap that is one, not films that overlap, mm². */
const leastGap = 1e-9;

/**
 * Shapes of a layer, those made one that stand edge to edge along a straight line, or a hair apart. What only touches, or lies on others,
 * stays by itself. Pieces of one area would else be laid one by one by a step that was found, which is theirs to a rounding, and be parted
 * by a slit, both sides of which a blade would cut.
 */
export function withoutAbutting(shapes: readonly Shape[]): readonly Shape[] {
  const sides = sidesOf(shapes);
  const index = new BoxIndex(sides.length, (add) => {
    for (const { from, to } of sides)
      add(Math.min(from.x, to.x), Math.min(from.y, to.y), Math.max(from.x, to.x), Math.max(from.y, to.y));
  });
  const joined = new Joined(shapes.length);
  const gaps: Gap[] = [];
  for (const [i, side] of sides.entries()) {
    const { minX, minY, maxX, maxY } = grow(boxOfPoints([side.from, side.to]), hair);
    for (const k of index.meeting(minX, minY, maxX, maxY)) {
      const other = sides[k];
      if (!other || k <= i) continue;
      const corners = gapBetween(side, other);
      const area = corners ? signedArea(polygon(corners)) : 0;
      // Within one shape two edges may also have a hair of film between them.
      if (!corners || (other.shape === side.shape && area < leastGap)) continue;
      joined.join(side.shape, other.shape);
      gaps.push({ shape: side.shape, filling: area < leastGap ? [] : [polygon(corners)] });
    }
  }
  return gaps.length > 0 ? unitedSets(shapes, joined, gaps) : shapes;
}

/** A gap beside a shape, and what fills it; nothing where there is no gap, or films overlap. */
interface Gap {
  readonly shape: number;
  readonly filling: readonly Contour[];
}

function unitedSets(shapes: readonly Shape[], joined: Joined, gaps: readonly Gap[]): readonly Shape[] {
  const sets = new Map<number, Shape[]>();
  for (const [i, shape] of shapes.entries()) {
    const root = joined.root(i);
    const set = sets.get(root);
    if (set) set.push(shape);
    else sets.set(root, [shape]);
  }
  const fillings = new Map<number, Contour[]>();
  for (const { shape, filling } of gaps) {
    const root = joined.root(shape);
    const known = fillings.get(root);
    if (known) known.push(...filling);
    else fillings.set(root, [...filling]);
  }
  return [...sets].flatMap(([root, set]) => {
    const filling = fillings.get(root);
    if (!filling) return set;
    return filledShapes([...set.flatMap(({ contours }) => contours), ...filling], 'nonzero', chordTolerance);
  });
}
