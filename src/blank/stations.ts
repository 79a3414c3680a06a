// Readings at stations: the girth each one tells, how sure it is, and whether they can be a wall at all.
import { type Finding, stop } from '../finding.ts';
import { formatLength } from '../lengths/length.ts';
import type { Blank, Station } from './blank.ts';

/** Stations nearer to each other than this are one height, mm: no wall can be leaned on so short a stretch. */
const leastSpread = 0.001;

/**
 * The girth a station tells, mm: its diameter times pi, or its girth less what the tape's own thickness added.
 * Source: a tape of thickness t around a diameter D reads pi (D + t), at its mid-plane.
 */
export const measuredGirth = ({ reading }: Station, tape: number): number =>
  Math.PI * (reading.kind === 'across' ? reading.mm : reading.mm / Math.PI - tape);

/** Standard uncertainty of the girth a station tells, mm: an `across` counts pi times. */
export const girthReading = ({ reading }: Station, standard: number): number =>
  reading.kind === 'across' ? Math.PI * standard : standard;

/** The key of a station's position as the maker typed it, such as `stations[1].height`. */
export const positionKey = (station: Station, index: number): string =>
  `stations[${index}].${station.position.kind}`;

/** The key of a station's reading as the maker typed it, such as `stations[1].across`. */
export const readingKey = (station: Station, index: number): string =>
  `stations[${index}].${station.reading.kind}`;

/** What stops these stations from being a wall, whatever its form; empty when nothing does. */
export const stationProblems = ({ stations, tape }: Pick<Blank, 'stations' | 'tape'>): readonly Finding[] => [
  ...fewStations(stations),
  ...stations.flatMap((station, index) => sizeProblems(station, index, tape)),
  ...orderProblems(stations),
];

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
  const says = `are all at ${formatLength(lowest, 'mm')}; read two heights at least, as far apart as the wall allows`;
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
  const says = `${formatLength(reading.mm, 'mm')} is no longer than a tape ${formatLength(tape, 'mm')} thick around nothing; check "tape"`;
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
    `${formatLength(station.position.mm, 'mm')} is lower than ${formatLength(highest, 'mm')} listed before it; list the stations from the foot up`,
  );
