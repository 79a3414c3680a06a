// One period of the artwork: what a renderer would show of the tile, as contours that repeat by the lattice.
import type { Tile, TileLayer } from '../../artwork/tile.ts';
import { type Box, boxCorners, movedBox } from '../../geometry/box.ts';
import { type Contour, polygon, type Segment, type Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { type Lattice, stepsIn } from '../lattice/lattice.ts';
import {
  type BoxedShape,
  isInside,
  type PeriodContour,
  rounding,
  type Size,
  shapesCutBy,
} from '../tile/cut-shapes.ts';
import { flushShape, hair } from '../tile/flush.ts';
import { cleanPeriodOf } from './clean-period.ts';

/** A layer as it is laid. `period`: its contours, drawn mm, where they have been worked out already. */
export interface PatternLayer extends TileLayer {
  readonly period?: readonly PeriodContour[];
}

/**
 * A tile as it is laid. `window`: of a crop that shows more than one period, the border of the one that is laid. `gaps`: where
 * the drawing did not join itself, drawn mm, known before its layers were worked on; each so long, mm.
 */
export interface PatternTile extends Tile {
  readonly layers: readonly PatternLayer[];
  readonly window?: Contour;
  readonly gaps?: readonly { readonly layer: string; readonly at: Point; readonly length: number }[];
}

/** The contours of one period of a layer, drawn mm. */
export const periodOfLayer = (
  { shapes, period }: PatternLayer,
  tile: Size & Pick<PatternTile, 'window' | 'pixels'>,
  lattice: Lattice,
): readonly PeriodContour[] => period ?? periodOf(shapes, tile, lattice);

/** A tile with the period of each layer worked out: for all who look at it and lay it, piece by piece and try by try. */
export const withPeriods = (tile: PatternTile, lattice: Lattice): PatternTile => ({
  ...tile,
  layers: tile.layers.map((layer) => ({ ...layer, period: periodOfLayer(layer, tile, lattice) })),
});

const noBorders: ReadonlySet<number> = new Set();

/**
 * The contours of one layer's period, drawn mm. A shape that crosses the tile's border, and whose copies a step away
 * are drawn too, is taken whole, once; any other is cut at the border, as a renderer would show it.
 */
export function periodOf(
  shapes: readonly Shape[],
  tile: Size & Pick<PatternTile, 'window' | 'pixels'>,
  lattice: Lattice,
): PeriodContour[] {
  if (tile.window) return cleanPeriodOf(shapes, tile, lattice, tile.window);
  const tiles = tilesThePlane(lattice, tile);
  const frame = frameOf(tile, lattice);
  const drawn = tiles ? shapes.map((shape) => flushShape(shape, frame)) : shapes;
  const boxed = drawn.map((shape) => ({ shape, box: tightBox(shape.contours) }));
  const whole = boxed.filter(({ box }) => isInside(box, frame));
  const crossing = boxed.filter(({ box }) => !isInside(box, frame) && isSeen(box, frame));
  const { families, loose } = tiles
    ? familiesOf(crossing, frame, lattice)
    : { families: [], loose: crossing };
  return [
    ...[...whole, ...families].flatMap(({ shape }) =>
      shape.contours.map((contour) => ({ contour, borders: noBorders })),
    ),
    ...cutAtBorder(loose, frame),
  ];
}

const isSeen = (box: Box, { width, height }: Size): boolean =>
  box.maxX > rounding && box.maxY > rounding && box.minX < width - rounding && box.minY < height - rounding;

/**
 * The frame that copies of a tile are held to. Of a tile's size and its step only one is exact; where it fills the plane
 * they must be the same, or a slit is left along every border.
 */
export const frameOf = ({ width, height }: Size, lattice: Lattice): Size =>
  tilesThePlane(lattice, { width, height })
    ? { width: Math.abs(lattice.a.x), height: Math.abs(lattice.b.y) }
    : { width, height };

/** Whether copies of the tile's own rectangle, moved by the lattice, fill the plane once. */
export function tilesThePlane({ a, b }: Lattice, { width, height }: Size): boolean {
  const close = (one: number, other: number) => Math.abs(one - other) < rounding;
  const columns = close(Math.abs(a.x), width) && close(b.x, 0) && close(Math.abs(b.y), height);
  const rows = close(Math.abs(b.y), height) && close(a.y, 0) && close(Math.abs(a.x), width);
  return columns || rows;
}

/** Sort crossing shapes into families of copies; a family with a copy missing is loose. */
function familiesOf(
  crossing: readonly BoxedShape[],
  tile: Size,
  lattice: Lattice,
): { families: BoxedShape[]; loose: BoxedShape[] } {
  const families: BoxedShape[] = [];
  const loose: BoxedShape[] = [];
  const taken = new Set<BoxedShape>();
  for (const item of crossing) {
    if (taken.has(item)) continue;
    const copies = visibleCopies(item.box, tile, lattice).map((at) =>
      crossing.find((other) => !taken.has(other) && isCopy(item, other, at)),
    );
    if (copies.includes(undefined)) loose.push(item);
    else {
      families.push(item);
      for (const copy of copies) if (copy) taken.add(copy);
    }
    taken.add(item);
  }
  return { families, loose };
}

/** The steps, other than none, that leave some of the box in sight. */
function visibleCopies(box: Box, tile: Size, lattice: Lattice): Point[] {
  const reach = {
    minX: -box.maxX,
    minY: -box.maxY,
    maxX: tile.width - box.minX,
    maxY: tile.height - box.minY,
  };
  return stepsIn(lattice, reach)
    .filter(({ i, j }) => i !== 0 || j !== 0)
    .map(({ at }) => at)
    .filter((at) => isSeen(movedBox(box, at), tile));
}

const pointsOf = (s: Segment): Point[] => (s.kind === 'line' ? [s.from, s.to] : [s.from, s.c1, s.c2, s.to]);

/** Whether `other` is `item` moved by `at`, node for node, within what drawing programs round off. */
function isCopy(item: BoxedShape, other: BoxedShape, at: Point): boolean {
  const moved = movedBox(item.box, at);
  const near = (a: number, b: number) => Math.abs(a - b) <= joinTolerance;
  if (!near(moved.minX, other.box.minX) || !near(moved.maxY, other.box.maxY)) return false;
  if (item.shape.contours.length !== other.shape.contours.length) return false;
  return item.shape.contours.every((contour, c) => {
    const twin = other.shape.contours[c];
    return twin !== undefined && isSameContour(contour, twin, at);
  });
}

/** Nodes may be numbered from another start: combining areas does not keep where a contour began. */
function isSameContour(contour: Contour, twin: Contour, at: Point): boolean {
  const count = contour.segments.length;
  if (twin.segments.length !== count) return false;
  const [first] = contour.segments;
  if (!first) return false;
  const home = { x: first.from.x + at.x, y: first.from.y + at.y };
  const matches = (offset: number) =>
    contour.segments.every((s, i) => {
      const t = twin.segments[(i + offset) % count];
      if (!t || t.kind !== s.kind) return false;
      const there = pointsOf(t);
      return pointsOf(s).every((p, k) => {
        const q = there[k];
        return q !== undefined && distance({ x: p.x + at.x, y: p.y + at.y }, q) <= joinTolerance;
      });
    });
  return twin.segments.some((t, offset) => distance(t.from, home) <= joinTolerance && matches(offset));
}

/** Shapes cut at the tile's border, each with the border's own stretches marked. */
function cutAtBorder(shapes: readonly BoxedShape[], { width, height }: Size): PeriodContour[] {
  const viewport = polygon(boxCorners({ minX: -hair, minY: -hair, maxX: width + hair, maxY: height + hair }));
  return shapesCutBy(shapes, viewport);
}
