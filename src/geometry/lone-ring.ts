// A source that comes near nothing else and is seen at a glance to be simple: traced without a grid or the engine.
import { onGrid, type Source, slack } from './chords.ts';
import type { Segment } from './contour.ts';
import type { Point } from './point.ts';
import { norm } from './point.ts';
import { crossesNothing, mostHeld } from './simple-ring.ts';
import type { Run, TracedRing } from './traced.ts';

/** Corners of a ring on the grid, in columns. */
interface Corners {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

export interface LoneRing {
  /** How often it was drawn around what it encloses, counter-clockwise with y up. */
  readonly turns: 1 | -1;
  /** Counter-clockwise, each of its runs a whole segment: what combining it alone would give. */
  readonly ring: TracedRing;
}

/** A source as a ring; undefined where it has marked edges, sides that may touch or crossings, or that is not quickly told. */
export function loneRing(source: Source, number: number, units: number): LoneRing | undefined {
  const { segments } = source.chords.contour;
  if (hasTouchingSides(segments) || segments.some((_, i) => source.isEdge?.(i))) return undefined;
  const corners = cornersOf(source, units);
  if (!corners || !crossesNothing(corners.x, corners.y, 1)) return undefined;
  const turns = twiceArea(corners) > 0 ? 1 : -1;
  return { turns, ring: new AloneRing(source, number, turns, units, measure(corners, turns, units)) };
}

/** Its runs are made when they are asked for: those of a whole sheet of motifs would lie in memory as heavy as their curves. */
class AloneRing implements TracedRing {
  readonly isAlone = true;
  readonly area: number;
  readonly perimeter: number;
  readonly #source: Source;
  readonly #number: number;
  readonly #turns: 1 | -1;
  readonly #units: number;

  constructor(source: Source, number: number, turns: 1 | -1, units: number, measured: Measured) {
    this.area = measured.area;
    this.perimeter = measured.perimeter;
    this.#source = source;
    this.#number = number;
    this.#turns = turns;
    this.#units = units;
  }

  get runs(): readonly Run[] {
    return runsOf(this.#source, this.#number, this.#turns, this.#units);
  }
}

type Measured = Pick<TracedRing, 'area' | 'perimeter'>;

/** Straight sides that slant may be led through one another's corners. */
const hasTouchingSides = (segments: readonly Segment[]): boolean =>
  segments.filter(({ kind, from, to }) => kind === 'line' && from.x !== to.x && from.y !== to.y).length > 1;

/** Undefined where there are too few or too many, or two so near that rounding may have moved one past the other. */
function cornersOf({ chords, by }: Source, units: number): Corners | undefined {
  const count = chords.x.length;
  if (count < 3 || count > mostHeld) return undefined;
  const x: number[] = [];
  const y: number[] = [];
  for (let k = 0; k < count; k++) {
    x.push(onGrid(chords.x[k], by.x, units));
    y.push(onGrid(chords.y[k], by.y, units));
  }
  for (let k = 0, before = count - 1; k < count; before = k, k++)
    if (norm((x[k] ?? 0) - (x[before] ?? 0), (y[k] ?? 0) - (y[before] ?? 0)) <= slack) return undefined;
  return { x, y };
}

function twiceArea({ x, y }: Corners): number {
  let twice = 0;
  for (let k = 0, before = x.length - 1; k < x.length; before = k, k++)
    twice += (x[before] ?? 0) * (y[k] ?? 0) - (y[before] ?? 0) * (x[k] ?? 0);
  return twice;
}

function measure(corners: Corners, turns: 1 | -1, units: number): Measured {
  const { x, y } = corners;
  const last = x.length - 1;
  let perimeter = 0;
  let before = turns > 0 ? last : 0;
  for (let i = 0; i <= last; i++) {
    const k = turns > 0 ? i : last - i;
    perimeter += norm((x[k] ?? 0) - (x[before] ?? 0), (y[k] ?? 0) - (y[before] ?? 0));
    before = k;
  }
  return { area: Math.abs(twiceArea(corners)) / 2 / (units * units), perimeter: perimeter / units };
}

function runsOf({ chords, by }: Source, number: number, turns: 1 | -1, units: number): Run[] {
  const { first } = chords;
  const count = first.length - 1;
  const nodes = first.slice(0, count).map(
    (k): Point => ({
      x: onGrid(chords.x[k], by.x, units) / units,
      y: onGrid(chords.y[k], by.y, units) / units,
    }),
  );
  const node = (segment: number): Point => nodes[segment % count] ?? { x: 0, y: 0 };
  const run = (segment: number): Run => {
    const ends = { from: node(segment), to: node(segment + 1) };
    return turns > 0
      ? { source: number, segment, t0: 0, t1: 1, turn: 0, ...ends }
      : { source: number, segment, t0: 1, t1: 0, turn: 0, from: ends.to, to: ends.from };
  };
  const runs = nodes.map((_, segment) => run(segment));
  if (turns > 0) return runs;
  // Walked back from the ring's last corner, a last segment of one chord comes at the end.
  const isLastShort = (first[count] ?? 0) - (first[count - 1] ?? 0) === 1;
  const [closing] = isLastShort ? runs.splice(-1) : [];
  runs.reverse();
  return closing ? [...runs, closing] : runs;
}
