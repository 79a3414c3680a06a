// Areas of a drawing: by fill rule, clipped, with curves kept.
import { chorded, type Source } from './chords.ts';
import { combine } from './combine.ts';
import type { Contour, Shape } from './contour.ts';
import type { Fill } from './polygon-clip.ts';
import { segmentsOf, toShapes } from './rebuild.ts';
import { chordTolerance, sliverWidth } from './tolerance.ts';

const inPlace = (contours: readonly Contour[], tolerance: number): Source[] =>
  contours.map((contour) => ({ chords: chorded(contour, tolerance), by: { x: 0, y: 0 } }));

/** Art in units other than mm has its tolerance in them, and its slivers with it. */
const sliverFor = (tolerance: number): number => (sliverWidth * tolerance) / chordTolerance;

/** The areas that contours enclose under a fill rule, each an outer contour with its holes. Open contours are closed. */
export function filledShapes(contours: readonly Contour[], fill: Fill, tolerance: number): Shape[] {
  const sources = inPlace(contours, tolerance);
  const regions = combine(sources, [], { operation: 'union', fill, tolerance });
  return toShapes(regions, segmentsOf(sources), sliverFor(tolerance));
}

/** What contours enclose by the even-odd rule, as far as it lies in a window. */
export function filledWithin(contours: readonly Contour[], window: Contour, tolerance: number): Shape[] {
  const [subject, frame] = [inPlace(contours, tolerance), inPlace([window], tolerance)];
  const regions = combine(subject, frame, { operation: 'intersection', fill: 'evenodd', tolerance });
  return toShapes(regions, segmentsOf([...subject, ...frame]), sliverFor(tolerance));
}

/** The parts of shapes that lie inside (or, for 'difference', outside) other shapes. */
export function clippedShapes(
  shapes: readonly Shape[],
  clip: readonly Shape[],
  operation: 'intersection' | 'difference',
  tolerance: number,
): Shape[] {
  const contoursOf = (from: readonly Shape[]) => from.flatMap((shape) => shape.contours);
  const subject = inPlace(contoursOf(shapes), tolerance);
  const window = inPlace(contoursOf(clip), tolerance);
  const regions = combine(subject, window, { operation, fill: 'nonzero', tolerance });
  return toShapes(regions, segmentsOf([...subject, ...window]), sliverFor(tolerance));
}
