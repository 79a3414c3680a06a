// The flat wall of a sheet that lies on a coated blank.
import { bareRadiusAt, type StraightWall } from '../blank/straight-wall.ts';
import { type FlatWall, flatWall } from './flat-wall.ts';

/** Coats under the film make the wall larger; the sheet is sized on its own mid-thickness. */
export interface SheetBuild {
  /** Thickness of all coats under the film together, mm. */
  readonly coats: number;
  /** Thickness of the film, mm. */
  readonly film: number;
}

/**
 * The wall grows along its normal, so its radius grows by thickness times the cosine of the half angle, while heights
 * along the wall stay as they are. A sheet bent around keeps its length at mid-thickness (neutral line of thin sheet).
 */
export function sheetWall(wall: StraightWall, { coats, film }: SheetBuild, reference: number): FlatWall {
  const growth = (coats + film / 2) * Math.cos(wall.halfAngle);
  return flatWall(bareRadiusAt(wall, reference) + growth, Math.sin(wall.halfAngle), reference);
}
