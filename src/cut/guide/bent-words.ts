// Words drawn along lines that are not straight on the sheet.
import type { Contour } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';

/** Words carried over by a map, by their control points: over a letter the difference to the exact curve is not to be seen. */
export const bentWords = (drawn: readonly Contour[], map: (p: Point) => Point): Contour[] =>
  drawn.map(({ closed, segments }) => ({
    closed,
    segments: segments.map((s) =>
      s.kind === 'line'
        ? { kind: 'line', from: map(s.from), to: map(s.to) }
        : { kind: 'cubic', from: map(s.from), c1: map(s.c1), c2: map(s.c2), to: map(s.to) },
    ),
  }));
