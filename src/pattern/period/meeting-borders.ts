// A period cut out of a traced picture: its opposite borders differ by what the pixels leave open, and are made to meet.
import type { Contour, Segment } from '../../geometry/contour.ts';
import { add, distance, dot, type Point, scale, subtract } from '../../geometry/point.ts';
import { withEnds } from '../../geometry/segment.ts';
import { coordinates, type Lattice, step } from '../lattice/lattice.ts';
import type { PeriodContour } from '../tile/cut-shapes.ts';

/** A node where an outline arrives at a border. */
interface Arrival {
  readonly contour: number;
  readonly node: number;
  /** Along the border, mm from its start. */
  readonly at: number;
  /** Whether the stretch of border begins here, as its contour is walked. */
  readonly begins: boolean;
}

interface Side {
  readonly from: Point;
  readonly to: Point;
}

const directionOf = ({ from, to }: Side): Point => scale(subtract(to, from), 1 / distance(from, to));

/** Nodes this near to a border's line are on it, mm: it was cut there. */
const onBorder = 1e-3;

/**
 * The contours of a period with outlines that arrive at one border moved along it to where their like arrives at the other, each by half
 * of what they are apart; what is farther apart than `slack`, mm, stays. `window`: the parallelogram that the period was cut by.
 */
export function withMeetingBorders(
  period: readonly PeriodContour[],
  window: Contour,
  lattice: Lattice,
  slack: number,
): readonly PeriodContour[] {
  const [first, second, third, fourth] = window.segments;
  if (!first || !second || !third || !fourth) return period;
  const moves = new Map<string, Point>();
  for (const [side, facing] of [
    [first, { from: third.to, to: third.from }],
    [second, { from: fourth.to, to: fourth.from }],
  ] as const) {
    const by = stepNearest(lattice, subtract(facing.from, side.from));
    const onto = { from: add(side.from, by), to: add(side.to, by) };
    for (const [one, other] of pairsOf(arrivals(period, side, side), arrivals(period, facing, onto), slack)) {
      const apart = other.at - one.at;
      const along = directionOf(side);
      moves.set(keyOf(one), scale(along, apart / 2));
      moves.set(keyOf(other), scale(along, -apart / 2));
    }
  }
  return moves.size === 0 ? period : period.map((one, contour) => withMoved(one, contour, moves));
}

const keyOf = ({ contour, node }: Pick<Arrival, 'contour' | 'node'>): string => `${contour} ${node}`;

function stepNearest(lattice: Lattice, by: Point): Point {
  const { i, j } = coordinates(lattice, by);
  return step(lattice, Math.round(i), Math.round(j));
}

/** Where outlines arrive at a side, measured from the start of `line`. */
function arrivals(period: readonly PeriodContour[], side: Side, line: Side): readonly Arrival[] {
  const along = directionOf(line);
  const across = { x: -along.y, y: along.x };
  const length = distance(line.from, line.to);
  return period.flatMap(({ contour: { segments }, borders }, contour) =>
    segments.flatMap(({ from }, node): Arrival[] => {
      const begins = borders.has(node);
      if (begins === borders.has((node + segments.length - 1) % segments.length)) return [];
      if (Math.abs(dot(subtract(from, side.from), across)) > onBorder) return [];
      const at = dot(subtract(from, line.from), along);
      // At a corner of the window it may be the other border that it arrives at.
      return at > onBorder && at < length - onBorder ? [{ contour, node, at, begins }] : [];
    }),
  );
}

/** Each arrival with its like on the facing side, where that is the nearest of its kind both ways. */
function pairsOf(
  here: readonly Arrival[],
  there: readonly Arrival[],
  slack: number,
): readonly (readonly [Arrival, Arrival])[] {
  const [one, other] = [new Arrivals(here, slack), new Arrivals(there, slack)];
  return here.flatMap((arrival): (readonly [Arrival, Arrival])[] => {
    const like = other.nearest(arrival);
    return like && one.nearest(like) === arrival ? [[arrival, like]] : [];
  });
}

/** The arrivals at one side, by where they are. */
class Arrivals {
  readonly #slack: number;
  readonly #places = new Map<number, Arrival[]>();

  constructor(arrivals: readonly Arrival[], slack: number) {
    this.#slack = slack;
    for (const arrival of arrivals) {
      const place = Math.floor(arrival.at / slack);
      const known = this.#places.get(place);
      if (known) known.push(arrival);
      else this.#places.set(place, [arrival]);
    }
  }

  /** The nearest like of an arrival at the facing side, no farther than the slack: what begins a stretch there ends one here. */
  nearest({ at, begins }: Arrival): Arrival | undefined {
    const place = Math.floor(at / this.#slack);
    return [place - 1, place, place + 1]
      .flatMap((near) => this.#places.get(near) ?? [])
      .filter((other) => other.begins !== begins && Math.abs(other.at - at) <= this.#slack)
      .sort((p, q) => Math.abs(p.at - at) - Math.abs(q.at - at))[0];
  }
}

function withMoved(period: PeriodContour, contour: number, moves: ReadonlyMap<string, Point>): PeriodContour {
  const { closed, segments } = period.contour;
  const nodes = segments.map(({ from }, node) => {
    const by = moves.get(keyOf({ contour, node }));
    return by ? add(from, by) : from;
  });
  const moved = segments.map((s, i): Segment => {
    const [from, to] = [nodes[i] ?? s.from, nodes[(i + 1) % segments.length] ?? s.to];
    return from === s.from && to === s.to ? s : withEnds(s, from, to);
  });
  return { ...period, contour: { closed, segments: moved } };
}
