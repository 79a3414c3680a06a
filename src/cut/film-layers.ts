// The film of artwork: what of each layer stays, as areas that overlap nowhere.
import { boxCorners, grow, hullBox } from '../geometry/box.ts';
import { polygon, type Shape } from '../geometry/contour.ts';
import { directed } from '../geometry/measure.ts';
import { clippedShapes, filledShapes } from '../geometry/regions.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import type { FilmLayer } from './art-faults.ts';

/** A layer's areas united: where they overlap or touch they are one piece. */
export const unitedShapes = (shapes: readonly Shape[]): Shape[] =>
  filledShapes(shapes.flatMap(directed), 'nonzero', chordTolerance);

export const unitedLayer = (layer: FilmLayer): FilmLayer => ({
  ...layer,
  shapes: unitedShapes(layer.shapes),
});

/** How far a mask goes on around artwork that is looked at without its template, mm. */
const maskMargin = 20;

/** The mask of a layer: a sheet well larger than the drawing, less the layer's areas. */
export function maskLayer(
  layer: FilmLayer,
  size: { readonly width: number; readonly height: number },
): FilmLayer {
  const box = hullBox(layer.shapes.flatMap(({ contours }) => contours));
  const all = {
    minX: Math.min(0, box.minX),
    minY: Math.min(0, box.minY),
    maxX: Math.max(size.width, box.maxX),
    maxY: Math.max(size.height, box.maxY),
  };
  const sheet = { contours: [polygon(boxCorners(grow(all, maskMargin)))] };
  return { ...layer, shapes: clippedShapes([sheet], layer.shapes, 'difference', chordTolerance) };
}
