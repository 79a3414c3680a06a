// Book-matched tiles: every other one is the mirror image of its neighbour, so that whatever meets a border goes on.
import type { Tile } from '../../artwork/tile.ts';
import { type Affine, moveContour } from '../../geometry/affine.ts';
import { boxCorners } from '../../geometry/box.ts';
import { polygon, reverseContour, type Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { hair } from '../tile/flush.ts';

/** Which neighbours are mirrored: those beside a tile, or those above and below it too. */
export type MirroredWays = 'around' | 'both';

/** The tile and its mirror images as one tile that joins: twice as wide, and twice as high where both ways are mirrored. */
export function mirroredTile(tile: Tile, ways: MirroredWays): Tile {
  const { width, height } = tile;
  const beside: Affine = { a: -1, b: 0, c: 0, d: 1, e: 2 * width, f: 0 };
  const below: Affine = { a: 1, b: 0, c: 0, d: -1, e: 0, f: 2 * height };
  const layers = tile.layers.map((layer) => {
    const shown = shownIn(layer.shapes, width, height);
    const pair = [...shown, ...shown.map((shape) => imageOf(shape, beside))];
    const all = ways === 'around' ? pair : [...pair, ...pair.map((shape) => imageOf(shape, below))];
    return { ...layer, shapes: all };
  });
  return { width: 2 * width, height: ways === 'around' ? height : 2 * height, layers };
}

/** What shows of shapes in a tile; what was cut ends a hair past its border, so that images overlap and merge. */
function shownIn(shapes: readonly Shape[], width: number, height: number): Shape[] {
  const frame = boxCorners({ minX: -hair, minY: -hair, maxX: width + hair, maxY: height + hair });
  const inside = (shape: Shape): boolean => {
    const { minX, minY, maxX, maxY } = tightBox(shape.contours);
    return minX >= 0 && minY >= 0 && maxX <= width && maxY <= height;
  };
  const crossing = shapes.filter((shape) => !inside(shape));
  const cut = clippedShapes(crossing, [{ contours: [polygon(frame)] }], 'intersection', chordTolerance);
  return [...shapes.filter(inside), ...cut];
}

/** A mirror image, its contours turned round so that outer ones run the way they did. */
const imageOf = ({ contours }: Shape, mirror: Affine): Shape => ({
  contours: contours.map((contour) => reverseContour(moveContour(mirror, contour))),
});
