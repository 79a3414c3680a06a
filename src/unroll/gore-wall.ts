// A blank's wall as gores see it: the sheet's radius and slope up it, and how far it bends.
import { type Wall, wallAt, wallLength } from '../blank/wall.ts';
import type { GoreLevels, GoreWall } from './gores.ts';
import { type SheetBuild, sheetRadiusAt } from './sheet-wall.ts';

export interface BentGoreWall extends GoreWall {
  /**
   * What asks strain of a gore, 1/mm²: a smooth wall's Gaussian curvature. Between corners a wall has none, all of it
   * is at the corners; there it is what a gore with straight levels has to be bent by on the stretches beside them.
   */
  readonly curvature: (along: number) => number;
  readonly corners: readonly number[];
  /** Arcs can't pass a corner, where the cone they lie on changes at once. */
  readonly levels: GoreLevels;
}

/** Step of the central difference that gives the curvature, mm. */
const step = 0.05;

/**
 * The wall under a sheet, on the sheet's mid-thickness; past the foot and the lip corner it goes straight on. Distances
 * are the bare wall's own. Of a straight wall, all is on one cone.
 *
 * Sources: K = -r''/r of a surface of revolution by its arc length (any book on surfaces, from memory). With straight
 * levels an edge is sqrt(1 + (pi s / N)²) times as long as its middle line, so film has to give near (pi s / N)²/2 =
 * (s/r)² w²/8 (derived).
 */
export function goreWallOf(wall: Wall, build: SheetBuild): BentGoreWall {
  const top = wallLength(wall);
  const slopeAt = (along: number) => Math.sin(wallAt(wall, along).lean);
  const onWall = (along: number) => Math.min(top, Math.max(0, along));
  const at: GoreWall['at'] = (along) => {
    const slope = slopeAt(onWall(along));
    const beyond = along - onWall(along);
    return { radius: sheetRadiusAt(wall, build, onWall(along)) + slope * beyond, slope };
  };
  if (wall.kind === 'curved' && wall.curved.profile.kind === 'stepped')
    return {
      at,
      levels: 'straight',
      corners: wall.curved.profile.corners.slice(1, -1).map(({ along }) => along),
      curvature: (along) => {
        const { radius, slope } = at(along);
        return (slope / radius) ** 2;
      },
    };
  return {
    at,
    levels: 'arcs',
    corners: [],
    curvature: (along) => {
      const [low, high] = [onWall(along - step), onWall(along + step)];
      return (slopeAt(low) - slopeAt(high)) / ((high - low) * at(along).radius);
    },
  };
}
