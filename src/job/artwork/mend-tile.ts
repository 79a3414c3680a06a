// The tile of a job mended as it repeats: with its neighbours around it, so that its borders still meet.
import type { FilmLayer } from '../../cut/checks/art-faults.ts';
import type { CutLimits } from '../../cut/checks/limits.ts';
import { type Finding, look } from '../../finding.ts';
import { shifted } from '../../geometry/affine.ts';
import { type Box, boxCorners, boxOfPoints, grow, liesIn } from '../../geometry/box.ts';
import { type Contour, polygon, type Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { cross, type Point, subtract } from '../../geometry/point.ts';
import { clippedShapes, filledShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { type Lattice, stepsIn } from '../../pattern/lattice/lattice.ts';
import { frameOf, type PatternTile, periodOf, tilesThePlane } from '../../pattern/period/period.ts';
import type { FilmUse } from './fault-words.ts';
import { type LayerMend, largestMove, type MendNote, mendArt, mendNotes } from './mend-art.ts';

export interface MendedTile {
  readonly tile: PatternTile;
  /** The tile as it showed before, merged, and after: for the picture. */
  readonly before: readonly FilmLayer[];
  readonly after: readonly FilmLayer[];
  readonly notes: readonly MendNote[];
  readonly largestMove: number;
}

const inside = (shapes: readonly Shape[], box: Box): Shape[] =>
  clippedShapes(shapes, [{ contours: [polygon(boxCorners(box))] }], 'intersection', chordTolerance);

/** Whether a point lies in the window of a period: a parallelogram of straight lines. */
function isWithin({ segments }: Contour, p: Point): boolean {
  const sides = segments.map(({ from, to }) => cross(subtract(to, from), subtract(p, from)));
  return sides.every((side) => side >= 0) || sides.every((side) => side <= 0);
}

/**
 * Mends of one period: those told in the tile, or in the window of the period that is laid of it, and those that each copy tells at a place
 * past its own border, as of a gap across it. Of one kind, two that are a whole step apart within `near`, mm, are one.
 */
function oncePerPeriod(
  mends: readonly LayerMend[],
  lattice: Lattice,
  { size, window }: { readonly size: Box; readonly window: Contour | undefined },
  near: number,
): readonly LayerMend[] {
  const isOwn = ({ x, y }: Point) =>
    window ? isWithin(window, { x, y }) : x >= 0 && y >= 0 && x < size.maxX && y < size.maxY;
  // Farther out the border of what is mended with the tile makes faults of its own.
  const beside = grow(size, (around / 2) * near);
  const own = mends.filter(({ at }) => isOwn(at));
  const isTold = ({ kind, layer, at }: LayerMend): boolean =>
    own.some(
      (other) =>
        other.kind === kind &&
        other.layer === layer &&
        stepsIn(lattice, grow(boxOfPoints([subtract(other.at, at)]), near)).length > 0,
    );
  for (const mend of mends)
    if (!isOwn(mend.at) && liesIn(boxOfPoints([mend.at]), beside) && !isTold(mend)) own.push(mend);
  return own;
}

/** So many times the least width around a tile is mended with it: farther than one mend reaches the next. */
const around = 8;

/**
 * A tile mended. `limits`: as they are in the drawing, where it is laid smallest. Of a crop from which one period is laid all that it shows
 * is drawn anew by that period, and mended. A tile that does not fill the plane by its own steps can't be mended as it repeats: that is a
 * finding, and it is left as it is.
 */
export function mendTile(
  tile: PatternTile,
  lattice: Lattice,
  limits: CutLimits,
  use: FilmUse,
  file: string,
): MendedTile | Finding {
  const { window } = tile;
  if (!window && !tilesThePlane(lattice, tile))
    return look(
      'not-mended',
      { file },
      'can only be mended here where its tiles fill the plane edge to edge by their own steps; mend it by "inspect --mend" and name the mended file in the job',
    );
  const frame = frameOf(tile, lattice);
  const size = { minX: 0, minY: 0, maxX: frame.width, maxY: frame.height };
  const wide = grow(size, around * Math.max(limits.minWidth, limits.minGap));
  const repeated = tile.layers.map((layer): FilmLayer => {
    const copies = periodOf(layer.shapes, tile, lattice).flatMap(({ contour }) => {
      const box = tightBox([contour]);
      const reach = {
        minX: wide.minX - box.maxX,
        minY: wide.minY - box.maxY,
        maxX: wide.maxX - box.minX,
        maxY: wide.maxY - box.minY,
      };
      return stepsIn(lattice, reach).flatMap(({ at }) => shifted([contour], at));
    });
    const united = filledShapes(copies, 'nonzero', chordTolerance);
    return { ...layer, shapes: inside(united, wide) };
  });
  const mended = mendArt({ width: wide.maxX, height: wide.maxY, layers: repeated }, limits, use);
  const mends = oncePerPeriod(mended.mends, lattice, { size, window }, limits.minWidth);
  const shown = (layers: readonly FilmLayer[]) =>
    layers.map((layer) => ({ ...layer, shapes: inside(layer.shapes, size) }));
  return {
    tile: { ...tile, layers: mended.layers },
    before: shown(repeated),
    after: shown(mended.layers),
    notes: mendNotes(mends, limits, ({ x, y }) => ({ file, x, y })),
    largestMove: largestMove(mends),
  };
}
