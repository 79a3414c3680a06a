// Readings at stations: the girth each one tells, how sure it is, and whether they can be a wall at all.
import { type Finding, stop } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import { type Blank, type Station, standardReading } from './blank.ts';

/** Stations nearer to each other than this are one height, mm: no wall can be leaned on so short a stretch. */
const leastSpread = 0.001;

/** Whether two stations were read at one place of the wall, both by height or both along it. */
export const isOnePlace = ({ position: a }: Station, { position: b }: Station): boolean =>
  a.kind === b.kind && Math.abs(a.mm - b.mm) <= leastSpread;

/**
 * The girth a station tells, mm: its diameter times pi, or its girth less what the tape's own thickness added.
 * Source: a tape of thickness t around a diameter D reads pi (D + t), at its mid-plane.
 */
export const measuredGirth = ({ reading }: Station, tape: number): number =>
  Math.PI * (reading.kind === 'across' ? reading.mm : reading.mm / Math.PI - tape);

/**
 * Standard uncertainty of the girth a station tells, mm: an `across` counts pi times. Several diameters of one place
 * make their mean as much surer as there are of them; what the place is out of round, half the difference h of the
 * most and the least, adds h/√3: the mean over all directions is only known to lie within h of theirs
 * (JCGM 100:2008, 4.3.7, rectangular limits).
 */
export function girthReading({ reading }: Station, standard: number): number {
  if (reading.kind === 'girth') return standard;
  const diameters = reading.diameters ?? [];
  if (diameters.length < 2) return Math.PI * standard;
  return Math.PI * Math.hypot(standard / Math.sqrt(diameters.length), outOfRound(diameters) / Math.sqrt(3));
}

/** Half the difference of the most and the least of some diameters, mm. */
export const outOfRound = (diameters: readonly number[]): number =>
  diameters.length < 2 ? 0 : (Math.max(...diameters) - Math.min(...diameters)) / 2;

/** The key of a station's position as the maker typed it, such as `stations[1].height`. */
export const positionKey = (station: Station, index: number): string =>
  `stations[${station.typed?.station ?? index}].${station.position.kind}`;

/** The key of a station's reading as the maker typed it, such as `stations[1].across`. */
export const readingKey = (station: Station, index: number): string =>
  `stations[${station.typed?.station ?? index}].${station.typed?.key ?? station.reading.kind}`;

/** Standard uncertainty of a height or an along where it counts as a reading: two of one place can't both be exact. */
export const placeReading = ({ heightReading }: Pick<Blank, 'heightReading'>): number =>
  heightReading > 0 ? heightReading : standardReading;

/** What stops these stations from being a wall, whatever its form; empty when nothing does. */
export const stationProblems = (
  blank: Pick<Blank, 'stations' | 'tape' | 'heightReading'>,
): readonly Finding[] => {
  const { stations, tape } = blank;
  const sizes = stations.flatMap((station, index) => sizeProblems(station, index, tape));
  return [
    ...fewStations(stations),
    ...sizes,
    ...orderProblems(stations),
    ...(sizes.length > 0 ? [] : onePlaceProblems(blank)),
  ];
};

function fewStations(stations: readonly Station[]): readonly Finding[] {
  const where = { key: 'stations' };
  if (stations.length < 2)
    return [
      stop(
        'few-stations',
        where,
        `has ${stations.length} of the two stations a wall needs; read it near the foot and near the lip`,
      ),
    ];
  const positions = stations.map(({ position }) => position.mm);
  const lowest = Math.min(...positions);
  if (Math.max(...positions) - lowest > leastSpread) return [];
  const says = `are all at ${inMm(lowest)}; read two heights at least, as far apart as the wall allows`;
  return [stop('one-height', where, says)];
}

function sizeProblems(station: Station, index: number, tape: number): readonly Finding[] {
  const { position, reading } = station;
  if (!(position.mm >= 0 && Number.isFinite(position.mm)))
    return [
      stop(
        'not-a-length',
        { key: positionKey(station, index) },
        `${position.mm} is no height; give 0 or more`,
      ),
    ];
  if (!(reading.mm > 0 && Number.isFinite(reading.mm)))
    return [
      stop('not-a-length', { key: readingKey(station, index) }, `${reading.mm} is no size; give more than 0`),
    ];
  if (measuredGirth(station, tape) > 0) return [];
  const says = `${inMm(reading.mm)} is no longer than a tape ${inMm(tape)} thick around nothing; check "tape"`;
  return [stop('tape-too-thick', { key: readingKey(station, index) }, says)];
}

/** A height is only compared with heights, an along with alongs: how the two stand to each other the fit must tell. */
function orderProblems(stations: readonly Station[]): readonly Finding[] {
  return stations.flatMap((station, index) => {
    const { kind, mm } = station.position;
    const below = stations.slice(0, index).filter((other) => other.position.kind === kind);
    const highest = Math.max(...below.map((other) => other.position.mm));
    return mm < highest ? [upsideDown(station, index, highest)] : [];
  });
}

/** The finding for a station that is lower than one listed before it. */
export const upsideDown = (station: Station, index: number, highest: number): Finding =>
  stop(
    'upside-down',
    { key: positionKey(station, index) },
    `${inMm(station.position.mm)} is lower than ${inMm(highest)} listed before it; list the stations from the foot up`,
  );

/** A place can't have two girths one of which is this many times the other: between a girth and a diameter lie 3.14. */
const mostApart = 1.5;

/** Readings of one place that can't be of one vessel: sizes far apart, a height that is longer than the wall up to it. */
function onePlaceProblems(blank: Pick<Blank, 'stations' | 'tape' | 'heightReading'>): readonly Finding[] {
  const { stations, tape } = blank;
  return stations.flatMap((station, index) => [
    ...heightProblems(station, index, placeReading(blank)),
    ...diameterProblems(station, index),
    ...stations.slice(0, index).flatMap((other, before) => {
      if (!isOnePlace(other, station)) return [];
      const girths = [measuredGirth(other, tape), measuredGirth(station, tape)];
      if (Math.max(...girths) <= mostApart * Math.min(...girths)) return [];
      const says = `${inMm(station.reading.mm)} can't be one vessel with the ${inMm(other.reading.mm)} of ${readingKey(other, before)} at the same place; check which is "girth" (around) and which is "across"`;
      return [stop('not-one-vessel', { key: readingKey(station, index) }, says)];
    }),
  ]);
}

function heightProblems(station: Station, index: number, reading: number): readonly Finding[] {
  const { mm, along } = station.position;
  // Three standard uncertainties of the difference of two readings.
  if (along === undefined || mm - along <= 3 * Math.SQRT2 * reading) return [];
  const says = `${inMm(mm)} is more than the ${inMm(along)} along the wall to the same place, which can't be; a wall is never shorter than it is high`;
  return [stop('height-over-along', { key: positionKey(station, index) }, says)];
}

function diameterProblems(station: Station, index: number): readonly Finding[] {
  const { diameters = [] } = station.reading;
  if (diameters.length < 2 || Math.max(...diameters) <= mostApart * Math.min(...diameters)) return [];
  const [least, most] = [Math.min(...diameters), Math.max(...diameters)].map((mm) => inMm(mm));
  const says = `runs from ${least} to ${most} at one place, which is no round vessel; read it again`;
  return [stop('not-one-vessel', { key: readingKey(station, index) }, says)];
}
