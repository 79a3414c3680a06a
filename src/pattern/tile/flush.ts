// Sides drawn along the tile's border: rounding may have left them a hair beside it.
import type { Contour, Segment, Shape } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { withEnds } from '../../geometry/segment.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Art that ends on the border goes this much past it: copies overlap there, and rounding leaves no slit between them, mm. */
export const hair = 6e-5;

/** A hair past the border that a coordinate lies beside; undefined where it lies beside none. */
const borderBeside = (at: number, size: number): number | undefined => {
  if (Math.abs(at) <= joinTolerance) return -hair;
  return Math.abs(at - size) <= joinTolerance ? size + hair : undefined;
};

/** Where a straight side runs along a border, within rounding: the x or y that it is given. */
function flushOf(s: Segment | undefined, { width, height }: Size): Partial<Point> {
  if (s?.kind !== 'line') return {};
  const x = borderBeside(s.from.x, width);
  const y = borderBeside(s.from.y, height);
  return {
    ...(x !== undefined && borderBeside(s.to.x, width) === x ? { x } : {}),
    ...(y !== undefined && borderBeside(s.to.y, height) === y ? { y } : {}),
  };
}

function flushContour(contour: Contour, size: Size): Contour {
  const flush = contour.segments.map((s) => flushOf(s, size));
  if (flush.every(({ x, y }) => x === undefined && y === undefined)) return contour;
  const count = contour.segments.length;
  const nodes = contour.segments.map((s, i) => ({
    ...s.from,
    ...flush[(i + count - 1) % count],
    ...flush[i],
  }));
  return {
    closed: contour.closed,
    segments: contour.segments.map((s, i) => withEnds(s, nodes[i] ?? s.from, nodes[(i + 1) % count] ?? s.to)),
  };
}

/**
 * A shape whose straight sides along the tile's border lie a hair past it, so that copies drawn to meet there do: files
 * are rounded. Sides further off than that are left where they were drawn, and so is everything that only touches.
 */
export const flushShape = (shape: Shape, size: Size): Shape => ({
  contours: shape.contours.map((contour) => flushContour(contour, size)),
});
