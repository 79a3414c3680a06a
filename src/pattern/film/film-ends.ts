// Where film begins and ends along level and upright lines across a drawing of many shapes.
import { hullBox } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import { cubic, line, type Segment, type Shape } from '../../geometry/contour.ts';
import { levelCrossings } from '../../geometry/crossings.ts';
import type { Point } from '../../geometry/point.ts';
import { crossingAt } from './film-along.ts';

export type Way = 'level' | 'upright';

/** Edges in columns: of a large drawing there are hundreds of thousands, and a segment made of objects takes six times the memory. */
class Edges {
  /** Eight a segment: its points in turn; a line's two, and four that say nothing. */
  readonly #numbers: number[] = [];
  readonly #isLine: boolean[] = [];
  readonly #shape: number[] = [];
  readonly #contour: number[] = [];

  get length(): number {
    return this.#shape.length;
  }

  add(s: Segment, shape: number, contour: number): void {
    const [c1, c2] = s.kind === 'line' ? [s.to, s.to] : [s.c1, s.c2];
    this.#numbers.push(s.from.x, s.from.y, c1.x, c1.y, c2.x, c2.y, s.to.x, s.to.y);
    this.#isLine.push(s.kind === 'line');
    this.#shape.push(shape);
    this.#contour.push(contour);
  }

  isLine(i: number): boolean {
    return this.#isLine[i] ?? false;
  }

  /** One coordinate of one of an edge's four points: x (0) or y (1). */
  coordinate(i: number, point: 0 | 1 | 2 | 3, of: 0 | 1): number {
    return this.#numbers[8 * i + 2 * point + of] ?? 0;
  }

  segment(i: number): Segment {
    const point = (k: number): Point => ({
      x: this.#numbers[8 * i + k] ?? 0,
      y: this.#numbers[8 * i + k + 1] ?? 0,
    });
    return this.#isLine[i] ? line(point(0), point(6)) : cubic(point(0), point(2), point(4), point(6));
  }

  /** What the edge is part of. */
  of(i: number): Pick<End, 'edge' | 'shape' | 'contour'> {
    return { edge: i, shape: this.#shape[i] ?? 0, contour: this.#contour[i] ?? 0 };
  }
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
  readonly edges: Edges;
  readonly index: BoxIndex;
  readonly lines: Map<string, Line>;
}

/** Layers made ready for lines. Contours are numbered over all of them. */
export function linedLayers(layers: readonly { readonly shapes: readonly Shape[] }[]): readonly LinedLayer[] {
  let contour = 0;
  return layers.map(({ shapes }) => {
    const edges = new Edges();
    shapes.forEach(({ contours }, shape) => {
      for (const { segments } of contours) {
        contour++;
        for (const segment of segments) edges.add(segment, shape, contour);
      }
    });
    const index = new BoxIndex(edges.length, (add) => {
      for (let i = 0; i < edges.length; i++) {
        const { minX, minY, maxX, maxY } = hullBox([{ closed: false, segments: [edges.segment(i)] }]);
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
function addCrossings(into: End[], edges: Edges, number: number, isLevel: boolean, at: number): void {
  const [across, along] = isLevel ? ([1, 0] as const) : ([0, 1] as const);
  const [start, end] = [edges.coordinate(number, 0, across), edges.coordinate(number, 3, across)];
  if (edges.isLine(number)) {
    const t = (at - start) / (end - start);
    // A node on the line would count with both of its edges; each has it half open.
    if (!(t >= 0 && t < 1)) return;
    const [p, q] = [edges.coordinate(number, 0, along), edges.coordinate(number, 3, along)];
    const sine = Math.abs(end - start) / Math.hypot(end - start, q - p);
    into.push({ at: p + t * (q - p), sine, ...edges.of(number), begins: false });
    return;
  }
  const [c1, c2] = [edges.coordinate(number, 1, across), edges.coordinate(number, 2, across)];
  const crossings = levelCrossings(start, c1, c2, end, at);
  if (crossings.length === 0) return;
  const segment = edges.segment(number);
  const through = isLevel ? { x: 0, y: at } : { x: at, y: 0 };
  for (const t of crossings) {
    const crossing = crossingAt(segment, t, through, isLevel ? alongLevel : alongUpright);
    if (crossing) into.push({ at: crossing.at, sine: crossing.sine, ...edges.of(number), begins: false });
  }
}

const alongLevel: Point = { x: 1, y: 0 };
const alongUpright: Point = { x: 0, y: 1 };

/** The first of ends, from one on, that is of the same kind and near a place. */
export function likeOf<E extends Pick<End, 'at' | 'begins'>>(
  ends: readonly E[],
  start: number,
  at: number,
  begins: boolean,
  slack: number,
): E | undefined {
  for (let i = start; (ends[i]?.at ?? Infinity) <= at + slack; i++) {
    const end = ends[i];
    if (end && end.begins === begins && end.at >= at - slack) return end;
  }
  return undefined;
}
