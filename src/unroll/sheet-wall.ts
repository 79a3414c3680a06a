// The flat wall of a sheet that lies on a coated blank.
import type { Band } from '../blank/flat-band.ts';
import { closePlaces, type Wall, wallWithin } from '../blank/wall.ts';
import { type FlatWall, flatWall } from './flat-wall.ts';
import { type GrownWall, grownWall } from './grown-wall.ts';
import { leastStretchCone, type RadiusAlong, strainAt, widestBand } from './strain.ts';

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

/** Between a place of the bare wall, mm `along`, and the same place on the sheet's own surface, mm `on` it. */
export type SheetLengths = Pick<GrownWall, 'toGrown' | 'toBare'>;

/** A sheet on a band of a wall, in its own lengths: its flat wall, and what laying it asks of the film. */
export interface SheetOnWall {
  /** Heights on it are mm on. */
  readonly flat: FlatWall;
  /** The band, mm on: coats make a wall that bulges longer. */
  readonly band: Band;
  /** Strain of the film around the wall, at close places up the band, mm along: positive is stretched. 0 on a straight wall. */
  readonly strain: readonly { readonly along: number; readonly strain: number }[];
}

/** The surface on which a sheet's middle lies. */
export const sheetSurface = (wall: Wall, { coats, film }: SheetBuild): GrownWall =>
  grownWall(wall, coats + film / 2);

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

/** The sheet's radius at close places of a band, which is mm along; the places are mm on. */
export function sheetRadii(wall: Wall, build: SheetBuild, band: Band): RadiusAlong[] {
  const surface = sheetSurface(wall, build);
  return closePlaces(wall, band).map((along) => {
    const on = surface.toGrown(along);
    return { along: on, radius: (build.around ?? 1) * surface.at(on).radius };
  });
}

/** The widest part of a band, mm along, that one piece of film can take. */
export function widestOnWall(
  wall: Wall,
  build: SheetBuild,
  band: Band,
  gives: Parameters<typeof widestBand>[1],
): Band | undefined {
  const { toBare } = sheetSurface(wall, build);
  const widest = widestBand(sheetRadii(wall, build, band), gives);
  return widest && { from: toBare(widest.from), to: toBare(widest.to) };
}

/**
 * The sheet for a band, about its middle. On a straight wall it is exact: the radius grows by thickness times
 * the cosine of the half angle, heights along the wall stay as they are (a sheet bent around keeps its length at
 * mid-thickness). On a wall that bends it is the cone that asks the least stretch of the film.
 */
export function sheetOnWall(wall: Wall, build: SheetBuild, { from, to }: Band): SheetOnWall {
  const { toGrown } = sheetSurface(wall, build);
  const band = { from: toGrown(from), to: toGrown(to) };
  const middle = (band.from + band.to) / 2;
  if (wall.kind === 'straight') {
    // Shorter around and as long up: a cone of as much less slope, whose radii on the sheet stay what they are.
    const sine = (build.around ?? 1) * Math.sin(wall.straight.halfAngle);
    const flat = flatWall(sheetRadiusAt(wall, build, middle, band), sine, middle);
    return { flat, band, strain: [] };
  }
  const radii = sheetRadii(wall, build, { from, to });
  const { cone } = leastStretchCone(radii, build.gather);
  return {
    flat: flatWall(cone.radius + middle * cone.sine, cone.sine, middle),
    band,
    strain: closePlaces(wall, { from, to }).map((along, i) => {
      const place = radii[i];
      return { along, strain: place ? strainAt(cone, place) : 0 };
    }),
  };
}

/** The cone that touches the sheet's surface at a height of it, mm on, about that height. */
export function touchingCone(wall: Wall, build: SheetBuild, on: number): FlatWall {
  const { radius, slope } = sheetSurface(wall, build).at(on);
  const { around = 1 } = build;
  return flatWall(around * radius, around * slope, on);
}

/** The bare cone that paper so thick is cut as for a band: a straight wall itself, else that of a sheet that does not gather. */
export function paperCone(
  wall: Wall,
  band: Band,
  paper: number,
): { readonly radius: number; readonly halfAngle: number } {
  if (wall.kind === 'straight') return { radius: wall.straight.radius, halfAngle: wall.straight.halfAngle };
  const build = { coats: 0, film: paper, gather: 0 };
  // It is held against the bare wall, so it is told by the bare wall's lengths.
  const radii = closePlaces(wall, band).map((along) => ({
    along,
    radius: sheetRadiusAt(wall, build, along, band),
  }));
  const { cone } = leastStretchCone(radii, 0);
  const halfAngle = Math.asin(cone.sine);
  return { radius: cone.radius - (paper / 2) * Math.cos(halfAngle), halfAngle };
}
