// From a place on the wall back to the tile it was drawn in.
import type { Tile } from '../../artwork/tile-layer.ts';
import { inverse, movePoint } from '../../geometry/affine.ts';
import { add, type Point } from '../../geometry/point.ts';
import type { WallPoint } from '../../unroll/flat-wall.ts';
import { type Closing, layOut } from '../lattice/closing.ts';
import { coordinates, type Lattice, step } from '../lattice/lattice.ts';
import type { Lay } from './lay.ts';

export interface LaidArt {
  readonly tile: Pick<Tile, 'width' | 'height' | 'turned'>;
  readonly lattice: Lattice;
  readonly closing: Closing;
  readonly lay: Lay;
}

/** Steps tried in each direction to bring a place onto the tile: a slanting lattice's own cell may lie beside it. */
const tried = [0, 1, -1, 2, -2] as const;

/** Where what lies at a place of the wall was drawn, mm in the tile, y down; of all its copies one on the tile. */
export function artPlace({ tile, lattice, closing, lay }: LaidArt, { turn, along }: WallPoint): Point {
  const laid = { x: turn * lay.around, y: lay.fromAlong(along) };
  const drawn = movePoint(inverse(layOut(closing, tile.height)), laid);
  const { i, j } = coordinates(lattice, drawn);
  const [right, up] = [Math.floor(i), Math.floor(j)];
  const isOnTile = ({ x, y }: Point) => x >= 0 && y >= 0 && x < tile.width && y < tile.height;
  const copy = (di: number, dj: number) => add(drawn, step(lattice, di - right, dj - up));
  const inTile = ({ x, y }: Point) => (tile.turned ? { x: tile.width - x, y: tile.height - y } : { x, y });
  // Mostly the first: the places of a net of many holes are looked up by the hundred thousand.
  for (const di of tried)
    for (const dj of tried) {
      const place = copy(di, dj);
      if (isOnTile(place)) return inTile(place);
    }
  return inTile(copy(0, 0));
}

/** How far apart two drawn places are once each may be moved by whole steps, mm drawn: the nearest of their copies. */
export function apartInArt(lattice: Lattice, p: Point, q: Point): number {
  const by = { x: q.x - p.x, y: q.y - p.y };
  const { i, j } = coordinates(lattice, by);
  const near = [0, 1, -1].flatMap((di) =>
    [0, 1, -1].map((dj) => {
      const back = step(lattice, di - Math.round(i), dj - Math.round(j));
      return Math.hypot(by.x + back.x, by.y + back.y);
    }),
  );
  return Math.min(...near);
}
