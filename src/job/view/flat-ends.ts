// The two ends of a wrap as they meet at the seam, for whoever shows them side by side.
import { type Affine, compose, inverse } from '../../geometry/affine.ts';
import type { Point } from '../../geometry/point.ts';
import { turnMotion } from '../../unroll/flat-wall.ts';
import { onGuide } from './flat-place.ts';
import type { FlatPiece, FlatView } from './flat-view.ts';

export interface SeamEnds {
  /** The piece that begins at turn 0, and the one that ends at turn 1: of one piece the same. */
  readonly start: FlatPiece;
  readonly finish: FlatPiece;
  /** Carries the drawing of `finish` to where it lies at the seam in the drawing of `start`: rigid. */
  readonly motion: Affine;
  /** The place on the seam in the drawing of `start`, mm; and which way the seam runs up from it, radians, y down. */
  readonly at: Point;
  readonly up: number;
}

/** The ends at a height, mm along; undefined where none meet: in gores, and beside a handle. */
export function endsAtSeam({ pieces }: FlatView, along: number): SeamEnds | undefined {
  const here = pieces.filter(
    ({ place }) => place && along >= place.band.from - 1e-6 && along <= place.band.to + 1e-6,
  );
  const start = here.find(({ ends }) => ends?.starts);
  const finish = here.find(({ ends }) => ends?.finishes);
  if (!start?.place || !finish?.place) return undefined;
  const { wall, toFile } = start.place;
  const back = compose(inverse(finish.place.toFile), turnMotion(wall, -1));
  const at = onGuide(start.place, { turn: 0, along });
  const above = onGuide(start.place, { turn: 0, along: along + 1 });
  return {
    start,
    finish,
    motion: compose(back, toFile),
    at,
    up: Math.atan2(above.y - at.y, above.x - at.x),
  };
}
