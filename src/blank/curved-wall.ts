// A wall that is not one straight line: stepped or smooth, through every reading.
import { type Finding, note, refuseIfAny, stop } from '../finding.ts';
import { formatLength } from '../lengths/length.ts';
import type { Blank, Station } from './blank.ts';
import { correctedProfile, residualsOf } from './curved-fit.ts';
import { inputsOf } from './inputs.ts';
import {
  alongOfHeight,
  atFoot,
  type Profile,
  profileAt,
  type SmoothProfile,
  smoothProfile,
  steppedProfile,
} from './profile.ts';
import { placesOf, type ReadPlace, readPlaces } from './read-places.ts';
import { splineAt } from './spline.ts';
import { positionKey, stationProblems } from './stations.ts';
import type { Reconciled } from './straight-wall.ts';

/** A wall that bends, and what its readings leave of it. Its rows are those of paper fits. */
export interface CurvedWall extends Reconciled {
  readonly profile: Profile;
  /** For each reading, the profile if it were more or less by its uncertainty. */
  readonly moved: readonly { readonly more: Profile; readonly less: Profile }[];
}

/**
 * The wall through a blank's places, `stepped` or `smooth`: several readings of one place count as their weighted mean,
 * and paper fits make all of it wider or narrower by so much and so much a mm (`curved-fit.ts`).
 * @throws Refused, the rules of the stations and `one-height`, `mixed-stations`, `meets-axis`, `overhangs`.
 */
export function fitCurvedWall(blank: Blank, kind: 'stepped' | 'smooth'): CurvedWall {
  refuseIfAny(stationProblems(blank));
  const groups = placesOf(blank.stations);
  const places = readPlaces(blank, groups);
  refuseIfAny(orderProblems(blank.stations, places, kind));
  const through = kind === 'stepped' ? steppedProfile : smoothProfile;
  const { profile, correction } = correctedProfile(blank, places, through);
  refuseIfAny(shapeProblems(profile));
  const { from } = correction;
  const of = (moved: Blank): Profile =>
    correctedProfile(moved, readPlaces(moved, groups), through, from).profile;
  const moved = inputsOf(blank).map(({ uncertainty, moved: by }) => ({
    more: of(by(uncertainty)),
    less: of(by(-uncertainty)),
  }));
  const alongs = places.map(({ kind: by, at }) => (by === 'along' ? at : alongOfHeight(profile, at)));
  const residuals = residualsOf(blank, { places, alongs, correction });
  return { profile, moved, residuals, rows: correction.rows };
}

function orderProblems(
  stations: readonly Station[],
  places: readonly ReadPlace[],
  kind: 'stepped' | 'smooth',
): Finding[] {
  const found: Finding[] = [];
  places.forEach((place, i) => {
    const before = places[i - 1];
    const index = place.stations[0] ?? 0;
    const station = stations[index];
    if (!before || !station) return;
    const where = { key: positionKey(station, index) };
    if (before.kind !== place.kind)
      found.push(
        stop(
          'mixed-stations',
          where,
          `is by ${place.kind} and the one before by ${before.kind}; for a "${kind}" wall give all stations by one of the two`,
        ),
      );
    else if (place.kind === 'along' && Math.abs(place.radius - before.radius) >= place.at - before.at)
      found.push(
        stop('overhangs', where, 'is wider or narrower than the wall is long up to here; read it again'),
      );
  });
  return found;
}

/** Places a curve is looked at for faults, evenly from foot to lip. */
const looks = 200;

function shapeProblems(profile: Profile): Finding[] {
  // Of readings that differ within a hair of the foot no curve is found at all.
  if (!Number.isFinite(profile.length))
    return [
      stop(
        'overhangs',
        { key: 'stations' },
        'no wall is so steep as from one of these stations to the next; read again those that stand close together',
      ),
    ];
  for (let i = 0; i <= looks; i++) {
    const { radius, along } = profileAt(profile, (profile.length * i) / looks);
    if (profile.kind === 'smooth' && steeperThanLevel(profile, along))
      return [
        stop(
          'overhangs',
          { key: 'stations', along },
          `the curve through these stations turns steeper than level ${formatLength(along, 'mm')} up the wall; read those near it again, or add one there`,
        ),
      ];
    if (!(radius > 0))
      return [
        stop(
          'meets-axis',
          { key: 'stations', along },
          `the wall through these stations closes ${formatLength(along, 'mm')} up it; add a station there, or end it below`,
        ),
      ];
  }
  return [];
}

/** Along a wall its radius can't change by more than the way gone. */
const steeperThanLevel = ({ by, radius }: SmoothProfile, along: number): boolean =>
  by === 'along' && Math.abs(splineAt(radius, along).first) >= 1;

/**
 * Standard uncertainty of the girth at a distance along the wall, mm: what each reading moved by its own uncertainty
 * does there. Source: JCGM 100:2008, 5.1.3, note 2.
 */
export const curvedUncertaintyAt = ({ moved }: CurvedWall, along: number): number =>
  Math.hypot(
    ...moved.map(
      ({ more, less }) => Math.PI * (profileAt(more, along).radius - profileAt(less, along).radius),
    ),
  );

/** A lowest station above the foot is said. */
export function curvedFindings({ stations }: Blank): Finding[] {
  const [station] = stations;
  if (!station || station.position.mm <= atFoot) return [];
  return [
    note(
      'foot-unread',
      { key: positionKey(station, 0) },
      `the lowest reading is ${formatLength(station.position.mm, 'mm')} up; below it the wall is taken on straight`,
    ),
  ];
}
