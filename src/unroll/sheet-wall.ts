// The flat wall of a sheet that lies on a coated blank.
import type { Band } from '../blank/flat-band.ts';
import { closePlaces, type Wall, wallWithin } from '../blank/wall.ts';
import { type FlatWall, flatWall } from './flat-wall.ts';
import { leastStretchCone, type RadiusAlong, strainAt } from './strain.ts';

/** Coats under the film make the wall larger; the sheet is sized on its own mid-thickness. */
export interface SheetBuild {
  /** Thickness of all coats under the film together, mm. */
  readonly coats: number;
  /** Thickness of the film, mm. */
  readonly film: number;
  /** Share by which the film may be gathered around without a pucker; about 0. */
  readonly gather: number;
  /** What the sheet is long for its length once it is laid, around: under 1 for film that gives when it is pulled; 1 if left out. */
  readonly around?: number;
}

/** A sheet on a band of a wall: its own flat wall, and what laying it asks of the film. */
export interface SheetOnWall {
  readonly flat: FlatWall;
  /** Strain of the film around the wall, at close places up the band: positive is stretched. 0 on a straight wall. */
  readonly strain: readonly { readonly along: number; readonly strain: number }[];
}

/**
 * The radius of the sheet's mid-thickness at a place of a band: the wall grows along its normal by the coats and half the film; less where the
 * film gives when it is laid.
 */
export const sheetRadiusAt = (
  wall: Wall,
  { coats, film, around = 1 }: SheetBuild,
  along: number,
  band: Pick<Band, 'from'>,
): number => {
  const { radius, lean } = wallWithin(wall, along, band);
  return around * (radius + (coats + film / 2) * Math.cos(lean));
};

/** The sheet's radius at close places along a band. */
export const sheetRadii = (wall: Wall, build: SheetBuild, band: Band): RadiusAlong[] =>
  closePlaces(wall, band).map((along) => ({ along, radius: sheetRadiusAt(wall, build, along, band) }));

/**
 * The sheet for a band, about a reference height. On a straight wall it is exact: the radius grows by thickness times
 * the cosine of the half angle, heights along the wall stay as they are (a sheet bent around keeps its length at
 * mid-thickness). On a wall that bends it is the cone that asks the least stretch of the film.
 */
export function sheetOnWall(wall: Wall, build: SheetBuild, band: Band, reference: number): SheetOnWall {
  if (wall.kind === 'straight') {
    // Shorter around and as long up: a cone of as much less slope, whose radii on the sheet stay what they are.
    const sine = (build.around ?? 1) * Math.sin(wall.straight.halfAngle);
    return { flat: flatWall(sheetRadiusAt(wall, build, reference, band), sine, reference), strain: [] };
  }
  const radii = sheetRadii(wall, build, band);
  const { cone } = leastStretchCone(radii, build.gather);
  return {
    flat: flatWall(cone.radius + reference * cone.sine, cone.sine, reference),
    strain: radii.map((place) => ({ along: place.along, strain: strainAt(cone, place) })),
  };
}

/** The bare cone that paper so thick is cut as for a band: a straight wall itself, else that of a sheet that does not gather. */
export function paperCone(
  wall: Wall,
  band: Band,
  paper: number,
): { readonly radius: number; readonly halfAngle: number } {
  if (wall.kind === 'straight') return { radius: wall.straight.radius, halfAngle: wall.straight.halfAngle };
  const { cone } = leastStretchCone(sheetRadii(wall, { coats: 0, film: paper, gather: 0 }, band), 0);
  const halfAngle = Math.asin(cone.sine);
  return { radius: cone.radius - (paper / 2) * Math.cos(halfAngle), halfAngle };
}
