// Artwork as lines to be shown on a screen: the engine's own reading of it, never the file itself.
import { writePathData } from '../../drawing/path-data.ts';
import type { Inspected } from './inspect.ts';

export interface ArtView {
  /** mm */
  readonly width: number;
  readonly height: number;
  /** Areas of one colour may lie over one another: each has path data of its own. */
  readonly layers: readonly {
    readonly name: string;
    readonly colour: string;
    readonly areas: readonly string[];
  }[];
}

/** Screens show no more than this many places to the mm. */
const steps = 1000;

export const artViewOf = ({ art }: Pick<Inspected, 'art'>): ArtView => ({
  width: art.width,
  height: art.height,
  layers: art.layers.map(({ name, colour, shapes }) => ({
    name,
    colour,
    areas: shapes.map(({ contours }) => writePathData(contours, steps)),
  })),
});
