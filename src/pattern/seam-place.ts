// Where along the wall a pattern may begin so that a straight seam cuts the least of it.
import type { Box } from '../geometry/box.ts';
import { least, most } from '../geometry/extremes.ts';
import { type Template, turnOfEdge } from '../unroll/template.ts';
import { copiesIn, type LaidPeriod, layPeriod, type PlacedCopy } from './cell.ts';
import { type Closing, equalParts, layOut } from './closing.ts';
import type { Lattice } from './lattice.ts';
import type { Lay } from './lay.ts';
import { type PatternTile, periodOfLayer } from './period.ts';

/** One piece of a band, and how the pattern lies on it. */
export interface SeamPiece {
  readonly lay: Lay;
  readonly template: Pick<Template, 'wall' | 'band' | 'seam'>;
}

/** Edges at a seam, mm to the right of turn 0: the one that shows, and the one that it covers, if any. */
export interface SeamEdges {
  readonly shows: number;
  readonly hidden?: number;
}

/** A place for a seam. */
export interface SeamPlace {
  /** How far along the drawing from its left edge, drawn mm; nought is where it begins unasked. */
  readonly at: number;
  /** What the edge that shows cuts of film, mm, all layers summed; and what it would if the pattern began at its left edge. */
  readonly cuts: number;
  readonly cutsAtEdge: number;
}

/** Lines looked at, mm apart around the wall. */
const apart = 0.2;

/** What a covered edge cuts is not seen, but has to be weeded: it counts as this share. */
const hiddenShare = 0.25;

/** Places cost alike within this, mm and as a share: of those the middle of the widest run is taken. */
const alike = { mm: 0.2, share: 0.02 } as const;

/** Less than this spared is not worth another beginning, mm and as a share. */
const leastSpared = { mm: 1, share: 0.1 } as const;

interface PatternLaid {
  readonly tile: PatternTile;
  readonly lattice: Lattice;
  readonly closing: Closing;
}

/**
 * The place where a straight seam cuts the least of a pattern, wherever in a period it is; undefined where it spares next to nothing
 * beside the drawing's left edge.
 */
export function leastCutPlace(
  { tile, lattice, closing }: PatternLaid,
  pieces: readonly SeamPiece[],
  { shows, hidden }: SeamEdges,
): SeamPlace | undefined {
  const m = layOut(closing, tile.height);
  const periods = tile.layers.map((layer) => layPeriod(periodOfLayer(layer, tile, lattice), lattice, m));
  const along = (offset: number) => filmAlong(periods, equalParts(closing), pieces, offset);
  const seen = along(shows);
  const covered = hidden === undefined ? undefined : along(hidden);
  const costs = seen.map((cut, i) => cut + hiddenShare * (covered?.[i] ?? 0));
  const best = middleOfCheapest(costs);
  const [asDrawn, found] = [costs[0] ?? 0, costs[best] ?? 0];
  if (asDrawn - found < Math.max(leastSpared.mm, leastSpared.share * asDrawn)) return undefined;
  const girth = pieces[0]?.lay.around ?? 0;
  const width = girth / equalParts(closing);
  return {
    at: (best * width) / costs.length / closing.scaleAcross,
    cuts: seen[best] ?? 0,
    cutsAtEdge: seen[0] ?? 0,
  };
}

/** The middle of the widest run of places that cost next to no more than the cheapest; places go around. */
function middleOfCheapest(costs: Float64Array): number {
  const limit = least(costs) * (1 + alike.share) + alike.mm;
  const { length } = costs;
  const start = costs.findIndex((cost) => cost > limit);
  if (start < 0) return 0;
  let [bestFrom, bestRun, run] = [0, 0, 0];
  for (let i = 1; i <= length; i++) {
    const isCheap = (costs[(start + i) % length] ?? 0) <= limit;
    run = isCheap ? run + 1 : 0;
    if (run > bestRun) [bestFrom, bestRun] = [start + i - run + 1, run];
  }
  return (bestFrom + Math.floor((bestRun - 1) / 2)) % length;
}

/** What lines up the wall cut of film within the finished band, mm: evenly over one period from turn 0 on, each `offset` mm beside its turn. */
function filmAlong(
  periods: readonly LaidPeriod[],
  parts: number,
  pieces: readonly SeamPiece[],
  offset: number,
): Float64Array {
  const width = (pieces[0]?.lay.around ?? 0) / parts;
  const sums = new Float64Array(Math.max(1, Math.ceil(width / apart)));
  for (const piece of pieces) for (const period of periods) addFilm(sums, period, width, piece, offset);
  return sums;
}

function addFilm(
  sums: Float64Array,
  period: LaidPeriod,
  width: number,
  { lay, template: { wall, band } }: SeamPiece,
  offset: number,
): void {
  const [foot, lip] = [band.from, band.to].map((along) => lay.fromAlong(along)) as [number, number];
  const beside = (y: number): number =>
    offset === 0 ? 0 : lay.around * turnOfEdge(wall, { turn: 0, offset }, lay.toAlong(y));
  const shifts = [beside(foot), beside(lip)];
  const box: Box = { minX: least(shifts), minY: foot, maxX: width + most(shifts, 0), maxY: lip };
  const perLine = width / sums.length;
  const crossings = Array.from(sums, (): Crossing[] => []);
  for (const copy of copiesIn(period, box))
    cross(copy, (x, y) => (x - beside(Math.max(foot, Math.min(lip, y)))) / perLine, crossings);
  const inBand = (y: number) => lay.toAlong(Math.max(foot, Math.min(lip, y)));
  for (const [i, found] of crossings.entries()) sums[i] = (sums[i] ?? 0) + filled(found, inBand);
}

/** Where an edge crosses a line: how high up, and which way. */
interface Crossing {
  readonly y: number;
  readonly by: 1 | -1;
}

/** Tell each line, by its number, where the chords of a contour cross it. */
function cross(
  { chords: { x, y }, by }: PlacedCopy,
  lineAt: (x: number, y: number) => number,
  crossings: readonly Crossing[][],
): void {
  const at = (i: number) => {
    const [px, py] = [(x[i] ?? 0) + by.x, (y[i] ?? 0) + by.y];
    return { line: lineAt(px, py), y: py };
  };
  let from = at(x.length - 1);
  for (let i = 0; i < x.length; i++) {
    const to = at(i);
    const [low, high] = from.line < to.line ? [from, to] : [to, from];
    for (let n = Math.max(0, Math.ceil(low.line)); n < high.line && n < crossings.length; n++) {
      const share = (n - low.line) / (high.line - low.line);
      crossings[n]?.push({ y: low.y + (high.y - low.y) * share, by: low === from ? 1 : -1 });
    }
    from = to;
  }
}

/** How much of a line lies in film, copies that lie over one another counted once. */
function filled(crossings: Crossing[], placeOf: (y: number) => number): number {
  let [winding, sum, from] = [0, 0, 0];
  for (const { y, by } of crossings.sort((p, q) => p.y - q.y)) {
    if (winding === 0) from = placeOf(y);
    winding += by;
    if (winding === 0) sum += placeOf(y) - from;
  }
  return sum;
}
