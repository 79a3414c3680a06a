// Contours that cross nothing, themselves included: an area already, with no combining.
import { chorded } from './chords.ts';
import type { Contour, Shape } from './contour.ts';
import { directed, signedArea, spanOf } from './measure.ts';
import { crossesNothing, mostHeld } from './simple-ring.ts';
import { chordTolerance, sliverWidth } from './tolerance.ts';

/** A side shorter than this, in tolerances, may vanish in rounding. */
const leastSide = 0.01;

/**
 * The area of a single closed contour whose chords neither cross nor touch each other, whatever the fill rule: the contour itself,
 * node for node. Undefined where it is none such, or it is not quickly told.
 */
export function plainShape(contours: readonly Contour[], tolerance: number): Shape | undefined {
  const [contour] = contours;
  if (contours.length !== 1 || !contour?.closed || contour.segments.length > mostHeld) return undefined;
  const { x, y } = chorded(contour, tolerance);
  if (x.length < 3 || x.length > mostHeld || !crossesNothing(x, y, leastSide * tolerance)) return undefined;
  const isFilm =
    2 * Math.abs(signedArea(contour)) > ((sliverWidth * tolerance) / chordTolerance) * spanOf(contour);
  return isFilm ? { contours: directed({ contours }) } : undefined;
}
