// Every reading of a blank as one row of the fit of its straight wall.

import type { Observation } from '../geometry/regression.ts';
import type { Blank, Station } from './blank.ts';
import { type Cone, climbUncertainty, type Miss, type PaperFit, paperMiss } from './paper-miss.ts';
import { girthReading, measuredGirth, placeReading } from './stations.ts';

/** Least standard uncertainty reckoned with, mm: a reading said to be perfect still needs a finite weight. */
export const leastReading = 1e-6;

/** Which reading a row stands for; `pair` is a height and an along of one place against each other. */
export interface RowName {
  readonly of: 'station' | 'pair' | 'foot' | 'lip' | 'climb';
  /** Index of the station, or of the fit. */
  readonly index: number;
}

/** A reading less what the wall says, mm, and how that changes: `share` a mm of radius, `at` a radian of lean. */
export interface Row extends Observation {
  readonly name: RowName;
  readonly share: number;
}

export const isSameRow = (a: RowName, b: RowName): boolean => a.of === b.of && a.index === b.index;

/** Index of the first fit that still counts: one that missed by more than its reading replaces all before it. */
export const firstFit = ({ fits = [] }: Blank): number | undefined => {
  const last = fits.findLastIndex(({ replaces }) => replaces);
  return last < 0 ? undefined : last;
};

/** The rows that count for the wall of this blank, about an estimate of it. */
export function rowsOf(blank: Blank, cone: Cone): readonly Row[] {
  const first = firstFit(blank);
  const girths =
    first === undefined ? blank.stations.map((station, i) => girthRow(station, i, blank, cone)) : [];
  const fits = (blank.fits ?? []).flatMap((fit, i) => (i < (first ?? 0) ? [] : fitRows(fit, i, cone)));
  return [...girths, ...pairRows(blank, cone), ...fits];
}

export const radiusOf = (station: Station, tape: number): number =>
  measuredGirth(station, tape) / (2 * Math.PI);

/** A station's girth against the wall's there, as radii. */
export function girthRow(station: Station, index: number, blank: Blank, { radius, halfAngle }: Cone): Row {
  const { radius: wider, perRadian } = widening(station, halfAngle);
  return {
    name: { of: 'station', index },
    share: 1,
    at: perRadian,
    value: radiusOf(station, blank.tape) - radius - wider,
    weight: 1 / radiusVariance(station, blank, halfAngle),
  };
}

/** How much wider than at the foot a leaning wall is at a station, mm, and how that changes with the lean. */
export function widening(
  { position }: Station,
  halfAngle: number,
): { readonly radius: number; readonly perRadian: number } {
  const [sin, cos] = [Math.sin(halfAngle), Math.cos(halfAngle)];
  if (position.along !== undefined) {
    const place = alongOf({ position }, halfAngle);
    const moved = sin * ((2 * cos * place - position.mm) / (1 + cos * cos));
    return { radius: place * sin, perRadian: place * cos + moved * sin };
  }
  if (position.kind === 'along') return { radius: position.mm * sin, perRadian: position.mm * cos };
  return { radius: position.mm * Math.tan(halfAngle), perRadian: position.mm / (cos * cos) };
}

/**
 * Where a station is up a wall of this lean, mm. Read both ways, it is the mean of the along and of what the height
 * makes of it, weighted by their variances: that mean is independent of their difference, which tells the lean.
 */
export function alongOf({ position }: Pick<Station, 'position'>, halfAngle: number): number {
  const cos = Math.cos(halfAngle);
  if (position.along !== undefined) return (position.along + position.mm * cos) / (1 + cos * cos);
  return position.kind === 'along' ? position.mm : position.mm / cos;
}

/** Variance of a station's radius, mm²: of its reading, and of its height by how fast the wall widens there. */
export function radiusVariance(station: Station, blank: Blank, halfAngle: number): number {
  const reading = girthReading(station, Math.max(blank.reading, leastReading)) / (2 * Math.PI);
  return reading ** 2 + (radiusPerPlace(station, halfAngle) * blank.heightReading) ** 2;
}

function radiusPerPlace({ position }: Station, halfAngle: number): number {
  if (position.along !== undefined) return Math.sin(halfAngle) / Math.hypot(1, Math.cos(halfAngle));
  return position.kind === 'along' ? Math.sin(halfAngle) : Math.tan(halfAngle);
}

/** Heights against alongs of one place: along times the cosine of the lean is the height. Once for a typed station. */
function pairRows(blank: Blank, { halfAngle }: Cone): Row[] {
  const [sin, cos] = [Math.sin(halfAngle), Math.cos(halfAngle)];
  return blank.stations.flatMap(({ position, typed }, index) => {
    const before = blank.stations[index - 1];
    const isToldBefore = typed !== undefined && before?.typed?.station === typed.station;
    if (position.along === undefined || isToldBefore) return [];
    return [
      {
        name: { of: 'pair' as const, index },
        share: 0,
        at: -position.along * sin,
        value: position.mm - position.along * cos,
        weight: 1 / (placeReading(blank) ** 2 * (1 + cos * cos)),
      },
    ];
  });
}

/** Steps of the differences that stand in for derivatives of what a template misses by: mm and radians. */
const [radiusStep, leanStep] = [1e-3, 1e-5];

const fitRows = (fit: PaperFit, index: number, { radius, halfAngle }: Cone): readonly Row[] =>
  missRows(fit, index, (wider, lean) =>
    paperMiss(fit, { radius: radius + wider, halfAngle: halfAngle + lean }),
  );

/** The rows of a paper fit; `missAt`: what it must miss by where the wall is so much wider, mm, and leans so much more. */
export function missRows(
  fit: PaperFit,
  index: number,
  missAt: (wider: number, lean: number) => Miss,
): readonly Row[] {
  const miss = missAt(0, 0);
  const [more, less] = [missAt(radiusStep, 0), missAt(-radiusStep, 0)];
  const [out, inward] = [missAt(0, leanStep), missAt(0, -leanStep)];
  const row = (of: keyof Miss, read: number, u: number): Row => ({
    name: { of, index },
    share: (more[of] - less[of]) / (2 * radiusStep),
    at: (out[of] - inward[of]) / (2 * leanStep),
    value: read - miss[of],
    weight: 1 / u ** 2,
  });
  const u = Math.max(fit.reading, leastReading);
  return [
    row('foot', fit.foot, u),
    row('lip', fit.lip, u),
    ...(fit.climb === undefined ? [] : [row('climb', fit.climb, climbUncertainty(fit, leastReading))]),
  ];
}
