// Places of the wall outlined on the guide of gores: what has to stay bare.
import { moveContour } from '../../geometry/affine.ts';
import { type Contour, polygon } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { toGore } from '../../unroll/gore-map.ts';
import type { GoreOptions, GoreWall } from '../../unroll/gores.ts';
import type { NotedPlace } from '../guide/marks.ts';
import type { LaidGore } from './laid-gore.ts';

interface Band {
  readonly from: number;
  readonly to: number;
}

/** A place of the sheet, mm on; all around where no turns are given. `turn.to` may be past 1 where it runs through turn 0. */
export interface GorePatch {
  readonly says: string;
  readonly turn?: Band;
  readonly along: Band;
}

/** How far apart the nodes of an outline are at most, mm: a chord of an edge that bends by 1/20 mm strays by 0.006 mm. */
const step = 1;

const between = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

/** The outline of a stretch of one gore in its own drawing, from one share of its half width to another. */
export function patchOnGore(
  wall: GoreWall,
  { count, levels, band, corners = [] }: GoreOptions,
  shares: Band,
  along: Band,
): Contour {
  const at = (share: number, on: number): Point =>
    toGore(wall, { count, levels, from: band.from }, { share, on });
  const across = (2 * Math.PI * wall.at((along.from + along.to) / 2).radius) / count;
  const level = between(shares.from, shares.to, Math.ceil(across / step));
  const up = [
    ...between(along.from, along.to, Math.ceil((along.to - along.from) / step)),
    ...corners.filter((on) => on > along.from && on < along.to),
  ].sort((a, b) => a - b);
  return polygon([
    ...level.map((share) => at(share, along.from)),
    ...up.slice(1, -1).map((on) => at(shares.to, on)),
    ...level.toReversed().map((share) => at(share, along.to)),
    ...up
      .slice(1, -1)
      .toReversed()
      .map((on) => at(shares.from, on)),
  ]);
}

/** Whole turns by which a place may come again: it may run through turn 0. */
const comesAgain = [-1, 0, 1] as const;

/** The parts of a place on the gores where they lie. */
export function patchOnGores(
  wall: GoreWall,
  laid: readonly LaidGore[],
  { says, turn, along }: GorePatch,
): NotedPlace {
  const shapes = laid.flatMap(({ number, options, place }) => {
    const { count, band } = options;
    const reach = { from: Math.max(along.from, band.from), to: Math.min(along.to, band.to) };
    if (reach.from >= reach.to) return [];
    const shareOf = (at: number) => 2 * (at * count - (number - 1)) - 1;
    const runs = turn
      ? comesAgain.map((k) => ({ from: shareOf(turn.from + k), to: shareOf(turn.to + k) }))
      : [{ from: -1, to: 1 }];
    return runs.flatMap(({ from, to }) => {
      const shares = { from: Math.max(-1, from), to: Math.min(1, to) };
      return shares.from < shares.to
        ? [{ contours: [moveContour(place, patchOnGore(wall, options, shares, reach))] }]
        : [];
    });
  });
  return { says, shapes };
}
