// The coats of a job on its wall: how thick, how much of each, and what they make of the girth.
import {
  asLaid,
  type CoatGrowth,
  coatGrowths,
  coatVolume,
  girthGrowth,
  growthUncertainty,
  isBetterMeasured,
  oddCoat,
  pouredThickness,
  thicknessUnder,
} from '../../blank/coats.ts';
import type { Band } from '../../blank/flat-band.ts';
import { leastHold } from '../../blank/sure.ts';
import { type Wall, wallAt, wallLength } from '../../blank/wall.ts';
import { wallArea } from '../../blank/wall-area.ts';
import { type Finding, look, note, refuseIfAny, stop, type Where } from '../../finding.ts';
import { inMm } from '../../lengths/length.ts';
import type { Coat, JobCoat } from '../typed/material.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';

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

/** Where a coat goes that is not told what it covers: under all of the film's band, and on the flat bands that it touches. */
export function coatedBand(flatBands: readonly Band[], band: Band): Band {
  const touched = flatBands.filter(({ from, to }) => from < band.to && to > band.from);
  const bands = [band, ...touched];
  return {
    from: Math.min(...bands.map(({ from }) => from)),
    to: Math.max(...bands.map(({ to }) => to)),
  };
}

/**
 * Coats laid on `spread`, or on what each covers; girths are those in the middle of `band`.
 * @throws Refused, rules `covers-outside`, where a coat covers no part of the wall, and `coat-too-thick`.
 */
export function coatsOnWall(
  wall: Wall,
  given: readonly JobCoat[],
  {
    spread,
    band,
    film,
    file,
  }: { readonly spread: Band; readonly band: Band; readonly film: number; readonly file: TypedIn },
): CoatsOnWall {
  const top = wallLength(wall);
  const outside = given.flatMap(({ covers }, i) =>
    covers === undefined || covers.from < top
      ? []
      : [
          stop(
            'covers-outside',
            typedAt(file, `coats[${i}].covers.from`),
            `${inMm(covers.from)} is past the lip; the wall is ${inMm(top)} along`,
          ),
        ],
  );
  refuseIfAny(outside);
  const areaOf = ({ covers }: JobCoat): number => {
    const { from, to } = covers ?? spread;
    return wallArea(wall, { from: Math.min(from, top), to: Math.min(to, top) });
  };
  const coats = given.map((coat): Coat => {
    if ('thickness' in coat) return coat;
    const { volume, ...rest } = coat;
    return { ...rest, thickness: pouredThickness(volume, coat.loss ?? 0, areaOf(coat)) };
  });
  refuseIfAny(
    coats.flatMap((coat, i) =>
      coat.thickness > oddCoat.refused
        ? [stop('coat-too-thick', ...coatSays(given[i] ?? coat, i, coat, file))]
        : [],
    ),
  );
  const middle = wallAt(wall, (band.from + band.to) / 2);
  const growths = coatGrowths(coats, { girth: 2 * Math.PI * middle.radius, lean: middle.lean, film });
  const ordered = asLaid(coats);
  const reports = growths.map((growth, i) => {
    const coat = ordered[i];
    return { ...growth, volume: coat ? coatVolume(coat.thickness, coat.loss ?? 0, areaOf(coat)) : 0 };
  });
  return { coats, reports };
}

/** `coats-unsure` (note): the coats are known less well than a tape would tell. `coat-thick` (look): is it meant? */
export function coatFindings(
  given: readonly JobCoat[],
  { coats }: CoatsOnWall,
  { lean, reading, file }: { readonly lean: number; readonly reading: number; readonly file: TypedIn },
): Finding[] {
  const thick = coats.flatMap((coat, i) =>
    coat.thickness > oddCoat.asked ? [look('coat-thick', ...coatSays(given[i] ?? coat, i, coat, file))] : [],
  );
  const growth = girthGrowth(thicknessUnder(coats), lean);
  if (!isBetterMeasured(growth, reading)) return thick;
  const open = 2 * growthUncertainty(growth);
  const says = `the coats add ${inMm(growth)} of girth, give or take ${inMm(open)}, for nobody lays them evenly: once cured, read the girth again and use that instead of the coats`;
  // What an overlap has to hold on is gone by then: a wrap cut now may not close.
  const level = open > leastHold ? look : note;
  return [...thick, level('coats-unsure', typedAt(file, 'coats'), says)];
}

/** Where a coat that is too thick was typed, and what to say of it. */
function coatSays(
  given: JobCoat,
  index: number,
  { thickness }: Coat,
  file: TypedIn,
): readonly [Where, string] {
  const isPoured = 'volume' in given;
  const where = typedAt(file, `coats[${index}].${isPoured ? 'volume' : 'thickness'}`);
  return [where, `${isPoured ? `${given.volume} ml on this wall ` : ''}${thickCoatWords(thickness)}`];
}

/** What to say of coats thicker than is usual. */
export function thickCoatWords(thickness: number): string {
  const coat = `is a coat of ${inMm(thickness)}`;
  return thickness > oddCoat.refused
    ? `${coat}, and up to ${inMm(oddCoat.refused)} is worked out; check the unit, or measure the coated vessel and give that as the blank`
    : `${coat}, more than the ${inMm(oddCoat.asked)} that is usual; is it meant?`;
}
