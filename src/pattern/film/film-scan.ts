// Film held against itself a step away, along lines across the drawing. It tells where the drawing recurs even of shapes
// that are cut or merged, and of a net that is all one shape.
import type { Box } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import type { Size } from '../tile/cut-shapes.ts';
import { type End, endsOf, type Line, type LinedLayer, likeOf, linedLayers, type Way } from './film-ends.ts';

/** What of a drawing recurs a step away. */
export interface Agreement {
  /** Places along the lines where film begins or ends, and those of them that the other place shows too. */
  readonly expected: number;
  readonly found: number;
  /** Of each contour that should recur, at how many places it does, less those at which it does not. */
  readonly balance: ReadonlyMap<number, number>;
  /** The contours that recur, each with what it recurs as; and of each curve that does its contour. */
  readonly contours: ReadonlyMap<number, number>;
  readonly segments: ReadonlyMap<number, number>;
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
  /** Where it does, a step before: the line, and how far along it. */
  readonly seenAt: number;
  readonly seenAlong: number;
}

/** So many missing places tell what kind they are. */
const mostMissing = 60;

/** Lines each way: of large drawings fewer tell as much. */
const linesOf = (edges: number): number => (edges > 20_000 ? fewLines : edges > 4_000 ? 14 : 24);

/** So few lines tell enough where each of them crosses very much, as those across a hatching do. */
const fewLines = 8;
const veryManyEnds = 400;

/** An outline that crosses a line at a flatter angle than this says little of where it is, as a sine. */
const leastSine = 0.15;

/** Lines stand at steps of the golden section, so that none keeps to a rhythm of the drawing. */
const golden = (Math.sqrt(5) - 1) / 2;

export class FilmScan {
  readonly #layers: readonly LinedLayer[];
  readonly #crop: Size;
  readonly #tolerance: number;
  readonly #lines: number;
  readonly #agreements = new Map<string, Agreement>();
  readonly #hidden: readonly Box[];

  /** `hidden`: boxes in which nothing is looked at. */
  constructor(
    layers: readonly { readonly shapes: readonly Shape[] }[],
    crop: Size,
    tolerance: number,
    hidden: readonly Box[] = [],
  ) {
    this.#crop = crop;
    this.#hidden = hidden;
    this.#tolerance = tolerance;
    this.#layers = linedLayers(layers);
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
    const tally: Tally = {
      expected: 0,
      found: 0,
      balance: new Map(),
      contours: new Map(),
      segments: new Map(),
      missing: [],
    };
    this.#layers.forEach((layer, number) => {
      for (const at of placesIn(down, height, Math.ceil(this.#linesOver(layer, 'level', height) * part)))
        this.#compare(this.#known(layer, 'level', at), step.y, step.x, across, { layer, number, tally });
      for (const at of placesIn(across, width, Math.ceil(this.#linesOver(layer, 'upright', width) * part)))
        this.#compare(this.#known(layer, 'upright', at), step.x, step.y, down, { layer, number, tally });
    });
    return tally;
  }

  /** Level and upright steps between like ends of one line, those that most lines agree on: they show in art cut to slivers. */
  straightSteps(): readonly Point[] {
    const { width, height } = this.#crop;
    const steps = (way: Way, span: number, size: number): readonly number[] => {
      const votes = new Map<number, { count: number; sum: number }>();
      for (const layer of this.#layers)
        for (const at of placesIn([0, span], span, this.#lines))
          for (const by of spacings(this.#known(layer, way, at).ends, size)) {
            const key = Math.round(by / this.#tolerance / 2);
            const vote = votes.get(key) ?? { count: 0, sum: 0 };
            votes.set(key, { count: vote.count + 1, sum: vote.sum + by });
          }
      const sorted = [...votes.values()].filter(({ count }) => count > 1).sort((p, q) => q.count - p.count);
      return sorted.slice(0, mostStraight).map(({ count, sum }) => sum / count);
    };
    return [
      ...steps('level', height, width).map((x) => ({ x, y: 0 })),
      ...steps('upright', width, height).map((y) => ({ x: 0, y })),
    ];
  }

  /** How many lines of a way are looked at, by what the first of them crosses. */
  #linesOver(layer: LinedLayer, way: Way, size: number): number {
    const { ends } = this.#known(layer, way, golden * size);
    return ends.length > veryManyEnds ? Math.min(fewLines, this.#lines) : this.#lines;
  }

  /** A line of the crop, which is held against many others. */
  #known(layer: LinedLayer, way: Way, at: number): Line {
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
    { layer, number, tally }: { readonly layer: LinedLayer; readonly number: number; readonly tally: Tally },
  ): void {
    // A step along the line stays on it.
    const others = across === 0 ? ends : endsOf(layer, way, at + across);
    const there = { way, at: at + across, seenAt: at, along, span: [from, to] as const, layer: number };
    const here = {
      ...{ way, at, seenAt: at + across, along: -along },
      ...{ span: [from + along, to + along] as const, layer: number },
    };
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
      seenAt,
    } = held;
    const most = this.#tolerance / leastSine;
    let next = 0;
    for (const end of ends) {
      if (end.sine < leastSine || end.at < from || end.at > to) continue;
      const slack = this.#tolerance / end.sine;
      // What stands at the end of the line may show on one of the two alone.
      if (end.at < from + slack || end.at > to - slack) continue;
      const place = end.at + along;
      if (this.#isHidden(way, seenAt, end.at) || this.#isHidden(way, at, place)) continue;
      tally.expected++;
      while ((others[next]?.at ?? Infinity) < place - most) next++;
      const copy = likeOf(others, next, place, end.begins, slack);
      tally.balance.set(end.contour, (tally.balance.get(end.contour) ?? 0) + (copy ? 1 : -1));
      if (copy) {
        tally.found++;
        tally.contours.set(end.contour, copy.contour);
        tally.segments.set(end.edge * 64 + layer, end.contour);
      } else {
        const seen = { seenAt, seenAlong: end.at };
        const place = { way, at, along: end.at + along, begins: end.begins, slack, layer, ...seen };
        if (tally.missing.length < mostMissing) tally.missing.push(place);
        else tally.missing[tally.expected % mostMissing] = place;
      }
    }
  }

  #isHidden(way: Way, line: number, along: number): boolean {
    const [x, y] = way === 'level' ? [along, line] : [line, along];
    return this.#hidden.some(
      ({ minX, minY, maxX, maxY }) => x >= minX && y >= minY && x <= maxX && y <= maxY,
    );
  }

  /**
   * Of places where film is missing, in how many the same is missing a step away, and in how many it is not, or what was to show
   * there does not show again itself; those from which the step leads out of the crop tell nothing. `seen`: where both show.
   */
  missingAgain(missing: readonly Missing[], { x, y }: Point): MissingAgain {
    const { width, height } = this.#crop;
    let [again, not, seen] = [0, 0, 0];
    for (const { way, at, along, begins, slack, layer, seenAt, seenAlong } of missing) {
      const art = this.#layers[layer];
      const [lineStep, placeStep] = way === 'level' ? [y, x] : [x, y];
      const [across, most] = way === 'level' ? [height, width] : [width, height];
      const isThere = (line: number, place: number): boolean | undefined =>
        !art || line < 0 || line > across || place < slack || place > most - slack
          ? undefined
          : likeOf(endsOf(art, way, line), 0, place, begins, slack) !== undefined;
      const isFilled = isThere(at + lineStep, along + placeStep);
      if (isFilled === undefined) continue;
      const isSeen = isThere(seenAt + lineStep, seenAlong + placeStep);
      if (isFilled || isSeen === false) not++;
      else again++;
      if (!isFilled && isSeen) seen++;
    }
    return { again, not, seen };
  }
}

interface MissingAgain {
  readonly again: number;
  readonly not: number;
  readonly seen: number;
}

/** A line that others' ends are held against: where it stands, how far along it they come, and the part that shows. */
interface Held {
  readonly way: Way;
  readonly at: number;
  readonly seenAt: number;
  readonly along: number;
  readonly span: readonly [number, number];
  readonly layer: number;
}

/** So many level and as many upright steps are told. */
const mostStraight = 16;

/** Of a line with very many ends, so many tell how they are spaced. */
const mostEnds = 60;

/** The distances between the like ends of one line. */
function spacings(ends: readonly End[], size: number): number[] {
  const some = ends.filter(({ at, sine }) => sine >= leastSine && at > 0 && at < size).slice(0, mostEnds);
  return some.flatMap((from, i) =>
    some.slice(i + 1).flatMap((to) => (to.begins === from.begins ? [to.at - from.at] : [])),
  );
}

interface Tally {
  expected: number;
  found: number;
  readonly balance: Map<number, number>;
  readonly contours: Map<number, number>;
  readonly segments: Map<number, number>;
  readonly missing: Missing[];
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
