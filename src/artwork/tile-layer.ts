// A tile: the artwork of one period, as layers of areas in mm.
import { type Affine, moveContour } from '../geometry/affine.ts';
import type { Shape } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';

export interface TileLayer {
  /** The layer's name in files: its colour. */
  readonly name: string;
  /** `#rrggbb` */
  readonly colour: string;
  readonly shapes: readonly Shape[];
}

/** The pixels of a tile, rows from the top left, red, green and blue; and how large one is, mm. */
export interface TilePixels {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
  readonly pixel: Point;
}

/** Drawn mm, y down, the top left corner of what a renderer would show at the origin. Shapes may reach past the edges. */
export interface Tile {
  readonly width: number;
  readonly height: number;
  readonly layers: readonly TileLayer[];
  /** Of a picture that does not go on across its own borders: what it was traced from. */
  readonly pixels?: TilePixels;
  /** Of a picture whose pixels go on across its borders: film that ends on them was drawn up to them. */
  readonly goesOn?: true;
  /** Of a picture: edges that were traced of it stand within so much of where it shows them, mm. */
  readonly grain?: number;
  /** Whether it stands on its head: places of the drawing are then told from the other corner. */
  readonly turned?: true;
}

/** Shapes moved, each with its holes. */
const moved = (shapes: readonly Shape[], move: Affine): readonly Shape[] =>
  shapes.map((shape) => ({
    ...shape,
    contours: shape.contours.map((contour) => moveContour(move, contour)),
  }));

/** Layers turned half round about a point that lies half so far right and down as `across` and `down`. */
export const halfTurned = <L extends { readonly shapes: readonly Shape[] }>(
  layers: readonly L[],
  { across, down }: { readonly across: number; readonly down: number } = { across: 0, down: 0 },
): readonly L[] =>
  layers.map((layer) => ({
    ...layer,
    shapes: moved(layer.shapes, { a: -1, b: 0, c: 0, d: -1, e: across, f: down }),
  }));

function turnedPixels({ rgb, ...size }: TilePixels): TilePixels {
  const count = size.width * size.height;
  return { ...size, rgb: rgb.map((_, i) => rgb[3 * (count - 1 - Math.floor(i / 3)) + (i % 3)] ?? 0) };
}

/** The tile on its head. It repeats by the same steps: turned half round, a lattice is itself. */
export const turnedTile = (tile: Tile): Tile => ({
  ...tile,
  layers: halfTurned(tile.layers, { across: tile.width, down: tile.height }),
  ...(tile.pixels ? { pixels: turnedPixels(tile.pixels) } : {}),
  turned: true,
});
