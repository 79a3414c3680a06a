// Edges that others hide: beyond each of those lies more than all that lies beyond these.
import type { Segment } from '../geometry/contour.ts';
import { pointAt } from '../geometry/segment.ts';
import { type FlatWall, toWall } from '../unroll/flat-wall.ts';

/** An edge that runs one way around the wall: the turns that it spans, and between which places along the wall it lies. */
interface Span {
  readonly segment: Segment;
  readonly from: number;
  readonly to: number;
  /** Counted away from what is looked from: the nearest and the farthest. */
  readonly near: number;
  readonly far: number;
}

/** Cells of a turn that edges are held against one another by. */
const cells = 4096;

/** Places of an edge that are looked at; between them it may lie a little farther. */
const places = 16;

/** At least so much is an edge taken to lie farther than its places show, mm. */
const leastSlack = 0.05;

/**
 * The edges that something can be seen of from the foot (or the lip): an edge goes where in every cell of the turns that it touches another
 * one, nearer throughout, spans the whole cell. What lies beyond all edges is then the same as what lies beyond those that are left.
 */
export function seenEdges(edges: readonly Segment[], wall: FlatWall, side: 'foot' | 'lip'): Segment[] {
  const spans = edges.map((segment) => spanOf(segment, wall, side === 'foot' ? 1 : -1));
  const first = spans.reduce((least, { from }) => Math.min(least, from), Infinity);
  const last = spans.reduce((most, { to }) => Math.max(most, to), -Infinity);
  if (!(last > first)) return [...edges];
  const nearest = new Float64Array(Math.ceil((last - first) * cells) + 1).fill(Infinity);
  for (const { from, to, far } of spans)
    for (let i = Math.ceil((from - first) * cells); i < Math.floor((to - first) * cells); i++)
      nearest[i] = Math.min(nearest[i] ?? Infinity, far);
  const isHidden = ({ from, to, near }: Span): boolean => {
    const end = Math.floor((to - first) * cells);
    for (let i = Math.floor((from - first) * cells); i <= end; i++)
      if ((nearest[i] ?? Infinity) >= near) return false;
    return true;
  };
  return spans.flatMap((span) => (isHidden(span) ? [] : [span.segment]));
}

function spanOf(segment: Segment, wall: FlatWall, away: 1 | -1): Span {
  const seen = Array.from({ length: places + 1 }, (_, i) => toWall(wall, pointAt(segment, i / places)));
  const alongs = seen.map(({ along }) => along * away);
  const [near, far] = [Math.min(...alongs), Math.max(...alongs)];
  const slack = Math.max(leastSlack, (far - near) / places);
  const [start, end] = [seen[0]?.turn ?? 0, seen[places]?.turn ?? 0];
  return {
    segment,
    from: Math.min(start, end),
    to: Math.max(start, end),
    near: near - slack,
    far: far + slack,
  };
}
