// Artwork brought to a stated size.
import { moveContour } from '../geometry/affine.ts';
import type { Tile } from './tile.ts';

/** The tile drawn so wide, mm, its proportions kept. */
export function sizedTile(tile: Tile, across: number): Tile {
  const by = across / tile.width;
  const m = { a: by, b: 0, c: 0, d: by, e: 0, f: 0 };
  return {
    width: across,
    height: tile.height * by,
    layers: tile.layers.map((layer) => ({
      ...layer,
      shapes: layer.shapes.map(({ contours }) => ({
        contours: contours.map((contour) => moveContour(m, contour)),
      })),
    })),
  };
}
