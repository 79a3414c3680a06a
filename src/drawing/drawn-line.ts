// A path as its drawing has it, before areas are merged: what a blade would follow if it followed the drawing itself.
import type { Contour } from '../geometry/contour.ts';

export interface DrawnLine {
  /** Its id in the drawing, where it has one. */
  readonly id: string | undefined;
  /** `#rrggbb` of its fill or stroke. */
  readonly colour: string;
  /** Width of its stroke, mm, where it is no edge of a filled area but drawn with a pen. */
  readonly stroke?: number;
  /** mm, y down. */
  readonly contours: readonly Contour[];
}
