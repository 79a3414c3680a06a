// A blank's wall as gores see it: the sheet's radius and slope up it, and how far it bends.
import type { Wall } from '../blank/wall.ts';
import type { GoreLevels, GoreWall } from './gores.ts';
import { type GrownWall, grownWall } from './grown-wall.ts';
import type { SheetBuild } from './sheet-wall.ts';

/** Places and distances on it are the sheet's own, mm up its mid-thickness. */
export interface BentGoreWall extends GoreWall, Pick<GrownWall, 'toGrown' | 'toBare' | 'corners'> {
  /**
   * What asks strain of a gore, 1/mm²: a smooth wall's Gaussian curvature. Between corners a wall has none, all of it
   * is at the corners; there it is what a gore with straight levels has to be bent by on the stretches beside them.
   */
  readonly curvature: (on: number) => number;
  /** Arcs can't pass a corner, where the cone they lie on changes at once. */
  readonly levels: GoreLevels;
}

/** Step of the central difference that gives the curvature, mm. */
const step = 0.05;

/**
 * The wall under a sheet, on the sheet's mid-thickness; past the foot and the lip corner it goes straight on. Of a
 * straight wall, all is on one cone.
 *
 * Sources: K = -r''/r of a surface of revolution by its arc length (any book on surfaces, from memory). With straight
 * levels an edge is sqrt(1 + (pi s / N)²) times as long as its middle line, so film has to give near (pi s / N)²/2 =
 * (s/r)² w²/8 (derived).
 */
export function goreWallOf(wall: Wall, { coats, film }: SheetBuild): BentGoreWall {
  const { at, toGrown, toBare, length, corners } = grownWall(wall, coats + film / 2);
  const own = { at, toGrown, toBare, corners };
  if (wall.kind === 'curved' && wall.curved.profile.kind === 'stepped')
    return {
      ...own,
      levels: 'straight',
      curvature: (on) => {
        const { radius, slope } = at(on);
        return (slope / radius) ** 2;
      },
    };
  return {
    ...own,
    levels: 'arcs',
    curvature: (on) => {
      const [low, high] = [Math.max(0, on - step), Math.min(length, on + step)];
      return (at(low).slope - at(high).slope) / ((high - low) * at(on).radius);
    },
  };
}
