// A tile: the artwork of one period, as layers of areas in mm.
import type { Shape } from '../geometry/contour.ts';

export interface TileLayer {
  /** The layer's name in files: its colour. */
  readonly name: string;
  /** `#rrggbb` */
  readonly colour: string;
  readonly shapes: readonly Shape[];
}

/** Drawn mm, y down, the top left corner of what a renderer would show at the origin. Shapes may reach past the edges. */
export interface Tile {
  readonly width: number;
  readonly height: number;
  readonly layers: readonly TileLayer[];
}
