// Whether the edges of a picture that reach its border go on where its own copy begins.
import { lineThrough } from '../../geometry/regression.ts';
import { apartOn, type BorderRows, type RowEdge, type RowStretch, wholeStretch } from './picture-rows.ts';

/** Edges meet where they stand within so many pixels of where they were going. */
const metWithin = 2.5;

/** So large a share of edges may miss: where one bends, or noise hides it. */
const mostMissing = 0.12;

/** What ends on the border shallowly covers ever more of its last row so far on from either end: as a share of it, and px. */
const innerShare = 0.2;
const mostInner = 24;

/**
 * Whether nearly all edges that cross a picture's last row cross its first as well, and the other way round. A crop's do not: lines
 * of a pixel or two are met by nothing, though no long stretch shows it. What only touches the border is left out, and told; so
 * are the ends of sides that were drawn on it.
 */
export function edgesMet(rows: BorderRows, drawnSides: readonly RowStretch[] = []) {
  const { along } = rows.view;
  const ends = drawnSides.flatMap((side) => {
    const { from, to } = wholeStretch(rows.view, 0, side);
    const inner = Math.min(mostInner, innerShare * (side.to - side.from));
    return [
      { from, to: side.from + inner },
      { from: side.to - inner, to },
    ];
  });
  const isFree = ({ at }: RowEdge): boolean =>
    ends.every(({ from, to }) => Math.abs(apartOn(along, at, (from + to) / 2)) > (to - from) / 2 + metWithin);
  const [last, first] = [rows.edges(-1).filter(isFree), rows.edges(0).filter(isFree)];
  const sides = [missed(rows, last, first, -1), missed(rows, first, last, 1)];
  const open = sides.reduce((sum, side) => sum + side.open, 0);
  return {
    meet: open <= mostMissing * (last.length + first.length),
    touching: sides.flatMap(({ touching }) => touching),
  };
}

/** How many edges of a row meet none of another, and the stretches that touch the border only. `way`: from the border inward. */
function missed(
  rows: BorderRows,
  row: readonly RowEdge[],
  other: readonly RowEdge[],
  way: 1 | -1,
): { readonly open: number; readonly touching: readonly RowStretch[] } {
  const { along } = rows.view;
  const [own, beyond] = way === 1 ? [0, -1] : [-1, 0];
  const goesOn = (edge: RowEdge): boolean => {
    const near = other.filter(({ rises }) => rises === edge.rises);
    const isMet = (from: RowEdge, slope: number) => (to: RowEdge) =>
      Math.abs(apartOn(along, to.at, from.at + slope)) <= metWithin;
    if (near.some(isMet(edge, 0))) return true;
    // One that crosses at a slant stands further on in the next row: by its own way, or by the other's.
    const slope = rows.slopeOf(own, way, edge);
    return (
      slope !== undefined &&
      near.some((to) => {
        const back = rows.slopeOf(beyond, -way as 1 | -1, to);
        return back !== undefined && isMet(edge, slope)(to) && isMet(to, back)(edge);
      })
    );
  };
  const odd = withoutDoubles(row.filter((edge) => !goesOn(edge)));
  const touching: RowStretch[] = [];
  for (let i = 0; i < odd.length; i++) {
    const [from, to] = [odd[i], odd[(i + 1) % odd.length]];
    if (!from || !to || odd.length < 2 || (i === odd.length - 1 && touching[0]?.from === odd[0]?.at))
      continue;
    const stretch = { from: from.at, to: to.at < from.at ? to.at + along : to.at };
    if (!touches(rows, stretch, way)) continue;
    touching.push(stretch);
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

/** Rows that a stretch is followed into, from the second: the first is covered in part. */
const rowsIn = [1, 2, 3, 4, 5];

/** What touches the border ends within this of it, px; farther off it was cut. */
const endsWithin = 1;

/**
 * Whether what stands in a stretch of the border's row ends on the border: a tip, which grows by as much in each row further in, or a
 * round, whose width grows by its square. A bar does not grow, and what was cut ended further off.
 */
function touches(rows: BorderRows, { from, to }: RowStretch, way: 1 | -1): boolean {
  const { along } = rows.view;
  const middle = (from + to) / 2;
  const wide = rowsIn.map((k) => {
    const around = rows.edges(way === 1 ? k : -1 - k).map(({ at }) => apartOn(along, at, middle));
    const [before, after] = [around.filter((at) => at < 0), around.filter((at) => at > 0)];
    return before.length > 0 && after.length > 0 ? Math.min(...after) - Math.max(...before) : 0;
  });
  const ends = wide.findIndex((w, i) => w <= (wide[i - 1] ?? 0));
  const grown = ends < 0 ? wide : wide.slice(0, ends);
  if (grown.length < leastRows) return false;
  const fits = [grown, grown.map((w) => w * w)].map(endOf);
  const best = fits.reduce((one, other) => (other.off < one.off ? other : one));
  return best.off < mostOff && Math.abs(best.at) <= endsWithin;
}

const leastRows = 3;
const mostOff = 0.15;

/** Where a row of widths would be none, px from the border and above 0 past it; and how badly a line through them fits, as a share. */
function endOf(wide: readonly number[]): { readonly at: number; readonly off: number } {
  const { intercept, slope } = lineThrough([...wide.keys()], wide);
  const off = Math.max(...wide.map((w, k) => Math.abs(w - intercept - slope * k))) / (slope * wide.length);
  // The middle of the first of these rows lies one and a half px in.
  return { at: -(1.5 - intercept / slope), off };
}
