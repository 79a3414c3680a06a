// What paper fits, and places read more than once, make of a wall that bends.

import { type LineCovariance, regress } from '../geometry/regression.ts';
import type { Blank } from './blank.ts';
import { type Cone, type Miss, paperMiss } from './paper-miss.ts';
import { type Profile, type ProfileReading, profileAt } from './profile.ts';
import { type ReadPlace, surely } from './read-places.ts';
import { measuredGirth } from './stations.ts';
import { fittedVariance, type Residual, type RowResidual, rowResidual } from './straight-wall.ts';
import { firstFit, leastReading, missRows, type Row, radiusOf } from './wall-rows.ts';

/** By how much paper makes a wall wider than its readings: so many mm of radius at the foot, and so many more a mm up. */
interface Wider {
  readonly radius: number;
  readonly slope: number;
}

const asRead: Wider = { radius: 0, slope: 0 };

/** The correction of a wall by its paper fits; without any it is nothing. */
interface Correction {
  readonly from: Wider;
  /** None where there are no paper fits. */
  readonly covariance?: LineCovariance;
  /** How each number of the fits sits on the corrected wall. */
  readonly rows: readonly RowResidual[];
}

type Through = (readings: readonly ProfileReading[]) => Profile;

/** The correction is settled when no place moves by more, mm; and the rounds that it may take. */
const settled = 1e-9;
const mostRounds = 30;

/**
 * The profile through the places, corrected by the paper fits: by a line up the heights (or alongs) that were read, so
 * that a cone stays the cone that the same paper makes of it, and the shape between foot and lip stays as it was read.
 * Least weighted squares of the fits' rows and, where no fit stands in their place, of the readings' own.
 * `near`: a correction to begin from.
 */
export function correctedProfile(
  blank: Blank,
  places: readonly ReadPlace[],
  through: Through,
  near: Wider = asRead,
): { readonly profile: Profile; readonly correction: Correction } {
  const first = firstFit(blank);
  const { fits = [] } = blank;
  const widened = ({ radius, slope }: Wider) =>
    through(places.map((place) => ({ ...place, radius: place.radius + radius + slope * place.at })));
  if (fits.length === 0) return { profile: through(places), correction: { from: asRead, rows: [] } };
  const rowsAt = (from: Wider): readonly Row[] => [
    ...(first === undefined ? places.map((place) => placeRow(place, from)) : []),
    ...fits.flatMap((fit, i) =>
      i < (first ?? 0)
        ? []
        : missRows(fit, i, (radius, slope): Miss => {
            const moved = widened({ radius: from.radius + radius, slope: from.slope + slope });
            return paperMiss(fit, coneAlong(moved, fit.band));
          }),
    ),
  ];
  const top = places.at(-1)?.at ?? 0;
  let from = near;
  for (let round = 0; round < mostRounds; round++) {
    const step = regress(rowsAt(from));
    from = { radius: from.radius + step.intercept, slope: from.slope + step.slope };
    if (Math.abs(step.intercept) + Math.abs(step.slope) * top <= settled) break;
  }
  const rows = rowsAt(from);
  const { covariance } = regress(rows);
  const ofFits = rows.filter(({ name }) => name.of !== 'station');
  return {
    profile: widened(from),
    correction: { from, covariance, rows: ofFits.map((row) => rowResidual(row, covariance)) },
  };
}

/** A place's own reading speaks for no correction at all. */
const placeRow = ({ at, uncertainty, stations }: ReadPlace, { radius, slope }: Wider): Row => ({
  name: { of: 'station', index: stations[0] ?? 0 },
  share: 1,
  at,
  value: -(radius + slope * at),
  weight: (2 * Math.PI) ** 2 / Math.max(uncertainty, leastReading) ** 2,
});

/**
 * The cone whose two ends are the wall's own circles at the ends of a band. Paper lies on a flat band as on that cone:
 * what misses at its ends is told by the girths there, whatever the wall does in between.
 */
export function coneAlong(
  profile: Profile,
  { from, to }: { readonly from: number; readonly to: number },
): Cone {
  const [foot, lip] = [profileAt(profile, from).radius, profileAt(profile, to).radius];
  const sine = Math.max(-1, Math.min(1, (lip - foot) / (to - from)));
  return { radius: foot - from * sine, halfAngle: Math.asin(sine) };
}

/** Places, where they are up the corrected wall, and its correction. */
interface Corrected {
  readonly places: readonly ReadPlace[];
  readonly alongs: readonly number[];
  readonly correction: Correction;
}

/** What each station's girth is over the wall. Alone at its place, and without paper, it is the wall. */
export function residualsOf(blank: Blank, { places, alongs, correction }: Corrected): readonly Residual[] {
  const isReplaced = firstFit(blank) !== undefined;
  const { from, covariance } = correction;
  return places.flatMap((place, i) => {
    const line = placeRow(place, from);
    const fitted = covariance ? fittedVariance(line, covariance) : 1 / line.weight;
    return place.stations.flatMap((index): Residual[] => {
      const station = blank.stations[index];
      if (!station) return [];
      const own = (surely(station, blank) / (2 * Math.PI)) ** 2;
      const left = isReplaced ? own + fitted : own - fitted;
      const wall = place.radius + from.radius + from.slope * place.at;
      return [
        {
          station: index,
          along: alongs[i] ?? 0,
          measured: measuredGirth(station, blank.tape),
          residual: 2 * Math.PI * (radiusOf(station, blank.tape) - wall),
          // Where the wall must pass through the reading the two are equal but for rounding.
          uncertainty: left > 1e-9 * own ? 2 * Math.PI * Math.sqrt(left) : 0,
          isReplaced,
        },
      ];
    });
  });
}
