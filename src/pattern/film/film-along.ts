// Where a straight line runs over film: the stretches of it that a drawing's areas cover.
import { hullBox } from '../../geometry/box.ts';
import type { Segment, Shape } from '../../geometry/contour.ts';
import { lineCrossings } from '../../geometry/crossings.ts';
import { cross, dot, type Point, subtract } from '../../geometry/point.ts';
import { directionAt, pointAt } from '../../geometry/segment.ts';
import type { BoxedShape } from '../tile/cut-shapes.ts';

/** An end of a stretch: how far along the line, and the direction of the outline there, of length 1. */
export interface StretchEnd {
  readonly at: number;
  readonly direction: Point;
}

/** A stretch of a line that lies on film, from its lower to its upper end. */
export interface Stretch {
  readonly from: StretchEnd;
  readonly to: StretchEnd;
}

/** Shapes with the boxes they lie in, so that lines which miss them are not held against their curves. */
export const boxedShapes = (shapes: readonly Shape[]): readonly BoxedShape[] =>
  shapes.map((shape) => ({ shape, box: hullBox(shape.contours) }));

/** An outline flatter to the line than this only touches it, as a sine. */
const leastSine = 1e-7;

/** The stretches of an endless level or upright line that shapes cover together, in order. `direction`: of length 1. */
export function filmAlong(
  shapes: readonly BoxedShape[],
  through: Point,
  direction: Point,
): readonly Stretch[] {
  const isUpright = direction.x === 0;
  const touched = shapes.filter(({ box }) =>
    isUpright
      ? box.minX <= through.x && box.maxX >= through.x
      : box.minY <= through.y && box.maxY >= through.y,
  );
  return together(touched.flatMap(({ shape }) => ownStretches(shape, through, direction)));
}

/** Where an outline crosses a line: how far along it, and at what sine of an angle. */
export interface Crossing extends StretchEnd {
  readonly sine: number;
}

/** The crossings of one curve with a line. A curve that all but runs along it only touches it. */
const crossingsOf = (s: Segment, through: Point, direction: Point): Crossing[] =>
  lineCrossings(s, through, direction).flatMap((t) => crossingAt(s, t, through, direction) ?? []);

/** A curve's crossing with a line at t; undefined where it only touches it. */
export function crossingAt(s: Segment, t: number, through: Point, direction: Point): Crossing | undefined {
  const along = directionAt(s, t);
  const size = Math.hypot(along.x, along.y) || 1;
  const unit = { x: along.x / size, y: along.y / size };
  const sine = Math.abs(cross(direction, unit));
  // A node on the line would count with both of its segments; each has it half open.
  if (sine < leastSine || t === 1) return undefined;
  const at = dot(direction, subtract(pointAt(s, t), through));
  return { at, direction: unit, sine };
}

/** The stretches of a line that one shape covers: between crossings of its outlines, holes left out. */
function ownStretches({ contours }: Shape, through: Point, direction: Point): Stretch[] {
  const ends = contours
    .flatMap(({ segments }) => segments)
    .flatMap((s) => crossingsOf(s, through, direction))
    .sort((a, b) => a.at - b.at);
  const stretches: Stretch[] = [];
  // Contours of a shape do not cross: each crossing leads into it or out of it.
  for (let i = 1; i < ends.length; i += 2) {
    const [from, to] = [ends[i - 1], ends[i]];
    if (from && to && to.at > from.at) stretches.push({ from, to });
  }
  return stretches;
}

/** Stretches made one where they overlap or touch. */
export function together(stretches: readonly Stretch[]): readonly Stretch[] {
  const merged: Stretch[] = [];
  for (const stretch of [...stretches].sort((a, b) => a.from.at - b.from.at)) {
    const last = merged.at(-1);
    if (!last || stretch.from.at > last.to.at + touching) merged.push(stretch);
    else if (stretch.to.at > last.to.at) merged[merged.length - 1] = { from: last.from, to: stretch.to };
  }
  return merged;
}

/** Stretches nearer than this are one: rounding, mm. */
const touching = 1e-4;

/** What lies between two heights of each stretch. */
export function within(stretches: readonly Stretch[], from: number, to: number): readonly Stretch[] {
  return stretches
    .filter((stretch) => stretch.to.at > from && stretch.from.at < to)
    .map((stretch) => ({
      from: stretch.from.at < from ? { ...stretch.from, at: from } : stretch.from,
      to: stretch.to.at > to ? { ...stretch.to, at: to } : stretch.to,
    }));
}

/** The parts of stretches that others leave uncovered. */
export function uncovered(stretches: readonly Stretch[], by: readonly Stretch[]): readonly Stretch[] {
  const left: Stretch[] = [];
  let next = 0;
  for (const stretch of stretches) {
    while ((by[next]?.to.at ?? Infinity) <= stretch.from.at) next++;
    let { from } = stretch;
    for (let i = next; (by[i]?.from.at ?? Infinity) < stretch.to.at; i++) {
      const cover = by[i];
      if (!cover) break;
      if (cover.from.at > from.at) left.push({ from, to: cover.from });
      if (cover.to.at > from.at) from = cover.to;
    }
    if (from.at < stretch.to.at) left.push({ from, to: stretch.to });
  }
  return left;
}
