// A blank in the maker's words.
import type { Blank } from '../blank/blank.ts';
import type { Band } from '../blank/flat-band.ts';
import { flatBand } from '../blank/flat-band.ts';
import {
  bareRadiusAt,
  fitStraightWall,
  heightAt,
  isCylinder,
  type StraightWall,
} from '../blank/straight-wall.ts';
import { wallFindings } from '../blank/wall-findings.ts';
import type { Finding } from '../finding.ts';
import { formatLength, type Units } from '../lengths/length.ts';
import { type BlankReport, blankReport } from './report.ts';

/** Area of the wall between two heights along it, mm². Source: frustum, pi s (R + r), Machinery's Handbook, from memory. */
export const wallArea = (wall: StraightWall, { from, to }: Band): number =>
  Math.PI * (to - from) * (bareRadiusAt(wall, from) + bareRadiusAt(wall, to));

export interface BlankDescription {
  readonly report: BlankReport;
  readonly lines: readonly string[];
  readonly checks: readonly Finding[];
}

/** All that can be said of a blank. `file` is named in findings, `units` are those of the words. */
export function describeBlank(blank: Blank, file: string, units: Units): BlankDescription {
  const wall = fitStraightWall(blank);
  const flat = flatBand(wall, blank);
  const checks = wallFindings(blank, wall).map((found) => ({ ...found, where: { file, ...found.where } }));
  return { report: blankReport(wall, flat), lines: inWords(blank, wall, flat, units), checks };
}

/** Lines of plain words: form, flat band, girths with how sure they are, area and what a coat takes. */
function inWords(blank: Blank, wall: StraightWall, flat: Band, units: Units): string[] {
  // A reading in inches is shown to 0.001 in, in mm to 0.1 mm: finer would claim more than a tape can tell.
  const shown = (mm: number) => (units === 'mm' ? `${mm.toFixed(1)} mm` : `${(mm / 25.4).toFixed(3)} in`);
  const wider = wall.halfAngle > 0 ? 'lip' : 'foot';
  const form = isCylinder(wall)
    ? 'straight up and down: its wall lies flat as a rectangle'
    : `tapered, wider at the ${wider}: its wall leans ${Math.abs((wall.halfAngle * 180) / Math.PI).toFixed(2)} degrees and lies flat as part of a ring`;
  const area = wallArea(wall, flat);
  const { girthAt } = blankReport(wall, flat);
  return [
    `${blank.name}: ${form}`,
    `wall: ${shown(wall.length)} along from the foot corner to the lip corner (${shown(heightAt(wall, wall.length))} high)`,
    `film lies flat from ${shown(flat.from)} to ${shown(flat.to)} along the wall, a band of ${shown(flat.to - flat.from)}`,
    ...girthAt.map(
      ({ along, girth, u }) =>
        `girth at ${shown(along)} along: ${shown(girth)}, give or take ${shown(2 * u)} (19 times in 20)`,
    ),
    ...wall.residuals
      .filter(() => wall.residuals.length > 2)
      .map(
        ({ station, residual }) =>
          `reading ${station + 1} is ${formatLength(Math.abs(residual), 'mm')} ${residual < 0 ? 'under' : 'over'} the fitted wall`,
      ),
    `area of the flat band: ${(area / 100).toFixed(1)} cm²; a coat of 0.1 mm on it takes ${((area * 0.1) / 1000).toFixed(2)} ml, before what is lost`,
  ];
}
