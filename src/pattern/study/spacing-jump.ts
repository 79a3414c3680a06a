// How far the spacing of what repeats in a tile jumps where its copies meet, though its borders do.
import type { Tile } from '../../artwork/tile.ts';
import { shifted } from '../../geometry/affine.ts';
import type { Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { coordinates, type Lattice } from '../lattice/lattice.ts';
import { offLattice } from '../lattice/same-lattice.ts';
import { type FoundRepeat, repeatTolerance, trueRepeat } from '../repeat/true-repeat.ts';
import type { Size } from '../tile/cut-shapes.ts';
import { drawnSo, levelled } from './levelled.ts';
import { offered, sureRepeat } from './sure-repeat.ts';

/** How far a step of the tile is from the nearest whole step of its art, mm; undefined where it is one. */
export function jumpOf({ a, b }: Lattice, found: Lattice): number | undefined {
  const off = Math.max(offLattice(a, found), offLattice(b, found));
  return off > slackOf({ a, b }, found) ? off : undefined;
}

export interface SpacingJump {
  /** mm */
  readonly jump: number;
  /** Whether it jumps from row to row. */
  readonly isUp: boolean;
  /** The repeat that tells it. */
  readonly by: FoundRepeat;
}

/** How far the spacing of what repeats in a tile jumps where its copies meet; undefined where it goes on, or nothing tells. */
export function spacingJump(
  tile: Tile,
  lattice: Lattice,
  found: FoundRepeat | undefined,
): SpacingJump | undefined {
  const told = (by: FoundRepeat): SpacingJump | undefined => {
    const jump = jumpOf(lattice, by);
    const isUp = offLattice(lattice.b, by) > slackOf(lattice, by);
    return jump === undefined ? undefined : { jump, isUp, by };
  };
  if (tells(tile, found)) return told(found);
  if (tile.pixels || tile.layers.reduce((sum, { shapes }) => sum + shapes.length, 0) > mostPaired)
    return undefined;
  // What was cropped one way alone is too small the other way to show a repeat: two copies that way show it.
  for (const by of [lattice.a, lattice.b]) {
    const pair = withCopy(tile, by);
    const [repeat] = trueRepeat(pair.layers, pair);
    if (!repeat || (repeat.share ?? 0) < wholly || !tells(pair, repeat)) continue;
    const again = told({ ...levelled(repeat, drawnSo), confidence: Math.min(repeat.confidence, offered) });
    if (again) return again;
  }
  return undefined;
}

/** Whether a repeat that was found is sure enough, and shows often enough, to hold the tile's borders against. */
export const tells = (shown: Size, repeat: FoundRepeat | undefined): repeat is FoundRepeat =>
  repeat !== undefined && repeat.confidence >= sureRepeat && showsAgain(shown, repeat);

/** Tiles of more shapes are not looked at with a copy: that would take longer than all the rest. */
const mostPaired = 1000;

/** What two copies show repeats wholly, but for its edges: stripes and keys of several widths do so in part. */
const wholly = 0.98;

/** A tile with its copy a step away, as one. */
function withCopy({ layers, width, height }: Tile, { x, y }: Point): Pick<Tile, 'layers'> & Size {
  const [first, second] = [
    { x: Math.max(0, -x), y: Math.max(0, -y) },
    { x: Math.max(0, x), y: Math.max(0, y) },
  ];
  return {
    width: width + Math.abs(x),
    height: height + Math.abs(y),
    layers: layers.map((layer) => ({
      ...layer,
      shapes: [first, second].flatMap((at) =>
        layer.shapes.map(({ contours }) => ({ contours: shifted(contours, at) })),
      ),
    })),
  };
}

/** The least share of a tile that has to show again a step away, for its art to be held against its borders. */
const leastAgain = 0.12;

/** Whether a tile shows enough of its art again by both steps of a lattice: what stands on a grid recurs in part by many. */
const showsAgain = ({ width, height }: Size, { a, b }: Lattice): boolean =>
  [a, b].every(
    ({ x, y }) => Math.max(0, 1 - Math.abs(x) / width) * Math.max(0, 1 - Math.abs(y) / height) >= leastAgain,
  );

/** The whole steps of a lattice nearest to a step. */
export const wholeStep = (p: Point, lattice: Lattice): { readonly i: number; readonly j: number } => {
  const { i, j } = coordinates(lattice, p);
  return { i: Math.round(i), j: Math.round(j) };
};

/** What a found step may be off adds up over the steps that make up a tile's. */
function slackOf({ a, b }: Lattice, found: Lattice): number {
  const counts = [a, b].flatMap((p) => Object.values(wholeStep(p, found)).map(Math.abs));
  return Math.max(joinTolerance, repeatTolerance) * Math.max(1, ...counts);
}
