// Between which rows of a pattern a band can end so that no motif is cut: level gaps in what is drawn, and the rows from one to another.

import type { Tile } from '../../artwork/tile.ts';
import { most } from '../../geometry/extremes.ts';
import { tightBox } from '../../geometry/measure.ts';

/** From where to where something stands, heights above the drawing's lower edge, drawn mm. */
export interface Extent {
  readonly from: number;
  readonly to: number;
}

/** The heights of all shapes of a tile. */
export const motifExtents = ({ layers, height }: Pick<Tile, 'layers' | 'height'>): readonly Extent[] =>
  layers.flatMap(({ shapes }) =>
    shapes.map(({ contours }) => {
      const { minY, maxY } = tightBox(contours);
      return { from: height - maxY, to: height - minY };
    }),
  );

/** A gap lower than this share of a row, or of the highest gap, is one within a motif. */
const leastOfRow = 0.02;
const leastOfHighest = 0.5;

/** What stands higher than this share of a row goes on from row to row: a ground or a net, which any edge cuts. */
const mostOfRow = 0.98;

/**
 * Heights at which a band can end, as shares of a row above the drawing's lower edge, 0 to 1: the middles of the gaps between
 * rows, that at the lower edge first; the lower edge alone where rows leave none.
 */
export function rowEnds(extents: readonly Extent[], row: number): readonly number[] {
  const standing = extents
    .filter(({ from, to }) => to - from < mostOfRow * row)
    .map(({ from, to }) => {
      const start = from - row * Math.floor(from / row);
      return { from: start, to: start + to - from };
    })
    .sort((p, q) => p.from - q.from);
  const [first] = standing;
  if (!first) return [0];
  const gaps: Extent[] = [];
  let reached = most(
    standing.map(({ to }) => to - row),
    first.to,
  );
  for (const { from, to } of standing.slice(1)) {
    if (from > reached) gaps.push({ from: reached, to: from });
    reached = Math.max(reached, to);
  }
  if (first.from + row > reached) gaps.push({ from: reached, to: first.from + row });
  const highest = most(
    gaps.map(({ from, to }) => to - from),
    0,
  );
  const least = Math.max(leastOfRow * row, leastOfHighest * highest);
  const middles = gaps
    .filter(({ from, to }) => to - from >= least)
    .map(({ from, to }) => (from + to) / 2 / row)
    .map((at) => at - Math.floor(at));
  const awayFromEdge = (at: number) => Math.min(at, 1 - at);
  return middles.length === 0 ? [0] : middles.sort((p, q) => awayFromEdge(p) - awayFromEdge(q));
}

/** How many rows a band takes, and at which height above the drawing's lower edge it begins, in rows. */
export interface RowsInBand {
  readonly rows: number;
  readonly foot: number;
}

/** The rows from a gap to a gap that change the height of a band so many rows long the least. */
export function wholeRowsIn(extents: readonly Extent[], row: number, drawnRows: number): RowsInBand {
  const ends = rowEnds(extents, row);
  const [start = 0] = ends;
  const whole = Math.max(1, Math.round(drawnRows));
  const changeBy = (rows: number) => Math.abs(Math.log(rows / drawnRows));
  let best: RowsInBand = { rows: whole, foot: start };
  for (const foot of ends)
    for (const top of ends) {
      const part = top - foot;
      const rows = Math.max(part > 0 ? 0 : 1, Math.round(drawnRows - part)) + part;
      if (changeBy(rows) < changeBy(best.rows) - 1e-9) best = { rows, foot };
    }
  return best;
}
