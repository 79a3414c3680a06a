// The drop, or the shift, by which a tile joins its copies though it does not straight on: read off what crosses its borders.
import type { Tile } from '../../artwork/tile.ts';
import { dot, type Point } from '../../geometry/point.ts';
import { boxedShapes, filmAlong, within } from '../film/film-along.ts';
import type { Lattice } from '../lattice/lattice.ts';
import { hair } from '../tile/flush.ts';
import { goesOnBy } from './joins.ts';

/** Steps that meet within this are one, mm; and steps this near to half the tile were drawn so. */
const sameStep = 0.02;

/** Steps tried: those that most outlines agree on. Fewer agreeing outlines than this are chance. */
const mostTried = 6;
const leastAgreeing = 3;

/** Outlines of one border that are held against those of the other: each against each. */
const mostOutlines = 600;

/** Directions differ by less than this where one outline goes on, as a cosine: 5 degrees. */
const leastCosine = Math.cos(Math.PI / 36);

/**
 * The lattice of a tile whose neighbours to the side stand so much lower or higher, or whose rows are moved so far, that every
 * outline goes on; undefined where there is none.
 */
export function steppedLattice(tile: Tile): Lattice | undefined {
  const { width, height } = tile;
  const [down, across] = [
    { x: 0, y: 1 },
    { x: 1, y: 0 },
  ];
  const drops = stepsBetween(tile, { x: hair, y: 0 }, { x: width - hair, y: 0 }, down, height);
  const shifts = stepsBetween(tile, { x: 0, y: hair }, { x: 0, y: height - hair }, across, width);
  const lattices: Lattice[] = [
    ...drops.map((y) => ({ a: { x: width, y }, b: { x: 0, y: -height } })),
    ...shifts.map((x) => ({ a: { x: width, y: 0 }, b: { x: 0 - x, y: -height } })),
  ];
  return goesOnBy(tile, lattices);
}

interface Outline {
  readonly at: number;
  readonly direction: Point;
  readonly begins: boolean;
}

/** How far along its border outlines of one side stand from their like on the other: what most agree on first. */
function stepsBetween(tile: Tile, near: Point, far: Point, along: Point, size: number): readonly number[] {
  const votes = new Map<number, { count: number; sum: number }>();
  for (const { shapes } of tile.layers) {
    const drawn = boxedShapes(shapes);
    const [ours, theirs] = [near, far].map((through) => outlinesAt(drawn, through, along, size));
    for (const one of ours ?? [])
      for (const other of theirs ?? []) {
        if (one.begins !== other.begins || Math.abs(dot(one.direction, other.direction)) < leastCosine)
          continue;
        const by = home(other.at - one.at, size);
        const key = Math.round(by / sameStep);
        const vote = votes.get(key) ?? { count: 0, sum: 0 };
        votes.set(key, { count: vote.count + 1, sum: vote.sum + by });
      }
  }
  return [...votes.values()]
    .filter(({ count }) => count >= leastAgreeing)
    .sort((p, q) => q.count - p.count)
    .slice(0, mostTried)
    .map(({ count, sum }) => halved(sum / count, size));
}

function outlinesAt(
  drawn: ReturnType<typeof boxedShapes>,
  through: Point,
  along: Point,
  size: number,
): readonly Outline[] {
  return within(filmAlong(drawn, through, along), 0, size)
    .flatMap(({ from, to }) => [
      { ...from, begins: true },
      { ...to, begins: false },
    ])
    .filter(({ at }) => at > 0 && at < size)
    .slice(0, mostOutlines);
}

/** A step within half the tile of none; of half the tile always the one above, or rounding would part those that agree. */
const home = (by: number, size: number): number => by - size * Math.round((by - sameStep) / size);

const halved = (by: number, size: number): number =>
  Math.abs(Math.abs(by) - size / 2) <= sameStep ? size / 2 : by;
