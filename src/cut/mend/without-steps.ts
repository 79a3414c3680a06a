// Nodes that mending left closer to one another than a cutter's step, made one.
import { type Contour, cubic, line, type Segment, type Shape } from '../../geometry/contour.ts';
import { add, distance, dot, type Point, scale, subtract } from '../../geometry/point.ts';

const keyOf = ({ x, y }: Point): string => `${x} ${y}`;

/** A segment so many times as long as a step would be moved far away from a node that moves, and keeps its ends. */
const longAs = 10;

export interface StepOptions {
  /** Segments shorter than this are taken out, mm. */
  readonly step: number;
  /** Nodes that stay where they are. */
  readonly stays?: (node: Point) => boolean;
}

/**
 * Shapes whose segments shorter than `step`, mm, are taken out, the nodes at their ends put together. Nodes of `drawn` and
 * ends of long segments stay where they are: what was drawn so is left so, and a contour keeps three segments.
 */
export function withoutSteps(
  shapes: readonly Shape[],
  drawn: readonly Shape[],
  { step, stays = () => false }: StepOptions,
): Shape[] {
  const nodes = new Set(
    drawn.flatMap(({ contours }) =>
      contours.flatMap(({ segments }) => segments.map(({ from }) => keyOf(from))),
    ),
  );
  return shapes.map(({ contours }) => ({
    contours: contours.map((contour) =>
      tidied(contour, (node) => nodes.has(keyOf(node)) || stays(node), step),
    ),
  }));
}

function tidied(contour: Contour, isLeft: (node: Point) => boolean, step: number): Contour {
  const segments: Segment[] = [];
  const stays = (p: Point, s: Segment | undefined): boolean =>
    isLeft(p) || (s !== undefined && distance(s.from, s.to) >= longAs * step);
  for (const [i, s] of contour.segments.entries()) {
    const last = segments.at(-1);
    // From where the last node came to stand, so that a row of short segments does not all fall together.
    if (!last || distance(last.to, s.to) >= step) {
      segments.push(last ? reaching(s, last.to, s.to) : s);
      continue;
    }
    const next = contour.segments[i + 1];
    // Where the contour ends it has begun.
    const node = meeting(last.to, s.to, stays(last.to, last), next === undefined || stays(s.to, next));
    if (node && goesAsBefore(last, last.from, node) && (!next || goesAsBefore(next, node, next.to)))
      segments[segments.length - 1] = reaching(last, last.from, node);
    else segments.push(reaching(s, last.to, s.to));
  }
  const [first] = segments;
  const last = segments.at(-1);
  if (!first || !last || segments.length < 3) return contour;
  segments[segments.length - 1] = reaching(last, last.from, first.from);
  return { closed: contour.closed, segments };
}

/** The cosine of how far a segment may be turned where its end is moved. */
const leastCosine = Math.cos(Math.PI / 6);

/** Whether a segment with its ends moved still goes the way it went: one that is hardly longer than the move could turn back on itself. */
function goesAsBefore(s: Segment, from: Point, to: Point): boolean {
  const [before, after] = [subtract(s.to, s.from), subtract(to, from)];
  return dot(before, after) >= leastCosine * Math.hypot(before.x, before.y) * Math.hypot(after.x, after.y);
}

/** A segment between other ends near its own, its handles as much longer or shorter as it is. */
function reaching(s: Segment, from: Point, to: Point): Segment {
  if (s.kind === 'line') return line(from, to);
  if (distance(from, s.from) === 0 && distance(to, s.to) === 0) return s;
  const by = distance(from, to) / (distance(s.from, s.to) || 1);
  return cubic(
    from,
    add(from, scale(subtract(s.c1, s.from), by)),
    add(to, scale(subtract(s.c2, s.to), by)),
    to,
  );
}

/** Where two nodes are put together: at the second only where that one stays; undefined where both do. */
function meeting(p: Point, q: Point, firstStays: boolean, secondStays: boolean): Point | undefined {
  if (firstStays && secondStays) return undefined;
  return secondStays ? q : p;
}
