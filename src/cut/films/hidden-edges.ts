// Edges and shapes that others hide: beyond each of those lies more than all that lies beyond these.
import { boxAround, boxOfPoints } from '../../geometry/box.ts';
import type { Segment, Shape } from '../../geometry/contour.ts';
import { pointAt } from '../../geometry/segment.ts';
import { type FlatWall, girthAt, toWall } from '../../unroll/flat-wall.ts';

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

export interface SeenShapesOptions {
  readonly wall: FlatWall;
  readonly side: 'foot' | 'lip';
  /** How far the shapes will be grown, mm. */
  readonly grown: number;
}

/** What a shape reaches over, in turns and along the wall, counted as of an edge, and the girths there, mm. */
interface Reach extends Omit<Span, 'segment'> {
  /** Between the places that are looked at it may reach so much farther, mm. */
  readonly slack: number;
  readonly leastGirth: number;
  readonly mostGirth: number;
}

/**
 * The shapes that something can be seen of from the foot (or the lip) once all are grown: one goes where in every cell of the turns that it
 * then touches another reaches nearer throughout. Each is given once, in one piece, without its holes; all come again after a whole turn.
 * Growing a pattern of thousands of shapes as a whole takes minutes, and of most of it nothing is seen.
 */
export function seenShapes(shapes: readonly Shape[], options: SeenShapesOptions): Shape[] {
  const reaches = shapes.map((shape) => reachOf(shape, options));
  const nearest = new Float64Array(cells).fill(Infinity);
  for (const reach of reaches) coverCells(nearest, reach, options.grown);
  const isHidden = ({ from, to, near, leastGirth, slack }: Reach): boolean => {
    const more = (options.grown + slack) / leastGirth;
    const end = Math.floor((to + more) * cells);
    for (let i = Math.floor((from - more) * cells); i <= end; i++)
      if ((nearest[cellOf(i)] ?? Infinity) >= near - options.grown) return false;
    return true;
  };
  return shapes.filter((_, i) => {
    const reach = reaches[i];
    return !reach || !isHidden(reach);
  });
}

const cellOf = (i: number): number => ((i % cells) + cells) % cells;

/** How near a grown shape comes in every whole cell: it has film at each turn it spans, and a disc around that reaches beside it too. */
function coverCells(nearest: Float64Array, { from, to, far, mostGirth }: Reach, grown: number): void {
  const [first, last] = [from * cells, to * cells];
  const beside = Math.floor((grown / mostGirth) * cells);
  for (let i = Math.ceil(first) - beside; i < Math.floor(last) + beside; i++) {
    const away = (Math.max(0, first - i, i + 1 - last) / cells) * mostGirth;
    if (away >= grown) continue;
    const cell = cellOf(i);
    nearest[cell] = Math.min(nearest[cell] ?? Infinity, far - Math.sqrt(grown * grown - away * away));
  }
}

/** A shape's outline is looked at in so many places a segment. */
const outlinePlaces = 4;

function reachOf({ contours }: Shape, { wall, side, grown }: SeenShapesOptions): Reach {
  const away = side === 'foot' ? 1 : -1;
  const rows = (contours[0]?.segments ?? []).map((segment) =>
    Array.from({ length: outlinePlaces + 1 }, (_, i) => toWall(wall, pointAt(segment, i / outlinePlaces))),
  );
  const boxes = rows.map((row) => boxOfPoints(row.map(({ turn, along }) => ({ x: turn, y: along * away }))));
  const { minX, minY, maxX, maxY } = boxAround(boxes);
  const girths = [minY - grown, maxY + grown].map((along) => girthAt(wall, along * away));
  const [leastGirth, mostGirth] = [Math.min(...girths), Math.max(...girths)];
  const longest = boxes.reduce(
    (most, box) => Math.max(most, (box.maxX - box.minX) * mostGirth, box.maxY - box.minY),
    0,
  );
  const slack = Math.max(leastSlack, longest / outlinePlaces);
  return { from: minX, to: maxX, near: minY - slack, far: maxY + slack, slack, leastGirth, mostGirth };
}
