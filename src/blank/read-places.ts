// Readings of one place taken together: what a wall that bends passes through.
import type { Blank, Station } from './blank.ts';
import { girthReading, isOnePlace } from './stations.ts';
import { leastReading, radiusOf } from './wall-rows.ts';

/** All readings of one place, as one. Lengths in mm. */
export interface ReadPlace {
  readonly kind: 'height' | 'along';
  readonly at: number;
  /** Their mean, each weighted by how sure it is. */
  readonly radius: number;
  /** Standard uncertainty of the girth it tells. */
  readonly uncertainty: number;
  /** Indices of the stations that were read there. */
  readonly stations: readonly number[];
}

/** Which stations are of one place, from the foot up. Stations in their order stand beside each other there. */
export function placesOf(stations: readonly Station[]): readonly (readonly number[])[] {
  const places: number[][] = [];
  stations.forEach((station, index) => {
    const last = places.at(-1);
    const before = stations[last?.[0] ?? -1];
    if (last && before && isOnePlace(before, station)) last.push(index);
    else places.push([index]);
  });
  return places;
}

/** Places with the readings of a blank, which may have been moved a little since they were told apart. */
export const readPlaces = (blank: Blank, places = placesOf(blank.stations)): readonly ReadPlace[] =>
  places.map((indices) => readPlace(blank, indices));

/**
 * The weighted mean of a place and its standard uncertainty, from the readings' own.
 * Source: the mean of least weighted squares, its variance 1 over the sum of weights (JCGM 100:2008, 4.1.4 and 5.1.2).
 */
function readPlace(blank: Blank, indices: readonly number[]): ReadPlace {
  const read = indices.flatMap((index) => blank.stations[index] ?? []);
  const [first] = read;
  if (!first) throw new Error('a place has at least one reading');
  const { kind } = first.position;
  const at = read.reduce((sum, { position }) => sum + position.mm, 0) / read.length;
  if (read.length === 1) {
    const uncertainty = girthReading(first, blank.reading);
    return { kind, at, radius: radiusOf(first, blank.tape), uncertainty, stations: indices };
  }
  const weights = read.map((station) => 1 / surely(station, blank) ** 2);
  const total = weights.reduce((sum, w) => sum + w, 0);
  const radius = read.reduce((sum, s, i) => sum + (weights[i] ?? 0) * radiusOf(s, blank.tape), 0) / total;
  return { kind, at, radius, uncertainty: 1 / Math.sqrt(total), stations: indices };
}

/** Standard uncertainty of a station's girth, never quite nothing, mm. */
export const surely = (station: Station, { reading }: Pick<Blank, 'reading'>): number =>
  girthReading(station, Math.max(reading, leastReading));
