// The stations of a blank file: each with one reading or several, to one resolved station a reading.
import type { Station } from '../../blank/blank.ts';
import { leastSize } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';
import { isTyped, optional, type Place, type Reader, readKeys, report, within } from './schema.ts';
import { length, lengthOrZero, mostInList, tooLong } from './schema-values.ts';

/** Most readings taken as meant at one place. */
const mostReadings = 50;

/** One size, or a list of several readings of it. */
const readSizes: Reader<readonly number[]> = (value, place) => {
  const read = length({ least: leastSize });
  if (!Array.isArray(value)) {
    const size = read(value, place);
    return size === undefined ? undefined : [size];
  }
  if (value.length === 0 || value.length > mostReadings)
    return report(
      place,
      'not-a-list',
      `has ${value.length} readings; give one, or a list of up to ${mostReadings}`,
    );
  const sizes = value.map((item, index) => read(item, within(place, index)));
  return sizes.every((size) => size !== undefined) ? sizes : undefined;
};

export const stationKeys = {
  height: optional('Height', lengthOrZero),
  along: optional('Along the wall', lengthOrZero),
  across: optional('Across', readSizes),
  girth: optional('Girth', readSizes),
};

/** One reading of a typed station, with its key in that station. */
interface Typed {
  readonly key: string;
  readonly reading: Station['reading'];
}

/** The stations of a list, from the foot up; several readings typed as one station stand one after the other. */
export const readStations: Reader<readonly Station[]> = (value, place) => {
  if (!Array.isArray(value))
    return report(place, 'not-a-list', `${shown(value)} will not do here; give a list, [ ... ]`);
  if (value.length > mostInList) return tooLong(value.length, place);
  const stations: Station[] = [];
  value.forEach((item, index) => {
    const station = readStation(item, within(place, index));
    for (const { key, reading } of station?.readings ?? []) {
      const isPlain = station?.readings.length === 1 && stations.length === index && reading.kind === key;
      const position = station?.position ?? { kind: 'height', mm: 0 };
      stations.push({ position, reading, ...(isPlain ? {} : { typed: { station: index, key } }) });
    }
  });
  return stations;
};

function readStation(
  value: unknown,
  place: Place,
): { readonly position: Station['position']; readonly readings: readonly Typed[] } | undefined {
  const keys = readKeys(value, stationKeys, place);
  if (keys === undefined) return undefined;
  const { height, along, across, girth } = keys;
  for (const [a, b] of [
    ['height', 'along'],
    ['across', 'girth'],
  ] as const)
    if (!isTyped(value, a) && !isTyped(value, b))
      report(place, 'one-of-two', `has no "${a}" and no "${b}"; give one of them, or both`);
  const position = positionOf(height, along);
  const readings = [...(across ? [acrossOf(across)] : []), ...girthsOf(girth ?? [])];
  return position && readings.length > 0 ? { position, readings } : undefined;
}

function positionOf(height: number | undefined, along: number | undefined): Station['position'] | undefined {
  if (height !== undefined) return { kind: 'height', mm: height, ...(along === undefined ? {} : { along }) };
  return along === undefined ? undefined : { kind: 'along', mm: along };
}

/** Several diameters are one reading, their mean, that knows how far apart they are. */
function acrossOf(diameters: readonly number[]): Typed {
  const mm = diameters.reduce((sum, d) => sum + d, 0) / diameters.length;
  const several = diameters.length > 1 ? { diameters } : {};
  return { key: 'across', reading: { kind: 'across', mm, ...several } };
}

const girthsOf = (girths: readonly number[]): readonly Typed[] =>
  girths.map((mm, i) => ({
    key: girths.length > 1 ? `girth[${i}]` : 'girth',
    reading: { kind: 'girth', mm },
  }));
