// Rows of a picture along one of its borders, and the edges that cross them.

/** Reads a channel of the pixel `i` along a border, `k` rows across it; both as whole numbers that go on past the picture. */
export type RowReader = (i: number, k: number, channel: number) => number;

/** Seen along one border: row 0 lies below it, row -1 above, as the copy shows it. */
export interface BorderView {
  readonly value: RowReader;
  readonly along: number;
  readonly size: number;
}

/** An edge that crosses a row, by its middle, px; whether the row grows lighter there. */
export interface RowEdge {
  readonly at: number;
  readonly rises: boolean;
}

/** A stretch along a border, px; one that goes on past the end of the row ends past its length. */
export interface RowStretch {
  readonly from: number;
  readonly to: number;
}

/** A channel changes by so much over two pixels somewhere on an edge, or over all of a shallow one; and by so much all along it. */
const leastChange = 48;
const leastStep = 24;

/** An edge is followed over so many rows, and goes no further from one to the next, px. */
export const followed = 4;
const farthest = 4;
const farthestFirst = 24;
const bends = 1.3;

/** A pixel differs by so much from the one across the border where what ends there has not ended yet. */
const leastRamp = 16;

/** What ends on a border shallowly covers ever less of its last row: it is so much longer, px and as a share, than where it covers most. */
const mostRamp = 3;
const rampShare = 0.6;

/** A stretch of film that ends along line `k` (the border is line 0), with what of it covers pixels in part at its ends. */
export function wholeStretch({ value }: BorderView, k: number, { from, to }: RowStretch): RowStretch {
  const differs = (i: number): boolean =>
    [0, 1, 2].some((channel) => Math.abs(value(i, k, channel) - value(i, k - 1, channel)) >= leastRamp);
  const most = mostRamp + rampShare * (to - from);
  const end = (at: number, way: 1 | -1): number => {
    let i = Math.floor(at) + (way === 1 ? 1 : 0);
    while (Math.abs(i - at) <= most && differs(i)) i += way;
    return i - way / 2;
  };
  return { from: Math.min(from, end(from, -1)), to: Math.max(to, end(to, 1)) };
}

/** How far a place lies from another along a row whose end is its beginning, px; above 0 where it lies further on. */
export const apartOn = (along: number, at: number, from: number): number => {
  const off = at - from;
  return off - along * Math.round(off / along);
};

/** Rows of a picture and the edges that cross each, found once. */
export class BorderRows {
  readonly view: BorderView;
  readonly #edges = new Map<number, readonly RowEdge[]>();

  constructor(view: BorderView) {
    this.view = view;
  }

  edges(k: number): readonly RowEdge[] {
    const { value, along, size } = this.view;
    const row = ((k % size) + size) % size;
    const edges = this.#edges.get(row) ?? rowEdges(value, along, row);
    this.#edges.set(row, edges);
    return edges;
  }

  /** How far an edge goes on from row to row away from a line, px, the nearest the line first; undefined where it can't be followed. */
  stepsOf(k: number, way: 1 | -1, { at, rises }: RowEdge, count = followed): readonly number[] | undefined {
    const steps: number[] = [];
    let last = at;
    for (let d = 1; d < count; d++) {
      const next = nearestEdge(this.edges(k + way * d), last, rises, this.view.along);
      const by = next && apartOn(this.view.along, next.at, last);
      const most = d === 1 ? farthestFirst : Math.max(farthest, bends * Math.abs(steps.at(-1) ?? 0));
      if (by === undefined || Math.abs(by) > most) return undefined;
      steps.push(by);
      last += by;
    }
    return steps;
  }

  /** The way of an edge towards a line, px a row; undefined where it can't be followed. */
  slopeOf(k: number, way: 1 | -1, edge: RowEdge): number | undefined {
    const steps = this.stepsOf(k, way, edge);
    return steps && -steps.reduce((sum, step) => sum + step, 0) / steps.length;
  }
}

/** The edge nearest to a place that rises or falls as asked. */
const nearestEdge = (
  edges: readonly RowEdge[],
  at: number,
  rises: boolean,
  along: number,
): RowEdge | undefined =>
  edges
    .filter((edge) => edge.rises === rises)
    .reduce<RowEdge | undefined>(
      (best, edge) =>
        best && Math.abs(apartOn(along, best.at, at)) <= Math.abs(apartOn(along, edge.at, at)) ? best : edge,
      undefined,
    );

/** Where edges cross a row, in order: runs of pixels that all grow lighter, or all darker, by their middle. */
export function rowEdges(value: RowReader, along: number, k: number): readonly RowEdge[] {
  const changes = changesAlong(value, along, k);
  const edges: RowEdge[] = [];
  let [sum, weighed, sign, last] = [0, 0, 0, 0];
  const end = () => {
    if (sum >= 2 * leastChange) edges.push({ at: (weighed / sum) % along, rises: sign > 0 });
    [sum, weighed] = [0, 0];
  };
  const start = startOf(changes);
  for (let i = start; i < start + along; i++) {
    const change = changes[i % along] ?? 0;
    if (Math.abs(change) < leastStep) continue;
    // A shallow edge covers pixels that are alike here and there.
    if (Math.sign(change) !== sign || i - last > mostAlike) end();
    [sign, last] = [Math.sign(change), i];
    sum += Math.abs(change);
    weighed += i * Math.abs(change);
  }
  end();
  return edges.sort((one, other) => one.at - other.at);
}

/** What changes most from the pixel before each to the one after it, of its channels. */
function changesAlong(value: RowReader, along: number, k: number): Int16Array {
  const changes = new Int16Array(along);
  for (let i = 0; i < along; i++) {
    let most = 0;
    for (let channel = 0; channel < 3; channel++) {
      const one = value(i + 1, k, channel) - value(i - 1, k, channel);
      if (Math.abs(one) > Math.abs(most)) most = one;
    }
    changes[i] = most;
  }
  return changes;
}

/** Pixels between two stretches of one edge that are alike, at most. */
const mostAlike = 4;

/** Where to begin so that an edge that lies over the end of the row is one: after the longest stretch of none. */
function startOf(changes: Int16Array): number {
  let [best, most, run] = [0, 0, 0];
  for (let i = 0; i < 2 * changes.length && run < changes.length; i++) {
    run = Math.abs(changes[i % changes.length] ?? 0) < leastStep ? run + 1 : 0;
    if (run > most) [best, most] = [(i + 1) % changes.length, run];
  }
  return best;
}
