// Where film begins and ends along level and upright lines across a drawing of many shapes.
import { hullBox } from '../geometry/box.ts';
import { BoxIndex } from '../geometry/box-index.ts';
import type { Segment, Shape } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';
import { crossingsOf } from './film-along.ts';

export type Way = 'level' | 'upright';

interface Edge {
  readonly segment: Segment;
  readonly shape: number;
  readonly contour: number;
}

/** Where film begins or ends along a line. */
export interface End {
  /** How far along the line, and at what sine of an angle the outline crosses it. */
  readonly at: number;
  readonly sine: number;
  readonly edge: number;
  readonly shape: number;
  readonly contour: number;
  /** Whether film begins here, along the line; known once all crossings of the line are in order. */
  begins: boolean;
}

/** A line and where film begins and ends along it. */
export interface Line {
  readonly way: Way;
  readonly at: number;
  readonly ends: readonly End[];
}

/** A layer's edges, found by where they lie, and its lines so far. */
export interface LinedLayer {
  readonly edges: readonly Edge[];
  readonly index: BoxIndex;
  readonly lines: Map<string, Line>;
}

/** Layers made ready for lines. Contours are numbered over all of them. */
export function linedLayers(layers: readonly { readonly shapes: readonly Shape[] }[]): readonly LinedLayer[] {
  let contour = 0;
  return layers.map(({ shapes }) => {
    const edges = shapes.flatMap(({ contours }, shape) =>
      contours.flatMap(({ segments }) => {
        contour++;
        return segments.map((segment): Edge => ({ segment, shape, contour }));
      }),
    );
    const index = new BoxIndex(edges.length, (add) => {
      for (const { segment } of edges) {
        const { minX, minY, maxX, maxY } = hullBox([{ closed: false, segments: [segment] }]);
        add(minX, minY, maxX, maxY);
      }
    });
    return { edges, index, lines: new Map() };
  });
}

/** Where film begins and ends along a level or upright line, in order. */
export function endsOf({ edges, index }: LinedLayer, way: Way, at: number): readonly End[] {
  const isLevel = way === 'level';
  const met = isLevel
    ? index.meeting(-Infinity, at, Infinity, at)
    : index.meeting(at, -Infinity, at, Infinity);
  const crossings: End[] = [];
  for (const number of met) addCrossings(crossings, edges, number, isLevel, at);
  crossings.sort((one, other) => one.at - other.at);
  // A shape's contours do not cross: each crossing leads into it or out of it.
  const inside = new Set<number>();
  const ends: End[] = [];
  for (const end of crossings) {
    end.begins = !inside.has(end.shape);
    if (end.begins) inside.add(end.shape);
    else inside.delete(end.shape);
    // Under another shape it shows no end; nor does it where another shape begins just there.
    if (inside.size !== (end.begins ? 1 : 0)) continue;
    const last = ends.at(-1);
    if (end.begins && last && end.at - last.at < abutting) ends.pop();
    else ends.push(end);
  }
  return ends;
}

/** Shapes nearer than this abut, as pieces of one do that a tile's border cut, mm. */
const abutting = 2e-3;

/** Add the crossings of one edge with a line. Most edges are straight, and a crop has many of them. */
function addCrossings(
  into: End[],
  edges: readonly Edge[],
  number: number,
  isLevel: boolean,
  at: number,
): void {
  const edge = edges[number];
  if (!edge) return;
  const { segment, shape, contour } = edge;
  if (segment.kind === 'line') {
    const [from, to] = [segment.from, segment.to];
    const [start, end] = isLevel ? [from.y, to.y] : [from.x, to.x];
    const t = (at - start) / (end - start);
    // A node on the line would count with both of its edges; each has it half open.
    if (!(t >= 0 && t < 1)) return;
    const [p, q] = isLevel ? [from.x, to.x] : [from.y, to.y];
    const sine = Math.abs(end - start) / Math.hypot(end - start, q - p);
    into.push({ at: p + t * (q - p), sine, edge: number, shape, contour, begins: false });
    return;
  }
  const through = isLevel ? { x: 0, y: at } : { x: at, y: 0 };
  for (const { at: place, sine } of crossingsOf(segment, through, isLevel ? alongLevel : alongUpright))
    into.push({ at: place, sine, edge: number, shape, contour, begins: false });
}

const alongLevel: Point = { x: 1, y: 0 };
const alongUpright: Point = { x: 0, y: 1 };

/** Whether ends, from one on, hold one of the same kind near a place. */
export function hasLike(
  ends: readonly End[],
  start: number,
  at: number,
  begins: boolean,
  slack: number,
): boolean {
  for (let i = start; (ends[i]?.at ?? Infinity) <= at + slack; i++) {
    const end = ends[i];
    if (end && end.begins === begins && end.at >= at - slack) return true;
  }
  return false;
}
