// Nodes that mending left closer to one another than a cutter's step, made one.
import type { Contour, Segment, Shape } from '../geometry/contour.ts';
import { distance, type Point } from '../geometry/point.ts';
import { withEnds } from '../geometry/segment.ts';

const keyOf = ({ x, y }: Point): string => `${x} ${y}`;

/** A segment so many times as long as a step would be moved far away from a node that moves, and keeps its ends. */
const longAs = 10;

/**
 * Shapes whose segments shorter than `step`, mm, are taken out, the nodes at their ends put together. Nodes of `drawn` and
 * ends of long segments stay where they are: what was drawn so is left so, and a contour keeps three segments.
 */
export function withoutSteps(shapes: readonly Shape[], drawn: readonly Shape[], step: number): Shape[] {
  const nodes = new Set(
    drawn.flatMap(({ contours }) =>
      contours.flatMap(({ segments }) => segments.map(({ from }) => keyOf(from))),
    ),
  );
  return shapes.map(({ contours }) => ({
    contours: contours.map((contour) => tidied(contour, nodes, step)),
  }));
}

function tidied(contour: Contour, nodes: ReadonlySet<string>, step: number): Contour {
  const segments: Segment[] = [];
  const stays = (p: Point, s: Segment | undefined): boolean =>
    nodes.has(keyOf(p)) || (s !== undefined && distance(s.from, s.to) >= longAs * step);
  for (const [i, s] of contour.segments.entries()) {
    const last = segments.at(-1);
    // From where the last node came to stand, so that a row of short segments does not all fall together.
    if (!last || distance(last.to, s.to) >= step) {
      segments.push(last ? withEnds(s, last.to, s.to) : s);
      continue;
    }
    const next = contour.segments[i + 1];
    // Where the contour ends it has begun.
    const node = meeting(last.to, s.to, stays(last.to, last), next === undefined || stays(s.to, next));
    if (node) segments[segments.length - 1] = withEnds(last, last.from, node);
    else segments.push(withEnds(s, last.to, s.to));
  }
  const [first] = segments;
  const last = segments.at(-1);
  if (!first || !last || segments.length < 3) return contour;
  segments[segments.length - 1] = withEnds(last, last.from, first.from);
  return { closed: contour.closed, segments };
}

/** Where two nodes are put together: at the second only where that one stays; undefined where both do. */
function meeting(p: Point, q: Point, firstStays: boolean, secondStays: boolean): Point | undefined {
  if (firstStays && secondStays) return undefined;
  return secondStays ? q : p;
}
