// A band that one piece can't take, in stacked sectors that share edges.
import { type LaidCone, leastStretchCone, type RadiusAlong } from './strain.ts';

export interface StackedSector {
  readonly from: number;
  readonly to: number;
  readonly cone: LaidCone;
  readonly stretch: number;
}

/** More sectors than this nobody cuts and lays. */
const mostSectors = 24;

/** Sectors from the foot up, each as long as it can be within `stretch`. */
function greedy(wall: readonly RadiusAlong[], stretch: number, gather: number): StackedSector[] | undefined {
  const sectors: StackedSector[] = [];
  let start = 0;
  while (start < wall.length - 1) {
    if (sectors.length === mostSectors) return undefined;
    let sector = sectorOf(wall, start, start + 1, gather);
    // Longer stretches never ask less, so the longest that fits is found by halving.
    let [fits, fails] = [start + 1, wall.length];
    while (fails - fits > 1) {
      const end = (fits + fails) >> 1;
      const tried = sectorOf(wall, start, end, gather);
      if (tried.stretch <= stretch) [fits, sector] = [end, tried];
      else fails = end;
    }
    sectors.push(sector);
    start = fits;
  }
  return sectors;
}

function sectorOf(wall: readonly RadiusAlong[], start: number, end: number, gather: number): StackedSector {
  const part = wall.slice(start, end + 1);
  const { cone, stretch } = leastStretchCone(part, gather);
  return { from: part[0]?.along ?? 0, to: part.at(-1)?.along ?? 0, cone, stretch };
}

/** Halvings of the stretch when sectors are evened out: to a thousandth of the limit. */
const evening = 10;

/**
 * The fewest sectors that stretch the film by no more than `stretch` and gather it by no more than `gather`, evened out
 * so that the most stretched of them is stretched as little as that number allows. The wall's points must be close
 * together. Undefined where more than 24 would be needed.
 */
export function stackedSectors(
  wall: readonly RadiusAlong[],
  { stretch, gather }: { readonly stretch: number; readonly gather: number },
): readonly StackedSector[] | undefined {
  let best = greedy(wall, stretch + 1e-9, gather);
  if (!best) return undefined;
  let [low, high] = [0, stretch];
  for (let i = 0; i < evening; i++) {
    const middle = (low + high) / 2;
    const tried = greedy(wall, middle, gather);
    if (tried && tried.length <= best.length) [best, high] = [tried, middle];
    else low = middle;
  }
  return best;
}
