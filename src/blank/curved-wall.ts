// A wall that is not one straight line: stepped or smooth, through every reading.
import { type Finding, note, refuseIfAny, stop } from '../finding.ts';
import { formatLength } from '../lengths/length.ts';
import type { Blank, Station } from './blank.ts';
import {
  atFoot,
  type Profile,
  type ProfileReading,
  profileAt,
  type SmoothProfile,
  smoothProfile,
  steppedProfile,
} from './profile.ts';
import { splineAt } from './spline.ts';
import { girthReading, measuredGirth, positionKey, stationProblems } from './stations.ts';

export interface CurvedWall {
  readonly profile: Profile;
  /** The readings the curve passes through, from the foot up, with the standard uncertainty of their girths, mm. */
  readonly readings: readonly (ProfileReading & { readonly uncertainty: number })[];
  /** For each reading, the profile if it were more or less by its uncertainty. */
  readonly moved: readonly { readonly more: Profile; readonly less: Profile }[];
}

/**
 * The wall through a blank's stations, `stepped` or `smooth`.
 * @throws Refused, the rules of the stations and `one-height`, `mixed-stations`, `meets-axis`, `overhangs`.
 */
export function fitCurvedWall(blank: Blank, kind: 'stepped' | 'smooth'): CurvedWall {
  refuseIfAny(stationProblems(blank));
  const readings = blank.stations.map((station) => readingOf(station, blank));
  refuseIfAny(orderProblems(blank.stations, readings, kind));
  const through = kind === 'stepped' ? steppedProfile : smoothProfile;
  const profile = through(readings);
  refuseIfAny(shapeProblems(profile));
  const moved = readings.map((reading, i) => {
    const by = (mm: number) => through(readings.with(i, { ...reading, radius: reading.radius + mm }));
    const radiusOff = reading.uncertainty / (2 * Math.PI);
    return { more: by(radiusOff), less: by(-radiusOff) };
  });
  return { profile, readings, moved };
}

const readingOf = (station: Station, blank: Blank) => ({
  kind: station.position.kind,
  at: station.position.mm,
  radius: measuredGirth(station, blank.tape) / (2 * Math.PI),
  uncertainty: girthReading(station, blank.reading),
});

function orderProblems(
  stations: readonly Station[],
  readings: readonly ProfileReading[],
  kind: 'stepped' | 'smooth',
): Finding[] {
  const found: Finding[] = [];
  readings.forEach((reading, i) => {
    const before = readings[i - 1];
    const station = stations[i];
    if (!before || !station) return;
    const where = { key: positionKey(station, i) };
    if (before.kind !== reading.kind)
      found.push(
        stop(
          'mixed-stations',
          where,
          `is by ${reading.kind} and the one before by ${before.kind}; for a "${kind}" wall give all stations by one of the two`,
        ),
      );
    else if (reading.at - before.at < atFoot)
      found.push(
        stop(
          'one-height',
          where,
          `${formatLength(reading.at, 'mm')} is where the station before is; a "${kind}" wall takes one station at each place`,
        ),
      );
    else if (reading.kind === 'along' && Math.abs(reading.radius - before.radius) >= reading.at - before.at)
      found.push(
        stop('overhangs', where, 'is wider or narrower than the wall is long up to here; read it again'),
      );
  });
  return found;
}

/** Places a curve is looked at for faults, evenly from foot to lip. */
const looks = 200;

function shapeProblems(profile: Profile): Finding[] {
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
export function curvedFindings(blank: Blank, { readings }: CurvedWall): Finding[] {
  const [first] = readings;
  const [station] = blank.stations;
  if (!first || !station || first.at <= atFoot) return [];
  return [
    note(
      'foot-unread',
      { key: positionKey(station, 0) },
      `the lowest reading is ${formatLength(first.at, 'mm')} up; below it the wall is taken on straight`,
    ),
  ];
}
