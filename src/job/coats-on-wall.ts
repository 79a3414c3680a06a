// The coats of a job on its wall: how thick, how much of each, and what they make of the girth.
import {
  type CoatGrowth,
  coatGrowths,
  coatVolume,
  girthGrowth,
  isBetterMeasured,
  pouredThickness,
} from '../blank/coats.ts';
import type { Band } from '../blank/flat-band.ts';
import { type Wall, wallAt, wallLength } from '../blank/wall.ts';
import { wallArea } from '../blank/wall-area.ts';
import { type Finding, note } from '../finding.ts';
import type { Coat, JobCoat } from './resolved-job.ts';

/** A coat on its wall, as the report has it: mm, ml. */
export interface CoatReport extends CoatGrowth {
  /** What has to be mixed, with what is lost. */
  readonly volume: number;
}

export interface CoatsOnWall {
  /** Every coat with its thickness. */
  readonly coats: readonly Coat[];
  readonly reports: readonly CoatReport[];
}

/** Coats laid on the longest flat band, or on what each covers; girths are those in the middle of `band`. */
export function coatsOnWall(
  wall: Wall,
  given: readonly JobCoat[],
  { flat, band, film }: { readonly flat: Band; readonly band: Band; readonly film: number },
): CoatsOnWall {
  const top = wallLength(wall);
  const areaOf = ({ covers }: JobCoat): number => {
    const { from, to } = covers ?? flat;
    return wallArea(wall, { from: Math.min(from, top), to: Math.min(to, top) });
  };
  const coats = given.map((coat): Coat => {
    if ('thickness' in coat) return coat;
    const { volume, ...rest } = coat;
    return { ...rest, thickness: pouredThickness(volume, coat.loss ?? 0, areaOf(coat)) };
  });
  const middle = wallAt(wall, (band.from + band.to) / 2);
  const growths = coatGrowths(coats, { girth: 2 * Math.PI * middle.radius, lean: middle.lean, film });
  const ordered = [...coats.filter(({ over }) => !over), ...coats.filter(({ over }) => over)];
  const reports = growths.map((growth, i) => {
    const coat = ordered[i];
    return { ...growth, volume: coat ? coatVolume(coat.thickness, coat.loss ?? 0, areaOf(coat)) : 0 };
  });
  return { coats, reports };
}

/** When the coats under the film are known less well than a tape would tell (rule `coats-unsure`, a note). */
export function coatFindings(
  reports: readonly CoatReport[],
  lean: number,
  reading: number,
  file: string,
): Finding[] {
  const thickness = reports.filter(({ over }) => !over).reduce((sum, coat) => sum + coat.thickness, 0);
  const growth = girthGrowth(thickness, lean);
  if (!isBetterMeasured(growth, reading)) return [];
  const says = `make the girth grow by ${growth.toFixed(1)} mm, which a fifth more or less of coat (common practice, no source) leaves open by ${(growth / 5).toFixed(1)} mm: more than a reading does (${reading.toFixed(1)} mm); once they are cured, read the girth again rather than trust the sum, and make the job from a blank with those readings and no coats`;
  return [note('coats-unsure', { file, key: 'coats' }, says)];
}
