// The film of artwork: what of each layer stays, as areas that overlap nowhere.
import { type Box, boxCorners, boxesMeet, grow, hullBox } from '../../geometry/box.ts';
import { polygon, type Shape } from '../../geometry/contour.ts';
import { directed, tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { clippedShapes, filledShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import type { FilmLayer } from './art-faults.ts';

/** A layer's areas united: where they overlap or touch they are one piece. */
export const unitedShapes = (shapes: readonly Shape[]): Shape[] =>
  filledShapes(shapes.flatMap(directed), 'nonzero', chordTolerance);

export const unitedLayer = (layer: FilmLayer): FilmLayer => ({
  ...layer,
  shapes: unitedShapes(layer.shapes),
});

interface Frame {
  readonly width: number;
  readonly height: number;
}

/** A layer as far as it lies in the drawing's frame: past it nothing shows, and copies of a tile stand there. */
export function withinFrame(layer: FilmLayer, { width, height }: Frame): FilmLayer {
  const frame = { minX: 0, minY: 0, maxX: width, maxY: height };
  const border = { contours: [polygon(boxCorners(frame))] };
  const shapes = layer.shapes.flatMap((shape) => {
    const box = tightBox(shape.contours);
    if (isWithin(box, frame)) return [shape];
    return boxesMeet(box, frame) ? clippedShapes([shape], [border], 'intersection', chordTolerance) : [];
  });
  return { ...layer, shapes };
}

/** How far past its frame a place of a drawing is still told, mm: outlines are drawn on the frame itself. */
const besideFrame = 0.1;

/** Whether a place lies in a drawing's frame. */
export const isInFrame = ({ x, y }: Point, { width, height }: Frame): boolean =>
  x >= -besideFrame && y >= -besideFrame && x <= width + besideFrame && y <= height + besideFrame;

const isWithin = (box: Box, frame: Box): boolean =>
  box.minX >= frame.minX && box.minY >= frame.minY && box.maxX <= frame.maxX && box.maxY <= frame.maxY;

/** How far a mask goes on around artwork that is looked at without its template, mm. */
const maskMargin = 20;

/** The mask of a layer: a sheet well larger than the drawing, less the layer's areas. */
export function maskLayer(layer: FilmLayer, size: Frame): FilmLayer {
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
