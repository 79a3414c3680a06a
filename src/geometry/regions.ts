// Areas of a drawing: by fill rule, clipped, with curves kept.
import { combine } from './combine.ts';
import type { Contour, Shape } from './contour.ts';
import type { Fill } from './polygon-clip.ts';
import { segmentsOf, toShapes } from './rebuild.ts';

/** The areas that contours enclose under a fill rule, each an outer contour with its holes. Open contours are closed. */
export function filledShapes(contours: readonly Contour[], fill: Fill, tolerance: number): Shape[] {
  const sources = contours.map((contour) => ({ contour }));
  const regions = combine(sources, [], { operation: 'union', fill, tolerance });
  return toShapes(regions, segmentsOf(contours));
}

/** The parts of shapes that lie inside (or, for 'difference', outside) other shapes. */
export function clippedShapes(
  shapes: readonly Shape[],
  clip: readonly Shape[],
  operation: 'intersection' | 'difference',
  tolerance: number,
): Shape[] {
  const subject = shapes.flatMap((shape) => shape.contours);
  const window = clip.flatMap((shape) => shape.contours);
  const regions = combine(
    subject.map((contour) => ({ contour })),
    window.map((contour) => ({ contour })),
    { operation, fill: 'nonzero', tolerance },
  );
  return toShapes(regions, segmentsOf([...subject, ...window]));
}
