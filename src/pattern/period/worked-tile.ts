// Work on the layers of a tile that reaches past its borders, such as growing them: done once, on one period and as much of its
// neighbours as can matter, so that what it gives repeats and closes as the drawing does.

import { type Affine, inverse, moveContour, movePoint } from '../../geometry/affine.ts';
import { type Box, boxCorners, boxOfPoints, grow } from '../../geometry/box.ts';
import { type Contour, polygon, type Shape } from '../../geometry/contour.ts';
import { most } from '../../geometry/extremes.ts';
import { signedArea, spanOf, tightBox } from '../../geometry/measure.ts';
import { add, cross, type Point, scale, subtract } from '../../geometry/point.ts';
import { ringSegments } from '../../geometry/rebuild.ts';
import { sliverWidth } from '../../geometry/tolerance.ts';
import { coordinates, type Lattice } from '../lattice/lattice.ts';
import { type CellWindow, cellOf, type LaidPeriod, layPeriod } from '../tile/cell.ts';
import { type BoxedShape, type PeriodContour, shapesCutBy } from '../tile/cut-shapes.ts';
import { hair } from '../tile/flush.ts';
import { type PatternLayer, type PatternTile, periodOfLayer } from './period.ts';

/** A layer while it is worked on: areas that overlap nowhere, mm, y up. */
export interface WorkedLayer {
  readonly name: string;
  readonly colour: string;
  readonly shapes: readonly Shape[];
}

export interface TileWork {
  /** From the drawing to the size that the work is done at, y up. */
  readonly toSize: Affine;
  /** How far what is done at one place depends on others, mm at that size. */
  readonly reach: number;
  readonly work: (layers: readonly WorkedLayer[]) => readonly WorkedLayer[];
}

/** A motif up to this share of the period's longer step is taken whole; what is larger is parted at the period's border. */
const wholeShare = 0.6;

/** The border is put where no motif begins: somewhere in this first share of the period, which is worked on twice for that. */
const borderRoom = 0.05;

/** The tile with its layers as the work leaves them. Where the drawing does not join itself is kept in `gaps`. */
export function workedTile(
  tile: PatternTile,
  lattice: Lattice,
  { toSize, reach, work }: TileWork,
): PatternTile {
  const periods = tile.layers.map((layer) => layPeriod(periodOfLayer(layer, tile, lattice), lattice, toSize));
  const basis = reducedBasis(periods[0]?.lattice ?? lattice);
  const longest = Math.max(Math.hypot(basis.a.x, basis.a.y), Math.hypot(basis.b.x, basis.b.y));
  const largest = most(
    periods.flatMap(({ contours }) => contours.map(({ box }) => sizeOf(box))),
    0,
  );
  const whole = Math.min(largest + 2 * reach, wholeShare * longest);
  const valid = grow(boxOfPoints(cellCorners(basis, { i: 0, j: 0 }, 1 + borderRoom)), whole + hair);
  const shown = periods.map((period) => shownIn(period, grow(valid, reach)));
  const isOwn = (at: Point): boolean => isInCell(basis, at, { i: 0, j: 0 });
  const back = inverse(toSize);
  const worked = work(
    tile.layers.map(({ name, colour }, i) => ({ name, colour, shapes: shown[i]?.shapes ?? [] })),
  );
  return {
    ...tile,
    gaps: shown.flatMap(({ gaps }, layer) =>
      gaps
        .filter(({ at }) => isOwn(at))
        .map(({ at, length }) => ({
          layer: tile.layers[layer]?.name ?? '',
          at: movePoint(back, at),
          length,
        })),
    ),
    layers: worked.map(({ name, colour, shapes }): PatternLayer => {
      const period = periodFrom(shapes, { valid, basis, whole }).map(({ contour, borders }) => ({
        contour: moveContour(back, contour),
        borders,
      }));
      return { name, colour, period, shapes: period.map(({ contour }) => ({ contours: [contour] })) };
    }),
  };
}

const sizeOf = ({ minX, minY, maxX, maxY }: Box): number => Math.max(maxX - minX, maxY - minY);

/** The same lattice by its two shortest steps. Source: the reduction of Gauss and Lagrange, from memory. */
function reducedBasis(lattice: Lattice): Lattice {
  let { a, b } = lattice;
  for (let i = 0; i < 64; i++) {
    if (lengthOf(b) < lengthOf(a)) [a, b] = [b, a];
    const times = Math.round((a.x * b.x + a.y * b.y) / lengthOf(a) ** 2);
    if (times === 0) break;
    b = subtract(b, scale(a, times));
  }
  return cross(a, b) > 0 ? { a, b } : { a, b: scale(b, -1) };
}

const lengthOf = ({ x, y }: Point): number => Math.hypot(x, y);

interface Place {
  readonly i: number;
  readonly j: number;
}

/** The corners of a cell that begins at a place of the lattice, so many steps wide. */
function cellCorners({ a, b }: Lattice, { i, j }: Place, wide = 1): readonly Point[] {
  const from = add(scale(a, i), scale(b, j));
  const [u, v] = [scale(a, wide), scale(b, wide)];
  return [from, add(from, u), add(add(from, u), v), add(from, v)];
}

function isInCell(basis: Lattice, at: Point, from: Place): boolean {
  const { i, j } = coordinates(basis, at);
  return i >= from.i && i < from.i + 1 && j >= from.j && j < from.j + 1;
}

/** What of a period shows in a box, merged, and where its tile does not join. */
function shownIn(period: LaidPeriod, box: Box) {
  const contour = polygon(boxCorners(box));
  const window: CellWindow = { contour, sides: contour.segments.map(() => 'end') };
  const { rings, segmentOf, gaps } = cellOf(period, window);
  const regions = new Map<number, Contour[]>();
  for (const { region, boundary } of rings) {
    const segments = ringSegments(boundary.runs, segmentOf).map(({ segment }) => segment);
    const ring = { closed: true, segments };
    if (Math.abs(signedArea(ring)) < (sliverWidth * spanOf(ring)) / 2) continue;
    regions.set(region, [...(regions.get(region) ?? []), ring]);
  }
  return { shapes: [...regions.values()].map((contours): Shape => ({ contours })), gaps };
}

interface PeriodPlace {
  /** Where the work is not yet touched by what was left out. */
  readonly valid: Box;
  readonly basis: Lattice;
  /** What is no larger is taken whole, mm. */
  readonly whole: number;
}

/** One period of areas that repeat: motifs whole and once, and what is larger cut at the period's border. */
function periodFrom(shapes: readonly Shape[], { valid, basis, whole }: PeriodPlace): PeriodContour[] {
  const boxed = shapes.map((shape): BoxedShape => ({ shape, box: tightBox(shape.contours) }));
  const isWhole = ({ box }: BoxedShape): boolean =>
    sizeOf(box) <= whole &&
    box.minX > valid.minX &&
    box.minY > valid.minY &&
    box.maxX < valid.maxX &&
    box.maxY < valid.maxY;
  const motifs = boxed
    .filter(isWhole)
    .map((item) => ({ ...item, at: { x: item.box.minX, y: item.box.minY } }));
  const places = motifs.map(({ at }) => coordinates(basis, at));
  const from = { i: clearest(places.map(({ i }) => i)), j: clearest(places.map(({ j }) => j)) };
  const window = polygon(grownByHair(cellCorners(basis, from)));
  return [
    ...motifs
      .filter(({ at }) => isInCell(basis, at, from))
      .flatMap(({ shape }) => shape.contours.map((contour) => ({ contour, borders: new Set<number>() }))),
    ...shapesCutBy(
      boxed.filter((item) => !isWhole(item) && sizeOf(item.box) > whole),
      window,
    ),
  ];
}

/** A coordinate in the room for the border that is furthest from those of motifs, which are told up to whole steps. */
function clearest(coordinates: readonly number[]): number {
  const taken = coordinates.map((at) => at - Math.floor(at)).filter((at) => at < borderRoom);
  const stops = [0, ...taken.sort((p, q) => p - q), borderRoom];
  let best = { at: borderRoom / 2, room: 0 };
  for (const [k, stop] of stops.entries()) {
    const room = (stops[k + 1] ?? stop) - stop;
    if (room > best.room) best = { at: stop + room / 2, room };
  }
  return best.at;
}

/** A cell whose sides stand a hair further out, so that neighbouring periods overlap. */
function grownByHair(corners: readonly Point[]): readonly Point[] {
  const { minX, minY, maxX, maxY } = boxOfPoints(corners);
  const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const grown = 1 + (4 * hair) / Math.min(...sidesOf(corners));
  return corners.map((corner) => add(middle, scale(subtract(corner, middle), grown)));
}

/** The heights of a parallelogram over its two pairs of sides. */
function sidesOf([p, q, r]: readonly Point[]): readonly number[] {
  if (!p || !q || !r) return [1];
  const [u, v] = [subtract(q, p), subtract(r, q)];
  const area = Math.abs(cross(u, v));
  return [area / lengthOf(u), area / lengthOf(v)];
}
