// Whether the edges of a picture that reach its border go on where its own copy begins.

/** A channel changes by so much over two pixels where an edge crosses a row. */
const leastChange = 48;

/** Edges meet where they stand within so many pixels of one another: one that crosses at a slant moves from row to row. */
const metWithin = 2.5;

/** So large a share of edges may miss: where one bends, or noise hides it. */
const mostMissing = 0.12;

/** What is so much wider a few rows further in only touches the border, as a round does. */
const roundsBy = 1.6;
const rowsIn = [1, 2];
const grows = 0.4;

/** What is no wider on the border, px, is a tip that ends there, where it is wider further in. */
const tip = 2.2;

/** Reads a channel of the pixel `i` along a border, `k` rows across it; both as whole numbers that go on past the picture. */
export type RowReader = (i: number, k: number, channel: number) => number;

/** An edge that crosses a row, by its middle, px; whether the row grows lighter there. */
export interface RowEdge {
  readonly at: number;
  readonly rises: boolean;
}

/** A stretch along a border, px. */
export interface RowStretch {
  readonly from: number;
  readonly to: number;
}

/**
 * Whether nearly all edges that cross a picture's last row cross its first as well, and the other way round. A crop's do not: lines
 * of a pixel or two are met by nothing, though no long stretch shows it. What only touches the border is left out, and told; so
 * are the ends of sides that were drawn on it.
 */
export function edgesMet(
  value: RowReader,
  along: number,
  size: number,
  drawnSides: readonly RowStretch[] = [],
) {
  const isNear = (at: number, end: number): boolean =>
    [-along, 0, along].some((by) => Math.abs(at - end + by) <= metWithin);
  const isFree = ({ at }: RowEdge): boolean =>
    drawnSides.every(({ from, to }) => !isNear(at, from) && !isNear(at, to));
  const last = rowEdges(value, along, size - 1).filter(isFree);
  const first = rowEdges(value, along, 0).filter(isFree);
  const sides = [
    missed(
      last,
      first,
      rowsIn.map((k) => rowEdges(value, along, size - 1 - k)),
    ),
    missed(
      first,
      last,
      rowsIn.map((k) => rowEdges(value, along, k)),
    ),
  ];
  const open = sides.reduce((sum, side) => sum + side.open, 0);
  return {
    meet: open <= mostMissing * (last.length + first.length),
    touching: sides.flatMap(({ touching }) => touching),
  };
}

/** How many edges of a row meet none of another, and the stretches that touch the border only. */
function missed(
  row: readonly RowEdge[],
  other: readonly RowEdge[],
  inside: readonly (readonly RowEdge[])[],
): { readonly open: number; readonly touching: readonly RowStretch[] } {
  const odd = withoutDoubles(
    row.filter(
      ({ at, rises }) => !other.some((edge) => edge.rises === rises && Math.abs(edge.at - at) <= metWithin),
    ),
  );
  const touching: RowStretch[] = [];
  for (let i = 1; i < odd.length; i++) {
    const [from, to] = [odd[i - 1]?.at ?? 0, odd[i]?.at ?? 0];
    if (!isTouch(from, to, inside)) continue;
    touching.push({ from, to });
    i++;
  }
  return touching.length > mostTouching
    ? { open: odd.length, touching: [] }
    : { open: odd.length - 2 * touching.length, touching };
}

/** The top of a round covers pixels in part: each of its flanks is then two edges that rise or fall alike, nearer than this, px. */
const flank = 4;

const withoutDoubles = (edges: readonly RowEdge[]): readonly RowEdge[] =>
  edges.filter(({ at, rises }, i) => {
    const before = edges[i - 1];
    return before === undefined || before.rises !== rises || at - before.at > flank;
  });

/** More stretches of a row than these do not touch by design: they are a hatch, and cut. */
const mostTouching = 4;

/** Whether the stretch between two places of a row grows wider from row to row further in, as a round does or a tip. */
function isTouch(from: number, to: number, inside: readonly (readonly RowEdge[])[]): boolean {
  const wide = inside.map((row) => {
    const before = row.filter(({ at }) => at < from).at(-1);
    const after = row.find(({ at }) => at > to);
    return before && after ? after.at - before.at : 0;
  });
  const [first = 0, second = 0] = wide;
  if (first < to - from + grows || second < first + grows) return false;
  const isRound = second >= roundsBy * (to - from);
  return (isRound || to - from <= tip) && second <= 4 * (to - from) + 2 * metWithin;
}

/** Where edges cross a row, in order: runs of pixels that all grow lighter, or all darker, by their middle. */
export function rowEdges(value: RowReader, along: number, k: number): readonly RowEdge[] {
  const edges: RowEdge[] = [];
  let [sum, weighed, sign] = [0, 0, 0];
  const end = () => {
    if (sign !== 0) edges.push({ at: weighed / sum, rises: sign > 0 });
    [sum, weighed] = [0, 0];
  };
  for (let i = 0; i < along; i++) {
    const changes = [0, 1, 2].map((channel) => value(i + 1, k, channel) - value(i - 1, k, channel));
    const change = changes.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0);
    const now = Math.abs(change) >= leastChange ? Math.sign(change) : 0;
    if (now !== sign) end();
    sign = now;
    sum += Math.abs(change);
    weighed += i * Math.abs(change);
  }
  end();
  return edges;
}
