// Film cut off in the waste, at the outline of a piece with its run-off.
import type { Contour, Shape } from '../../geometry/contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { pointAt } from '../../geometry/segment.ts';
import { chordTolerance, precision } from '../../geometry/tolerance.ts';
import { withoutEndSpikes } from './end-spikes.ts';

/** Edges this near to the outline are its own, mm: cut curves are fitted anew. */
const endTouch = precision / 2;

/** Shapes as far as they lie in an outline, without the spikes that they would have along it. */
export function cutOff(shapes: readonly Shape[], border: Shape): Shape[] {
  if (shapes.length === 0) return [];
  const ends = new NearestFinder(border.contours);
  return clippedShapes(shapes, [border], 'intersection', chordTolerance).map(({ contours }) => ({
    contours: contours.map((contour) => blunted(contour, ends)),
  }));
}

function blunted(contour: Contour, ends: NearestFinder): Contour {
  const { closed, segments } = contour;
  const left = withoutEndSpikes(segments, (s) => ends.find(pointAt(s, 0.5), endTouch) !== undefined);
  return left === segments ? contour : { closed, segments: left };
}
