// How sure any figure of a blank is, by the law of propagation of uncertainty.
import type { Blank, Station } from './blank.ts';
import { climbUncertainty, type PaperFit } from './paper-miss.ts';
import { girthReading, placeReading } from './stations.ts';
import { type StraightWall, solveWall } from './straight-wall.ts';
import { firstFit, leastReading } from './wall-rows.ts';

/** One reading, and the blank as it would be had it read so much more. */
interface Input {
  readonly uncertainty: number;
  readonly moved: (by: number) => Blank;
}

/** A figure of the wall, in its own unit. */
export type Figure = (wall: StraightWall) => number;

/**
 * Standard uncertainties of figures of the fitted wall, each in its own unit: the root of the sum of squares of what
 * each reading's own standard uncertainty moves it by, with the wall fitted anew. Readings are taken as independent.
 * Source: JCGM 100:2008, 5.1.2, equation (10), with the sensitivities of 5.1.4 found by trying rather than by formula.
 */
export function uncertaintiesOf(blank: Blank, figures: readonly Figure[]): readonly number[] {
  const changes = inputsOf(blank).map(({ uncertainty, moved }) => changesOf(moved, uncertainty, figures));
  return figures.map((_, i) => Math.hypot(...changes.map((change) => change[i] ?? 0)));
}

/** By how much half a mm more of each station's reading moves the figures, in the order of the stations. */
export const halfMillimetre = (blank: Blank, figures: readonly Figure[]): readonly (readonly number[])[] =>
  blank.stations.map((_, i) => changesOf((by) => withStation(blank, i, sizeMoved(by)), 0.5, figures));

/**
 * The part of an uncertainty that is tried: small, so that the figures are as good as straight over it and no wall near
 * the limits is moved past them.
 */
const tried = 1e-3;

/** Least step tried, mm: far over what a fit settles to. */
const leastStep = 1e-6;

/** What a change of so much in one reading changes each figure by: central differences over a small part of it. */
function changesOf(moved: Input['moved'], change: number, figures: readonly Figure[]): readonly number[] {
  const step = Math.max(leastStep, tried * change);
  const at = (by: number): readonly number[] => {
    const wall = solveWall(moved(by));
    return figures.map((figure) => figure(wall));
  };
  const [more, less] = [at(step), at(-step)];
  return more.map((value, i) => ((value - (less[i] ?? value)) / (2 * step)) * change);
}

function inputsOf(blank: Blank): readonly Input[] {
  const reading = Math.max(blank.reading, leastReading);
  return [
    ...blank.stations.flatMap((station, i): Input[] => {
      const u = girthReading(station, reading) / (station.reading.kind === 'across' ? Math.PI : 1);
      return [
        { uncertainty: u, moved: (by) => withStation(blank, i, sizeMoved(by)) },
        ...placeInputs(blank, station, i),
      ];
    }),
    ...(blank.fits ?? []).flatMap((fit, i) => (i < (firstFit(blank) ?? 0) ? [] : fitInputs(blank, fit, i))),
  ];
}

type Change = (station: Station) => Station;

const withStation = (blank: Blank, index: number, change: Change): Blank => ({
  ...blank,
  stations: blank.stations.map((station, i) => (i === index ? change(station) : station)),
});

const sizeMoved =
  (by: number): Change =>
  (station) => ({ ...station, reading: { ...station.reading, mm: station.reading.mm + by } });

/** A place read once is moved where it counts as a reading; read both ways it always is. Stations typed as one move as one. */
function placeInputs(blank: Blank, station: Station, index: number): readonly Input[] {
  const { position, typed } = station;
  if (typed !== undefined && blank.stations[index - 1]?.typed?.station === typed.station) return [];
  const isBoth = position.along !== undefined;
  const isExact = blank.heightReading === 0 && !isBoth && !isTopOfFits(blank, index);
  if (isExact) return [];
  const moved = (change: Change): Blank => ({
    ...blank,
    stations: blank.stations.map((other, i) =>
      i === index || (typed !== undefined && other.typed?.station === typed.station) ? change(other) : other,
    ),
  });
  const uncertainty = placeReading(blank);
  const by = (key: 'mm' | 'along') => ({
    uncertainty,
    moved: (more: number) =>
      moved((other) => ({
        ...other,
        position: { ...other.position, [key]: (other.position[key] ?? 0) + more },
      })),
  });
  return isBoth ? [by('mm'), by('along')] : [by('mm')];
}

/** After paper fits the highest place counts as a reading: the wall's end is moved by it. */
const isTopOfFits = ({ fits = [], stations }: Blank, index: number): boolean =>
  fits.length > 0 && stations[index]?.position.mm === stations.at(-1)?.position.mm;

function fitInputs(blank: Blank, fit: PaperFit, index: number): readonly Input[] {
  const u = Math.max(fit.reading, leastReading);
  const by = (key: 'foot' | 'lip' | 'climb', uncertainty: number): Input => ({
    uncertainty,
    moved: (more) => ({
      ...blank,
      fits: (blank.fits ?? []).map((other, i) =>
        i === index ? { ...other, [key]: (other[key] ?? 0) + more } : other,
      ),
    }),
  });
  return [
    by('foot', u),
    by('lip', u),
    ...(fit.climb === undefined ? [] : [by('climb', climbUncertainty(fit, leastReading))]),
  ];
}
