// How well a blank is known: its readings one by one, what paper fits moved, how sure each figure is, what overlap that asks.
import type { Blank } from '../../blank/blank.ts';
import type { Band } from '../../blank/flat-band.ts';
import type { KeepOut } from '../../blank/keep-out.ts';
import { fittedSteps, type WallFigures } from '../../blank/paper-fit.ts';
import { placesApart } from '../../blank/place-off.ts';
import { type OutOfRound, placesOutOfRound } from '../../blank/reading-findings.ts';
import { type ReadingOff, readingOff } from '../../blank/reading-off.ts';
import { readingKey } from '../../blank/stations.ts';
import type { StraightWall } from '../../blank/straight-wall.ts';
import {
  type HalfMillimetre,
  halfMillimetreAtSeam,
  leastHold,
  type Overlap,
  recommendedOverlap,
  type Sureness,
  sureness,
} from '../../blank/sure.ts';
import { reconciled, type Wall, wallUncertaintyAt } from '../../blank/wall.ts';
import { degrees } from '../../lengths/angle.ts';

/** A wall's figures in the report's terms: mm and degrees. */
export type FiguresReport = Omit<WallFigures, 'halfAngle'> & { readonly halfAngleDeg: number };

export interface ReadingReport {
  /** Index of the station as typed. */
  readonly station: number;
  readonly key: string;
  readonly along: number;
  readonly girth: number;
  readonly residual: number;
  readonly u: number;
  /** Whether a paper fit stands in its place. */
  readonly isReplaced: boolean;
}

/** What stands in a blank's report beside its wall. Standard uncertainties; mm and degrees. */
export interface Measures {
  /** What one girth or diameter reading is taken to be good to, and whether that is ours because the maker named none. */
  readonly reading: { readonly u: number; readonly isAssumed: boolean };
  /** What each reading says against the wall fitted to all of them. */
  readonly readings: readonly ReadingReport[];
  readonly readingOff?: {
    readonly key: string;
    readonly read: number;
    readonly shouldBe: number;
    readonly u: number;
  };
  readonly outOfRound?: readonly OutOfRound[];
  readonly keepOuts?: readonly KeepOut[];
  readonly fitted?: {
    readonly before: FiguresReport;
    readonly after: FiguresReport;
    readonly moved: FiguresReport;
    /** After each fit in turn. */
    readonly steps: readonly FiguresReport[];
  };
  readonly sure?: {
    readonly sweepDeg: { readonly value: number; readonly u: number };
    readonly flat: Sureness['flat'];
  };
  /** By how much the ends of a wrap may miss each other, or those beside a handle their place, at the ends of its band. */
  readonly seam: Sureness['seam'];
  /** The overlap to give; none where the ends stop beside a handle and never meet. */
  readonly overlap?: Overlap;
  /** What half a mm more of the reading that counts most does to the girth at the ends of the band. */
  readonly halfMillimetre?: HalfMillimetre & { readonly key: string };
}

/** All of it, for a wrap of this band; `hold`: the least overlap that has to be left, mm. */
export function measuresOf(blank: Blank, wall: Wall, band: Band, hold: number = leastHold): Measures {
  const rounds = placesOutOfRound(blank);
  const shared = {
    reading: { u: blank.reading, isAssumed: blank.isReadingAssumed ?? false },
    ...(blank.keepOuts ? { keepOuts: blank.keepOuts } : {}),
    ...(rounds.length > 0 ? { outOfRound: rounds } : {}),
  };
  const readings = {
    readings: readingsOf(blank, wall),
    ...offReport(wall.kind === 'straight' ? readingOff(blank, wall.straight) : placeOff(blank)),
    ...((blank.fits ?? []).length > 0 ? { fitted: fittedReport(blank) } : {}),
  };
  if (wall.kind === 'straight')
    return { ...shared, ...readings, ...straightMeasures(blank, wall.straight, band, hold) };
  const seam = { foot: wallUncertaintyAt(wall, band.from), lip: wallUncertaintyAt(wall, band.to) };
  return { ...shared, ...readings, ...seamMeasures(blank, seam, hold) };
}

/** On a wall that bends only readings of one place speak for or against each other. */
const placeOff = (blank: Blank): ReadingOff | undefined =>
  placesApart(blank).flatMap(({ off }) => off ?? [])[0];

const offReport = (off: ReadingOff | undefined): Pick<Measures, 'readingOff'> =>
  off ? { readingOff: { key: off.key, read: off.read, shouldBe: off.shouldBe, u: off.uncertainty } } : {};

const seamMeasures = (
  { handle }: Blank,
  seam: Sureness['seam'],
  hold: number,
): Pick<Measures, 'seam' | 'overlap'> => ({
  seam,
  ...(handle ? {} : { overlap: recommendedOverlap(seam, hold) }),
});

function straightMeasures(
  blank: Blank,
  wall: StraightWall,
  band: Band,
  hold: number,
): Omit<Measures, 'reading' | 'readings'> {
  const { sweep, flat, seam } = sureness(blank, wall, band);
  return {
    sure: { sweepDeg: { value: Math.abs(degrees(sweep.value)), u: degrees(sweep.u) }, flat },
    ...seamMeasures(blank, seam, hold),
    ...halfReport(blank, band),
  };
}

const readingsOf = (blank: Blank, wall: Wall): readonly ReadingReport[] =>
  reconciled(wall).residuals.flatMap(
    ({ station: index, along, measured, residual, uncertainty, isReplaced }) => {
      const station = blank.stations[index];
      if (station === undefined) return [];
      const key = readingKey(station, index);
      const typed = station.typed?.station ?? index;
      return [{ station: typed, key, along, girth: measured, residual, u: uncertainty, isReplaced }];
    },
  );

function halfReport(blank: Blank, band: Band): Pick<Measures, 'halfMillimetre'> {
  const half = halfMillimetreAtSeam(blank, band);
  const station = half && blank.stations[half.station];
  // Where a paper fit stands in the place of every station, no reading of theirs moves the seam.
  if (!half || !station || Math.max(Math.abs(half.foot), Math.abs(half.lip)) < 1e-6) return {};
  return { halfMillimetre: { ...half, key: readingKey(station, half.station) } };
}

function fittedReport(blank: Blank): NonNullable<Measures['fitted']> {
  const all = fittedSteps(blank).map(({ halfAngle, ...figures }) => ({
    ...figures,
    halfAngleDeg: degrees(halfAngle),
  }));
  const nothing = { footGirth: 0, lipGirth: 0, height: 0, along: 0, halfAngleDeg: 0 };
  const [before = nothing, ...steps] = all;
  const after = steps.at(-1) ?? before;
  const moved = {
    footGirth: after.footGirth - before.footGirth,
    lipGirth: after.lipGirth - before.lipGirth,
    height: after.height - before.height,
    along: after.along - before.along,
    halfAngleDeg: after.halfAngleDeg - before.halfAngleDeg,
  };
  return { before, after, moved, steps };
}
