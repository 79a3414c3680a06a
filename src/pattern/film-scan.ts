// Film held against itself a step away, along lines across the drawing. It tells where the drawing recurs even of shapes
// that are cut or merged, and of a net that is all one shape.
import { hullBox } from '../geometry/box.ts';
import { BoxIndex } from '../geometry/box-index.ts';
import type { Segment, Shape } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';
import type { Size } from './cut-shapes.ts';
import { crossingsOf } from './film-along.ts';

/** What of a drawing recurs a step away. */
export interface Agreement {
  /** Places along the lines where film begins or ends, and those of them that the other place shows too. */
  readonly expected: number;
  readonly found: number;
  /** The contours, and the curves of them, that recur. */
  readonly contours: ReadonlySet<number>;
  readonly segments: ReadonlySet<number>;
  /** Places where film should begin or end, and does not; not all of many. */
  readonly missing: readonly Missing[];
}

/** Where film should begin or end along a line, and does not. */
export interface Missing {
  readonly way: Way;
  /** Where the line stands, and how far along it the place is, mm. */
  readonly at: number;
  readonly along: number;
  readonly begins: boolean;
  /** How far along the line it may stand off. */
  readonly slack: number;
  readonly layer: number;
}

/** So many missing places tell what kind they are. */
const mostMissing = 60;

interface Edge {
  readonly segment: Segment;
  readonly shape: number;
  readonly contour: number;
}

interface End {
  /** How far along the line, and at what sine of an angle the outline crosses it. */
  readonly at: number;
  readonly sine: number;
  readonly edge: number;
  readonly shape: number;
  readonly contour: number;
  /** Whether film begins here, along the line; known once all crossings of the line are in order. */
  begins: boolean;
}

/** Lines each way: of large drawings fewer tell as much. */
const linesOf = (edges: number): number => (edges > 20_000 ? 8 : edges > 4_000 ? 14 : 24);

/** An outline that crosses a line at a flatter angle than this says little of where it is, as a sine. */
const leastSine = 0.15;

/** Lines stand at steps of the golden section, so that none keeps to a rhythm of the drawing. */
const golden = (Math.sqrt(5) - 1) / 2;

export class FilmScan {
  readonly #layers: readonly Layer[];
  readonly #crop: Size;
  readonly #tolerance: number;
  readonly #lines: number;
  readonly #agreements = new Map<string, Agreement>();

  constructor(layers: readonly { readonly shapes: readonly Shape[] }[], crop: Size, tolerance: number) {
    this.#crop = crop;
    this.#tolerance = tolerance;
    let contour = 0;
    this.#layers = layers.map(({ shapes }) => {
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
    this.#lines = linesOf(this.#layers.reduce((sum, { edges }) => sum + edges.length, 0));
  }

  /** What recurs a step away, over all of the crop that shows again; `part` of the lines tell it quicker. */
  agreement(step: Point, part = 1): Agreement {
    const key = `${part} ${Math.round(step.x * 1e4)} ${Math.round(step.y * 1e4)}`;
    const known = this.#agreements.get(key);
    if (known) return known;
    const agreement = this.#held(step, part);
    this.#agreements.set(key, agreement);
    return agreement;
  }

  #held(step: Point, part: number): Agreement {
    const { width, height } = this.#crop;
    const across = [Math.max(0, -step.x), Math.min(width, width - step.x)] as const;
    const down = [Math.max(0, -step.y), Math.min(height, height - step.y)] as const;
    const tally: Tally = { expected: 0, found: 0, contours: new Set(), segments: new Set(), missing: [] };
    const lines = Math.ceil(this.#lines * part);
    this.#layers.forEach((layer, number) => {
      for (const at of placesIn(down, height, lines))
        this.#compare(this.#known(layer, 'level', at), step.y, step.x, across, { layer, number, tally });
      for (const at of placesIn(across, width, lines))
        this.#compare(this.#known(layer, 'upright', at), step.x, step.y, down, { layer, number, tally });
    });
    return tally;
  }

  /** A line of the crop, which is held against many others. */
  #known(layer: Layer, way: Way, at: number): Line {
    const key = `${way} ${at}`;
    const known = layer.lines.get(key);
    if (known) return known;
    const line = { way, at, ends: endsOf(layer, way, at) };
    layer.lines.set(key, line);
    return line;
  }

  #compare(
    { way, at, ends }: Line,
    across: number,
    along: number,
    [from, to]: readonly [number, number],
    { layer, number, tally }: { readonly layer: Layer; readonly number: number; readonly tally: Tally },
  ): void {
    const others = endsOf(layer, way, at + across);
    const there = { way, at: at + across, along, span: [from, to] as const, layer: number };
    const here = { way, at, along: -along, span: [from + along, to + along] as const, layer: number };
    this.#match(ends, others, there, tally);
    this.#match(others, ends, here, tally);
  }

  /** Tally the ends of one line that another, `held`, has too. */
  #match(ends: readonly End[], others: readonly End[], held: Held, tally: Tally): void {
    const {
      along,
      span: [from, to],
      layer,
      way,
      at,
    } = held;
    const most = this.#tolerance / leastSine;
    let next = 0;
    for (const end of ends) {
      if (end.sine < leastSine || end.at < from || end.at > to) continue;
      const slack = this.#tolerance / end.sine;
      // What stands at the end of the line may show on one of the two alone.
      if (end.at < from + slack || end.at > to - slack) continue;
      tally.expected++;
      const place = end.at + along;
      while ((others[next]?.at ?? Infinity) < place - most) next++;
      if (hasLike(others, next, place, end.begins, slack)) {
        tally.found++;
        tally.contours.add(end.contour);
        tally.segments.add(end.edge * 64 + layer);
      } else {
        const place = { way, at, along: end.at + along, begins: end.begins, slack, layer };
        if (tally.missing.length < mostMissing) tally.missing.push(place);
        else tally.missing[tally.expected % mostMissing] = place;
      }
    }
  }

  /**
   * Of places where film is missing, in how many the same is missing a step away, and in how many it is not; those from
   * which the step leads out of the crop tell nothing.
   */
  missingAgain(
    missing: readonly Missing[],
    { x, y }: Point,
  ): { readonly again: number; readonly not: number } {
    const { width, height } = this.#crop;
    let [again, not] = [0, 0];
    for (const { way, at, along, begins, slack, layer } of missing) {
      const isLevel = way === 'level';
      const [line, place] = isLevel ? [at + y, along + x] : [at + x, along + y];
      const [across, most] = isLevel ? [height, width] : [width, height];
      const art = this.#layers[layer];
      if (!art || line < 0 || line > across || place < slack || place > most - slack) continue;
      if (hasLike(endsOf(art, way, line), 0, place, begins, slack)) not++;
      else again++;
    }
    return { again, not };
  }
}

/** Whether ends, from one on, hold one of the same kind near a place. */
function hasLike(ends: readonly End[], start: number, at: number, begins: boolean, slack: number): boolean {
  for (let i = start; (ends[i]?.at ?? Infinity) <= at + slack; i++) {
    const end = ends[i];
    if (end && end.begins === begins && end.at >= at - slack) return true;
  }
  return false;
}

/** A line that others' ends are held against: where it stands, how far along it they come, and the part that shows. */
interface Held {
  readonly way: Way;
  readonly at: number;
  readonly along: number;
  readonly span: readonly [number, number];
  readonly layer: number;
}

type Way = 'level' | 'upright';

interface Tally {
  expected: number;
  found: number;
  readonly contours: Set<number>;
  readonly segments: Set<number>;
  readonly missing: Missing[];
}

interface Line {
  readonly way: Way;
  readonly at: number;
  readonly ends: readonly End[];
}

interface Layer {
  readonly edges: readonly Edge[];
  readonly index: BoxIndex;
  readonly lines: Map<string, Line>;
}

/** So many places between two, at golden sections of the whole, the same for all that lie between. */
function placesIn([from, to]: readonly [number, number], size: number, count: number): number[] {
  const places: number[] = [];
  let part = 0;
  for (let tried = 0; tried < mostTried && places.length < count; tried++) {
    part = (part + golden) % 1;
    if (part * size > from && part * size < to) places.push(part * size);
  }
  return places;
}

/** Of a crop so little may show again that few places lie in it. */
const mostTried = 400;

/** Where film begins and ends along a level or upright line, in order. */
function endsOf({ edges, index }: Layer, way: Way, at: number): readonly End[] {
  const isLevel = way === 'level';
  const met = isLevel
    ? index.meeting(-Infinity, at, Infinity, at)
    : index.meeting(at, -Infinity, at, Infinity);
  const crossings: End[] = [];
  for (const number of met) addCrossings(crossings, edges, number, isLevel, at);
  crossings.sort((one, other) => one.at - other.at);
  // A shape's contours do not cross: each crossing leads into it or out of it.
  const inside = new Set<number>();
  return crossings.filter((end) => {
    end.begins = !inside.has(end.shape);
    if (end.begins) inside.add(end.shape);
    else inside.delete(end.shape);
    // Under another shape it shows no end.
    return inside.size === (end.begins ? 1 : 0);
  });
}

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
