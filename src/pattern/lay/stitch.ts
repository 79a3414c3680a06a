// Putting cells side by side: chains that end on a border go on in the next cell, until every boundary is closed.
import { Joined } from '../../geometry/joined.ts';
import type { Cell, Chain, Crossing, Ring } from '../tile/cell.ts';

/** A cell laid `shift` periods further around than where it was made. */
export interface PlacedCell {
  readonly cell: Cell;
  readonly shift: number;
}

/** A chain of a placed cell: a link of a boundary that runs through several cells. */
export interface Link {
  readonly place: number;
  readonly chain: Chain;
}

/** A connected area: its boundaries that stay inside one cell, and those that run through several. */
export interface StitchedArea {
  readonly rings: readonly { readonly place: number; readonly ring: Ring }[];
  readonly loops: readonly (readonly Link[])[];
}

/** Crossings of one border seen from two cells may differ by the rounding of a steep edge, mm. */
const crossingRounding = 0.05;

type Pairing = ReadonlyMap<Chain, Chain>;

const at = (chains: readonly Chain[], end: 'start' | 'end', side: Crossing['side']): Chain[] =>
  chains.filter((chain) => chain[end].side === side).sort((a, b) => a[end].y - b[end].y);

/** Which chain of one cell goes on as which chain of the other; undefined where the border is not crossed alike. */
function pair(leaving: readonly Chain[], arriving: readonly Chain[]): [Chain, Chain][] | undefined {
  if (leaving.length !== arriving.length) return undefined;
  const pairs: [Chain, Chain][] = [];
  for (const [i, from] of leaving.entries()) {
    const to = arriving[i];
    if (!to || Math.abs(from.end.y - to.start.y) > crossingRounding) return undefined;
    pairs.push([from, to]);
  }
  return pairs;
}

/** Both directions across the border between two neighbours. */
function pairNeighbours(left: Cell, right: Cell): { toRight: Pairing; toLeft: Pairing } | undefined {
  const toRight = pair(at(left.chains, 'end', 'right'), at(right.chains, 'start', 'left'));
  const toLeft = pair(at(right.chains, 'end', 'left'), at(left.chains, 'start', 'right'));
  return toRight && toLeft ? { toRight: new Map(toRight), toLeft: new Map(toLeft) } : undefined;
}

/**
 * Stitch cells laid side by side from left to right. Undefined where two neighbours do not agree on how their common
 * border is crossed, as when art is tangent to it, runs along it or has its nodes on it: another border must be chosen.
 */
export function stitch(places: readonly PlacedCell[]): StitchedArea[] | undefined {
  if (places.some(({ cell }) => cell.rubs)) return undefined;
  const known = new Map<Cell, Map<Cell, ReturnType<typeof pairNeighbours>>>();
  const neighbours = (left: Cell, right: Cell) => {
    const row = known.get(left) ?? new Map<Cell, ReturnType<typeof pairNeighbours>>();
    known.set(left, row);
    if (!row.has(right)) row.set(right, pairNeighbours(left, right));
    return row.get(right);
  };
  const borders = places.slice(1).map(({ cell }, i) => {
    const left = places[i];
    return left && neighbours(left.cell, cell);
  });
  if (borders.includes(undefined)) return undefined;
  const next = ({ place, chain }: Link): Link | undefined => {
    const right = chain.end.side === 'right';
    const to = right ? borders[place]?.toRight.get(chain) : borders[place - 1]?.toLeft.get(chain);
    return to && { place: right ? place + 1 : place - 1, chain: to };
  };
  return collectAreas(places, next);
}

function collectAreas(
  places: readonly PlacedCell[],
  next: (link: Link) => Link | undefined,
): StitchedArea[] | undefined {
  const firstRegion: number[] = [];
  let total = 0;
  for (const { cell } of places) {
    firstRegion.push(total);
    total += cell.regions;
  }
  const regionOf = (place: number, region: number) => (firstRegion[place] ?? 0) + region;
  const joined = new Joined(total);
  const loops: Link[][] = [];
  const seen = places.map(() => new Set<Chain>());
  for (const [place, { cell }] of places.entries())
    for (const chain of cell.chains) {
      if (seen[place]?.has(chain)) continue;
      const loop = follow({ place, chain }, next, seen);
      if (!loop) return undefined;
      for (const link of loop)
        joined.join(regionOf(link.place, link.chain.region), regionOf(place, chain.region));
      loops.push(loop);
    }
  const areas = new Map<number, { rings: { place: number; ring: Ring }[]; loops: Link[][] }>();
  const areaOf = (place: number, region: number) => {
    const root = joined.root(regionOf(place, region));
    const area = areas.get(root) ?? { rings: [], loops: [] };
    areas.set(root, area);
    return area;
  };
  for (const loop of loops) {
    const [link] = loop;
    if (link) areaOf(link.place, link.chain.region).loops.push(loop);
  }
  for (const [place, { cell }] of places.entries())
    for (const ring of cell.rings) areaOf(place, ring.region).rings.push({ place, ring });
  return [...areas.values()];
}

function follow(
  start: Link,
  next: (link: Link) => Link | undefined,
  seen: readonly Set<Chain>[],
): Link[] | undefined {
  const loop: Link[] = [];
  let link: Link | undefined = start;
  while (link && !seen[link.place]?.has(link.chain)) {
    seen[link.place]?.add(link.chain);
    loop.push(link);
    link = next(link);
  }
  const closes = link && link.place === start.place && link.chain === start.chain;
  // Nodes that lie on borders leave nothing but single runs, which have no joint to begin from.
  return closes && loop.some(({ chain }) => chain.runs.length > 1) ? loop : undefined;
}
