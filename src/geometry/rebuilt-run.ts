// A run of a traced boundary with the curve it became.
import type { Segment } from './contour.ts';
import type { Point } from './point.ts';
import type { Run } from './traced.ts';

/** Where one run ends and the next begins, with the parameters of that place on each. */
export interface Joint {
  readonly point: Point;
  readonly before: number;
  readonly after: number;
}

/** A run with the curve it became, and the joints at its ends. */
export interface RebuiltRun {
  readonly run: Run;
  readonly segment: Segment;
  readonly start: Joint;
  readonly end: Joint;
}

/** Whether a parameter is that of a curve's own node. */
export const isWholeEnd = (t: number): boolean => t === 0 || t === 1;
