// A wall moved out along its normal, by chords between close places: for the proof, apart from the formulas that sheets are made by.
import type { Band } from '../../blank/flat-band.ts';
import type { ProfilePoint } from '../../blank/profile.ts';
import { type Wall, wallAt, wallLength } from '../../blank/wall.ts';
import { wallRings } from '../../picture/rolled/rolled-rings.ts';
import type { GoreSurface } from '../../prove/written/rolled-gore.ts';
import { drawnAlong } from '../../unroll/grown-wall.ts';

/** mm up the moved wall itself, from the foot corner. */
export interface MovedWall {
  readonly surface: Omit<GoreSurface, 'count'>;
  /** Of each of its places, where on the bare wall it belongs, mm along. */
  readonly alongs: readonly number[];
}

/** How close together the places of a smooth wall are, mm. */
const spacing = 0.05;

interface MovedPoint {
  readonly along: number;
  readonly radius: number;
  readonly height: number;
  readonly lean: number;
}

function movedPoint(wall: Wall, along: number, off: number, lean: number): MovedPoint {
  const { radius, height } = wallAt(wall, along);
  return { along, lean, radius: radius + off * Math.cos(lean), height: height - off * Math.sin(lean) };
}

/** The mitres of a stepped wall, and between them the places that go straight out along the normal. */
function steppedPoints(wall: Wall, corners: readonly ProfilePoint[], off: number): MovedPoint[] {
  const mitres = wallRings(wall, off);
  return corners.flatMap((corner, i) => {
    const at = mitres.filter(({ along }) => along === corner.along);
    const next = corners[i + 1];
    const end = next && mitres.find(({ along }) => along === next.along);
    const start = at.at(-1);
    if (!next || !end || !start) return at;
    const length = next.along - corner.along;
    const straight = (along: number) => movedPoint(wall, along, off, corner.lean);
    const moved = (mitre: MovedPoint) => {
      const out = straight(mitre.along);
      return Math.hypot(mitre.radius - out.radius, mitre.height - out.height);
    };
    const [low, high] = [start, end].map((mitre) => Math.min(drawnAlong * moved(mitre), length / 2));
    const between = [corner.along + (low ?? 0), next.along - (high ?? 0)];
    return [...at, ...between.filter((along) => along > corner.along && along < next.along).map(straight)];
  });
}

export function movedWall(wall: Wall, off: number): MovedWall {
  const corners =
    wall.kind === 'curved' && wall.curved.profile.kind === 'stepped'
      ? wall.curved.profile.corners
      : undefined;
  const length = wallLength(wall);
  const steps = Math.ceil(length / spacing);
  const points = corners
    ? steppedPoints(wall, corners, off)
    : Array.from({ length: steps + 1 }, (_, i) => {
        const along = (length * i) / steps;
        return movedPoint(wall, along, off, wallAt(wall, along).lean);
      });
  let on = 0;
  const places = points.map(({ radius, height, lean }, i) => {
    const before = points[i - 1];
    if (before) on += Math.hypot(radius - before.radius, height - before.height);
    return { on, radius, slope: Math.sin(lean) };
  });
  return {
    surface: { places, levels: corners ? 'straight' : 'arcs' },
    alongs: points.map(({ along }) => along),
  };
}

/** From one list of heights to another that runs beside it; past its ends mm for mm. */
function beside(from: readonly number[], to: readonly number[], height: number): number {
  const last = from.length - 1;
  const next = from.findIndex((place) => place >= height);
  const i = Math.max(1, next < 0 ? last : next);
  const [low, high] = [from[i - 1] ?? 0, from[i] ?? 0];
  const [start, end] = [to[i - 1] ?? 0, to[i] ?? 0];
  if (height <= low) return start + height - low;
  if (height >= high) return end + height - high;
  return start + ((end - start) * (height - low)) / (high - low);
}

const onsOf = ({ surface: { places } }: MovedWall): number[] => places.map(({ on }) => on);

/** Where a place of the bare wall lies on the moved one, and the other way round. */
export const placeOnMoved = (moved: MovedWall, along: number): number =>
  beside(moved.alongs, onsOf(moved), along);
export const placeUnderMoved = (moved: MovedWall, on: number): number =>
  beside(onsOf(moved), moved.alongs, on);

export const bandOnMoved = (moved: MovedWall, { from, to }: Band): Band => ({
  from: placeOnMoved(moved, from),
  to: placeOnMoved(moved, to),
});
