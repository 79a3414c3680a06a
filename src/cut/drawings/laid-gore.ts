// A gore where it lies among the others.
import type { Affine } from '../../geometry/affine.ts';
import type { Contour } from '../../geometry/contour.ts';
import type { GoreOptions } from '../../unroll/gores.ts';

/** A gore on the sheet: its outline in its own drawing, and where that stands. */
export interface LaidGore {
  readonly number: number;
  readonly own: Contour;
  readonly options: GoreOptions;
  readonly place: Affine;
}
