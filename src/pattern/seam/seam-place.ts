// Where along the wall a pattern may begin so that a straight seam cuts the least of it.
import { least } from '../../geometry/extremes.ts';
import { type Closing, equalParts, layOut } from '../lattice/closing.ts';
import { gcd, type Lattice } from '../lattice/lattice.ts';
import { type PatternTile, periodOfLayer } from '../period/period.ts';
import { filmCutUp, filmUpOf, type SeamPiece } from './film-up.ts';

/** Edges at a seam, mm to the right of turn 0: the one that shows, and the one that it covers, if any. */
export interface SeamEdges {
  readonly shows: number;
  readonly hidden?: number;
  /** So many seams alike stand evenly around the wall, as between gores; one, if left out. */
  readonly seams?: number;
}

/** A place for a seam. */
export interface SeamPlace {
  /** How far along the drawing from its left edge, drawn mm; nought is where it begins unasked. */
  readonly at: number;
  /** What the edges that show cut of film, mm, all layers and seams summed; and what they would if the pattern began at its left edge. */
  readonly cuts: number;
  readonly cutsAtEdge: number;
}

/** Lines looked at, mm apart around the wall. */
const apart = 0.2;

/** What a covered edge cuts is not seen, but has to be weeded: it counts as this share. */
const hiddenShare = 0.1;

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
  { shows, hidden, seams = 1 }: SeamEdges,
): SeamPlace | undefined {
  const width = (pieces[0]?.lay.around ?? 0) / equalParts(closing);
  const periods = tile.layers.map((layer) => periodOfLayer(layer, tile, lattice));
  const film = filmUpOf(periods, lattice, layOut(closing, tile.height), width);
  // Seams fall on so many different places of a period; the others are copies of those.
  const alikeBy = gcd(seams, equalParts(closing));
  const different = seams / alikeBy;
  const cutBy = (offset: number, lines: number) =>
    atAllSeams(filmCutUp(film, pieces, lines * different, offset), lines, alikeBy);
  // Nothing that shows can be spared; many tiles are so.
  if ((cutBy(shows, 1)[0] ?? 0) < leastSpared.mm) return undefined;
  const lines = Math.max(1, Math.ceil(width / different / apart));
  const seen = cutBy(shows, lines);
  const covered = hidden === undefined ? undefined : cutBy(hidden, lines);
  const costs = seen.map((cut, i) => cut + hiddenShare * (covered?.[i] ?? 0));
  const best = middleOfCheapest(costs, least(costs) * (1 + alike.share) + alike.mm);
  const [atEdge, found] = [seen[0] ?? 0, seen[best] ?? 0];
  if (atEdge - found < Math.max(leastSpared.mm, leastSpared.share * atEdge)) return undefined;
  return {
    at: (best * width) / different / lines / closing.scaleAcross,
    cuts: found,
    cutsAtEdge: atEdge,
  };
}

/** What several seams cut together, of what one would along a period: `lines` apart, each of them `times`. */
const atAllSeams = (cuts: Float64Array, lines: number, times: number): Float64Array =>
  Float64Array.from({ length: lines }, (_, i) => {
    let sum = 0;
    for (let at = i; at < cuts.length; at += lines) sum += cuts[at] ?? 0;
    return times * sum;
  });

/** The middle of the widest run of places that cost no more than `limit`, of all where all do; places go around. */
export function middleOfCheapest(costs: Float64Array, limit: number): number {
  const { length } = costs;
  const start = costs.findIndex((cost) => cost > limit);
  if (start < 0) return Math.floor(length / 2);
  let [bestFrom, bestRun, run] = [0, 0, 0];
  for (let i = 1; i <= length; i++) {
    const isCheap = (costs[(start + i) % length] ?? 0) <= limit;
    run = isCheap ? run + 1 : 0;
    if (run > bestRun) [bestFrom, bestRun] = [start + i - run + 1, run];
  }
  return (bestFrom + Math.floor((bestRun - 1) / 2)) % length;
}
