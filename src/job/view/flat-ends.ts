// The two ends of a wrap as they meet at the seam, for whoever shows them side by side.
import { type Affine, compose, inverse } from '../../geometry/affine.ts';
import { add, distance, type Point, scale, subtract } from '../../geometry/point.ts';
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
  /** What `start` covers, as path data in its drawing: all that lies right of the seam, or where that winds, its own outline. */
  readonly covered: string;
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
    covered: start.ends?.winds ? outlineOf(start) : rightOf(at, above),
  };
}

const outlineOf = ({ groups }: FlatPiece): string => groups.find(({ role }) => role === 'outline')?.d ?? '';

/** Past any piece, mm. */
const far = 1e4;

/** All that lies right of a line that runs up, mm, y down. */
function rightOf(at: Point, above: Point): string {
  const up = scale(subtract(above, at), far / distance(above, at));
  const right = { x: -up.y, y: up.x };
  const ends = [add(at, up), subtract(at, up)] as const;
  const corners = [...ends, add(ends[1], right), add(ends[0], right)];
  return `M${corners.map(({ x, y }) => `${x} ${y}`).join('L')}Z`;
}
