// Readings of one place of a wall that bends: which of them cannot be right. No other place can tell.
import { type Finding, look } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import type { Blank, Station } from './blank.ts';
import { placesOf, type ReadPlace, readPlaces, surely } from './read-places.ts';
import { clearlyBetter, mostOff, type ReadingOff } from './reading-off.ts';
import { positionKey, readingKey } from './stations.ts';
import { radiusOf } from './wall-rows.ts';

/** The readings of one place that don't agree, and the one that the others speak against, if they can tell. */
interface Apart {
  readonly keys: readonly string[];
  /** Least and most girth told there, mm. */
  readonly least: number;
  readonly most: number;
  readonly off?: ReadingOff;
}

/**
 * Places whose readings differ by more than three standard uncertainties. Of three or more the one is named without
 * which all others agree; two never tell which, and two diameters are told as out of round.
 */
export const placesApart = (blank: Blank): readonly Apart[] =>
  placesOf(blank.stations).flatMap((indices) => {
    const read = indices.flatMap((index) => {
      const station = blank.stations[index];
      return station ? [{ station, index }] : [];
    });
    const isJustAcross = read.length === 2 && read.every(({ station }) => station.reading.kind === 'across');
    if (read.length < 2 || isJustAcross || agree(blank, indices)) return [];
    const girths = read.map(({ station }) => 2 * Math.PI * radiusOf(station, blank.tape));
    const off = indices.length < 3 ? undefined : oddOne(blank, read, indices);
    return [
      {
        keys: read.map(({ station, index }) => readingKey(station, index)),
        least: Math.min(...girths),
        most: Math.max(...girths),
        ...(off ? { off } : {}),
      },
    ];
  });

/** The place of so many stations together. */
const together = (blank: Blank, indices: readonly number[]): ReadPlace => {
  const [place] = readPlaces(blank, [indices]);
  if (!place) throw new Error('a place has at least one reading');
  return place;
};

/** How many standard uncertainties of its residual a station is off its place. */
function timesOffPlace(blank: Blank, station: Station, place: ReadPlace): number {
  const own = surely(station, blank);
  const left = Math.sqrt(Math.max(0, own ** 2 - place.uncertainty ** 2));
  return left === 0 ? 0 : (2 * Math.PI * Math.abs(radiusOf(station, blank.tape) - place.radius)) / left;
}

const agree = (blank: Blank, indices: readonly number[]): boolean => {
  const place = together(blank, indices);
  return indices.every((index) => {
    const station = blank.stations[index];
    return !station || timesOffPlace(blank, station, place) <= mostOff;
  });
};

/** Sum of squares of what is left of a place, in standard uncertainties of its readings. */
function squaresLeft(blank: Blank, indices: readonly number[]): number {
  const { radius } = together(blank, indices);
  return indices.reduce((sum, index) => {
    const station = blank.stations[index];
    if (!station) return sum;
    const off = 2 * Math.PI * (radiusOf(station, blank.tape) - radius);
    return sum + (off / surely(station, blank)) ** 2;
  }, 0);
}

function oddOne(
  blank: Blank,
  read: readonly { readonly station: Station; readonly index: number }[],
  indices: readonly number[],
): ReadingOff | undefined {
  const suspects = read
    .map((one) => ({ ...one, others: indices.filter((index) => index !== one.index) }))
    .filter(({ others }) => agree(blank, others))
    .map((suspect) => ({ ...suspect, left: squaresLeft(blank, suspect.others) }))
    .sort((a, b) => a.left - b.left);
  const [worst, next] = suspects;
  if (!worst || (next && next.left - worst.left < clearlyBetter)) return undefined;
  const { station, index, others } = worst;
  const { radius, uncertainty } = together(blank, others);
  const { kind, mm: read1 } = station.reading;
  const isAcross = kind === 'across';
  return {
    index,
    key: readingKey(station, index),
    kind,
    read: read1,
    shouldBe: isAcross ? 2 * radius : 2 * Math.PI * (radius + blank.tape / 2),
    uncertainty: isAcross ? uncertainty / Math.PI : uncertainty,
  };
}

const hundredths = (mm: number): string => inMm(Math.round(mm * 100) / 100);

/** `reading-off` (look): a reading of one place that cannot be right, or a place whose readings can't all be. */
export const placeReadingFindings = (blank: Blank): readonly Finding[] =>
  placesApart(blank).map(({ keys, least, most, off }) => {
    if (off) {
      const what = off.kind === 'across' ? 'diameter' : 'girth';
      const says = `a ${what} of ${hundredths(off.read)} cannot be right beside the other readings of that place: it should have been ${hundredths(off.shouldBe)}, give or take ${hundredths(2 * off.uncertainty)}; read it again`;
      return look('reading-off', { key: off.key }, says);
    }
    const says = `tells a girth that differs from ${keys.slice(1).join(' and ')} at the same place, ${hundredths(least)} to ${hundredths(most)}, more than ${mostOff} times what the readings leave open: one of them cannot be right, and they cannot tell which; read the place again`;
    return look('reading-off', { key: keys[0] ?? 'stations' }, says);
  });

/** How far a height and an along of one place may differ from the wall's own, in standard uncertainties of one reading. */
const mostApart = mostOff * Math.SQRT2;

/**
 * `wall-unsuited` (look): a place read both by height and along, where the wall through the stations is not so long.
 * A wall that bends is known by one of the two; the other only checks how far it bulges between its stations.
 */
export const lengthFindings = (
  { stations }: Blank,
  alongOf: (station: Station) => number,
  reading: number,
): readonly Finding[] =>
  stations.flatMap((station, index) => {
    const { along } = station.position;
    const before = stations[index - 1];
    const isTold = station.typed !== undefined && before?.typed?.station === station.typed.station;
    if (along === undefined || isTold) return [];
    const wall = alongOf(station);
    if (Math.abs(along - wall) <= mostApart * reading) return [];
    const says = `is read as ${hundredths(along)} along the wall, and the wall through these stations is ${hundredths(wall)} long up to there; read both again, or add a station where it bulges most`;
    return [look('wall-unsuited', { key: positionKey(station, index), along: wall }, says)];
  });
