// What single readings tell beside the wall: places out of round, sizes no cup has, paper that cannot have missed so.
import { type Finding, look, note } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import type { Blank, Station } from './blank.ts';
import { mostOff, timesOff } from './reading-off.ts';
import { isOnePlace, measuredGirth, outOfRound, readingKey } from './stations.ts';
import type { Reconciled, RowResidual } from './straight-wall.ts';

/** Girths that are asked about, mm: a hand holds no less, two arms no more; and what not even a crane lifts in. Ours. */
const oddGirth = { least: 40, most: 2000, mostOfCrane: 6000 };

export const isUsualGirth = (girth: number): boolean => girth >= oddGirth.least && girth <= oddGirth.most;

/** Findings on readings taken by themselves: `out-of-round` (look or note) and `odd-size` (look). */
export const placeFindings = (blank: Blank): readonly Finding[] => [
  ...placesOutOfRound(blank).map((place) => outOfRoundFinding(place, blank.reading)),
  ...oddSizes(blank),
];

/** A place of which several diameters were read. */
export interface OutOfRound {
  readonly key: string;
  readonly diameters: readonly number[];
  /** Half the difference of the most and the least, mm. */
  readonly outOfRound: number;
}

/** Places with two diameters or more, typed as one list or as several stations. */
export function placesOutOfRound({ stations }: Blank): readonly OutOfRound[] {
  const isAcross = ({ reading }: Station) => reading.kind === 'across';
  return stations.flatMap((station, index) => {
    if (
      !isAcross(station) ||
      stations.slice(0, index).some((before) => isAcross(before) && isOnePlace(before, station))
    )
      return [];
    const diameters = stations
      .filter((other) => isAcross(other) && isOnePlace(station, other))
      .flatMap(({ reading }) => reading.diameters ?? [reading.mm]);
    if (outOfRound(diameters) === 0) return [];
    return [{ key: readingKey(station, index), diameters, outOfRound: outOfRound(diameters) }];
  });
}

function outOfRoundFinding({ key, diameters, outOfRound: half }: OutOfRound, reading: number): Finding {
  const mean = diameters.reduce((sum, d) => sum + d, 0) / diameters.length;
  // Two good readings differ by less than this 19 times in 20: k = 2 on the difference of two.
  const isMore = 2 * half > 2 * Math.SQRT2 * reading;
  const says =
    `${diameters.map(inMm).join(' and ')} at one place: out of round by ${inMm(half)} either way of their mean, ${inMm(mean)}` +
    `${isMore ? ', more than reading alone explains' : ''}; it counts as doubt of that diameter, and a tape around it reads the girth whatever its shape`;
  return (isMore ? look : note)('out-of-round', { key }, says);
}

function oddSizes(blank: Blank): readonly Finding[] {
  return blank.stations.flatMap((station, index) => {
    const girth = measuredGirth(station, blank.tape);
    if (isUsualGirth(girth)) return [];
    const says = `${inMm(station.reading.mm)} makes a girth of ${inMm(Math.round(girth * 10) / 10)}, ${oddness(girth)} (${inMm(oddGirth.least)} to ${inMm(oddGirth.most)} is usual); is it meant, and is the unit right?`;
    return [look('odd-size', { key: readingKey(station, index) }, says)];
  });
}

function oddness(girth: number): string {
  if (girth < oddGirth.least) return 'less than a hand can hold';
  return girth > oddGirth.mostOfCrane ? 'more than a crane can lift in' : 'more than two arms reach around';
}

/** Findings on paper fits: `fit-unlikely` (look), and `reading-replaced` (note) for stations they speak against. */
export const fitFindings = (blank: Blank, wall: Reconciled): readonly Finding[] => [
  ...wall.rows.flatMap(unlikely),
  ...replacedStations(blank, wall),
];

function unlikely(row: RowResidual): readonly Finding[] {
  const { of, index } = row.name;
  if (of === 'station' || of === 'pair' || timesOff(row) <= mostOff) return [];
  const says =
    of === 'climb'
      ? `does not go with what it missed by at its two ends: ${inMm(Math.abs(row.residual))} ${row.residual > 0 ? 'more' : 'less'} climb than that taper gives; the start was probably not laid true up the wall, so wrap it once more`
      : `does not go with the other figures of the paper fits, by ${inMm(Math.abs(row.residual))}; wrap it once more and read it again`;
  return [look('fit-unlikely', { key: `fits[${index}].${of}` }, says)];
}

function replacedStations(blank: Blank, wall: Reconciled): readonly Finding[] {
  return wall.residuals.flatMap((residual) => {
    const station = blank.stations[residual.station];
    if (!residual.isReplaced || station === undefined || timesOff(residual) <= mostOff) return [];
    const shouldBe = residual.measured - residual.residual;
    const typed = station.reading.kind === 'across' ? shouldBe / Math.PI : shouldBe + Math.PI * blank.tape;
    const says = `${inMm(station.reading.mm)} is not what the paper showed: at that place it should have been ${inMm(Math.round(typed * 10) / 10)}, or the place was read wrongly; the paper fit stands in its place`;
    return [
      note('reading-replaced', { key: readingKey(station, residual.station), along: residual.along }, says),
    ];
  });
}
