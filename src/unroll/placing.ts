// Placing an item: does it lie on the wall where it is meant to, by how much not, and where is the nearest place.
import type { Band } from '../blank/flat-band.ts';
import type { KeepOut } from '../blank/keep-out.ts';
import { type FlatWall, girthAt, type WallPoint } from './flat-wall.ts';
import {
  clearOfApex,
  type Footprint,
  middleBeginning,
  middleEnding,
  pastLine,
  type Reach,
  reachAt,
  turnsBeside,
  turnsWithin,
} from './footprint.ts';
import { leastShift, type OpenTurns, wallDistance } from './open-turns.ts';

/** Where items may lie. */
export interface Ground {
  /** The flat bands, each with the wall of a sheet that lies on it. */
  readonly bands: readonly { readonly band: Band; readonly wall: FlatWall }[];
  /** Where the lip zone begins, mm along; left out, there is none. */
  readonly lipZone?: number;
  /** What runs up the wall at turn 0, and how far to either side of it items must stay, mm. */
  readonly beside?: { readonly what: 'seam' | 'handle'; readonly offset: number };
  readonly keepOuts: readonly KeepOut[];
}

/** What an item runs into. `girth` is the item itself: it is wider than the wall goes around. */
export type MissKind = 'flat band' | 'lip zone' | 'seam' | 'handle' | 'girth' | KeepOut['what'];

export interface Miss {
  readonly what: MissKind;
  /** How far it reaches where it must not, mm; of a keep-out, the least that it would have to be moved to clear it. */
  readonly by: number;
}

/** The search goes no finer than this, mm. */
const rounding = 1e-6;

/** Everything an item about a place runs into by more than `tolerance`, mm; empty where it lies. Its turn is 0 to 1. */
export function missesAt(ground: Ground, size: Footprint, at: WallPoint, tolerance: number): readonly Miss[] {
  const found: Miss[] = [];
  const add = (what: MissKind, by: number) => {
    if (by > tolerance) found.push({ what, by });
  };
  const under = bestBand(ground, size, at.along);
  add('flat band', under ? under.past : size.up);
  if (!under || !clearOfApex(under.wall, size, at.along)) return found;
  const { wall } = under;
  add('lip zone', reachAt(wall, size, at.along).to - (ground.lipZone ?? Infinity));
  const { beside } = ground;
  const turns = Math.min(at.turn, 1 - at.turn);
  if (beside) add(beside.what, pastLine(wall, size, at.along, turns, beside.offset));
  else add('girth', (2 * widestTurns(wall, size, at.along) - 1) * girthAt(wall, at.along));
  for (const keepOut of ground.keepOuts) add(keepOut.what, pastKeepOut(keepOut, wall, size, at));
  return found;
}

/** The band an item reaches past least, and by how much. */
function bestBand(
  { bands }: Ground,
  size: Footprint,
  along: number,
): { readonly wall: FlatWall; readonly past: number } | undefined {
  const tried = bands.map(({ band, wall }) => {
    const reach = reachAt(wall, size, along);
    return { wall, past: Math.max(0, band.from - reach.from, reach.to - band.to) };
  });
  return tried.length === 0 ? undefined : tried.reduce((a, b) => (b.past < a.past ? b : a));
}

const everywhere: Reach = { from: -Infinity, to: Infinity };

const widestTurns = (wall: FlatWall, size: Footprint, along: number): number =>
  turnsWithin(wall, size, along, everywhere)?.outer ?? 0;

/** The turns an item's middle must not have because of a keep-out, at a place along the wall. */
function closedTurns(
  { turn, along: stretch }: KeepOut,
  wall: FlatWall,
  size: Footprint,
  along: number,
): OpenTurns[] {
  const reach = turnsWithin(wall, size, along, stretch ?? everywhere);
  if (!reach) return [];
  if (!turn) return [{ from: 0, to: Infinity }];
  const { inner, outer } = reach;
  const [from, to] = [turn.from, turn.to < turn.from ? turn.to + 1 : turn.to];
  // A narrow keep-out may stand between the item's two outer corners.
  return to - inner < from + inner
    ? [
        { from: from - outer, to: to - inner },
        { from: from + inner, to: to + outer },
      ]
    : [{ from: from - outer, to: to + outer }];
}

/** The least move, around the wall or along it, that takes an item clear of a keep-out, mm; 0 where it is clear. */
function pastKeepOut(keepOut: KeepOut, wall: FlatWall, size: Footprint, at: WallPoint): number {
  const around = leastShift(closedTurns(keepOut, wall, size, at.along), at.turn);
  if (around === 0) return 0;
  const { along: stretch } = keepOut;
  const moves = [
    ...(around === undefined ? [] : [wallDistance(wall, at, { turn: at.turn + around, along: at.along })]),
    ...(stretch
      ? [
          middleBeginning(wall, size, stretch.to) - at.along,
          at.along - middleEnding(wall, size, stretch.from),
        ]
      : []),
  ].filter((move) => move >= 0);
  return moves.length === 0 ? size.up : Math.min(...moves);
}

/** The turn nearest to `turn` that an item's middle may have at a place along the wall; undefined where there is none. */
function nearestTurn(
  { beside, keepOuts }: Ground,
  wall: FlatWall,
  size: Footprint,
  at: WallPoint,
): number | undefined {
  const side = beside ? turnsBeside(wall, size, at.along, beside.offset) : 0;
  if (side > 0.5 || widestTurns(wall, size, at.along) > 0.5) return undefined;
  const shift = leastShift(
    [
      ...(side > 0 ? [{ from: -side, to: side }] : []),
      ...keepOuts.flatMap((keepOut) => closedTurns(keepOut, wall, size, at.along)),
    ],
    at.turn,
  );
  return shift === undefined ? undefined : at.turn + shift;
}

/** Heights along a band are tried this close together, mm; about the best of them the search goes on by the golden section. */
const step = 0.2;
const rounds = 50;

/**
 * The place nearest to `at`, measured on the wall, where an item lies; undefined where there is none. For each height
 * the nearest turn is exact. The heights where something begins or ends to stand in the way are tried exactly too, the
 * rest every 0.2 mm and then refined: against a search a hundred times as close, the distance found was never over
 * 0.04 mm too long in the 780 cases tried, with up to four keep-outs.
 */
export function nearestPlace(ground: Ground, size: Footprint, at: WallPoint): WallPoint | undefined {
  let best: { place: WallPoint; distance: number } | undefined;
  for (const { band, wall } of ground.bands) {
    const from = middleBeginning(wall, size, band.from);
    const to = middleEnding(wall, size, Math.min(band.to, ground.lipZone ?? Infinity));
    // NaN where the item is too wide for the end of the band.
    if (!(from <= to + rounding)) continue;
    const placed = (along: number) => {
      if (!clearOfApex(wall, size, along)) return undefined;
      const turn = nearestTurn(ground, wall, size, { turn: at.turn, along });
      if (turn === undefined) return undefined;
      const place = { turn, along };
      const distance = wallDistance(wall, at, place);
      if (!best || distance < best.distance) best = { place, distance };
      return distance;
    };
    search(placed, heightsToTry(ground, wall, size, at.along, { from, to: Math.max(from, to) }));
  }
  if (!best) return undefined;
  const { turn, along } = best.place;
  return { turn: turn - Math.floor(turn), along };
}

/** The heights of an item's middle that are tried first, from low to high, all within the range. */
function heightsToTry(
  { keepOuts }: Ground,
  wall: FlatWall,
  size: Footprint,
  along: number,
  { from, to }: Reach,
): number[] {
  const edges = keepOuts.flatMap(({ along: stretch }) =>
    stretch ? [middleBeginning(wall, size, stretch.to), middleEnding(wall, size, stretch.from)] : [],
  );
  const count = Math.max(1, Math.ceil((to - from) / step));
  const even = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  const within = [...even, ...edges, Math.min(to, Math.max(from, along))].filter((a) => a >= from && a <= to);
  return [...new Set(within)].sort((a, b) => a - b);
}

/** Tries all heights, then goes on between those that are no further than their neighbours and these. */
function search(distanceAt: (along: number) => number | undefined, heights: readonly number[]): void {
  const distances = heights.map((along) => distanceAt(along) ?? Infinity);
  heights.slice(1).forEach((high, i) => {
    const low = heights[i] ?? high;
    const [atLow, atHigh] = [distances[i] ?? Infinity, distances[i + 1] ?? Infinity];
    const isValley =
      (atLow <= atHigh && atLow <= (distances[i - 1] ?? Infinity)) ||
      (atHigh <= atLow && atHigh <= (distances[i + 2] ?? Infinity));
    if (isValley && Math.min(atLow, atHigh) < Infinity) goldenSection(distanceAt, low, high);
  });
}

function goldenSection(distanceAt: (along: number) => number | undefined, from: number, to: number): void {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  for (let i = 0; i < rounds && high - low > rounding; i++) {
    const [a, b] = [high - golden * (high - low), low + golden * (high - low)];
    if ((distanceAt(a) ?? Infinity) <= (distanceAt(b) ?? Infinity)) high = b;
    else low = a;
  }
}
