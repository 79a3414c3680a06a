// The film of artwork: what of each layer stays, as areas that overlap nowhere.
import { type Box, boxCorners, boxesMeet, grow, hullBox } from '../../geometry/box.ts';
import { type Contour, polygon, reverseContour, type Shape } from '../../geometry/contour.ts';
import { directed, tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { clippedShapes, filledShapes } from '../../geometry/regions.ts';
import { boxesSideBySide } from '../../geometry/rings-apart.ts';
import { chordTolerance, precision } from '../../geometry/tolerance.ts';
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
  return { ...layer, shapes: groundAround(layer.shapes, polygon(boxCorners(grow(all, maskMargin)))) };
}

/** The sheet less areas well within it. Those that come near no other are its holes as they are: of a halftone, nearly all its dots. */
function groundAround(shapes: readonly Shape[], sheet: Contour): Shape[] {
  const boxes = shapes.map(({ contours }) => grow(hullBox(contours), precision));
  const [lone, others]: [Shape[], Shape[]] = [[], []];
  for (const set of boxesSideBySide(boxes))
    (set.length === 1 ? lone : others).push(...set.flatMap((i) => shapes.slice(i, i + 1)));
  const left = clippedShapes([{ contours: [sheet] }], others, 'difference', chordTolerance);
  const edge = hullBox([sheet]);
  const isOuter = ({ contours }: Shape): boolean => hullBox(contours.slice(0, 1)).minX === edge.minX;
  const alone = lone.map((shape) => directed(shape).map(reverseContour));
  const holes = alone.flatMap((contours) => contours.slice(0, 1));
  return [
    ...left.map((region) => (isOuter(region) ? { contours: [...region.contours, ...holes] } : region)),
    ...alone.flatMap((contours) => contours.slice(1).map((hole): Shape => ({ contours: [hole] }))),
  ];
}
