// Places on curves, close enough together that none of them strays between two.
import type { Contour, Segment } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { pointAt } from '../../geometry/segment.ts';

/** Places looked at on a straight segment and on a curve, its start among them. */
const onLine = 16;
const onCurve = 8;

/** Points of a segment in even steps of its parameter, both ends among them; `times` as many where chords between them count. */
export function samplesOf(segment: Segment, times = 1): Point[] {
  const count = times * (segment.kind === 'line' ? onLine : onCurve);
  return Array.from({ length: count + 1 }, (_, i) => pointAt(segment, i / count));
}

/** Points of contours, every node among them. */
export const samplesOn = (contours: readonly Contour[], times = 1): Point[] =>
  contours.flatMap(({ segments }) => segments.flatMap((segment) => samplesOf(segment, times)));
