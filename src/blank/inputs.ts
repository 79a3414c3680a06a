// The readings a wall stands on, each with how sure it is and what the blank would be had it read otherwise.
import type { Blank, Station } from './blank.ts';
import { climbUncertainty, type PaperFit } from './paper-miss.ts';
import { girthReading, placeReading } from './stations.ts';
import { firstFit, leastReading } from './wall-rows.ts';

/** One reading, and the blank as it would be had it read so much more. */
export interface Input {
  readonly uncertainty: number;
  readonly moved: (by: number) => Blank;
}

/** Every reading that has a part in the wall of a blank. */
export function inputsOf(blank: Blank): readonly Input[] {
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

export const withStation = (blank: Blank, index: number, change: Change): Blank => ({
  ...blank,
  stations: blank.stations.map((station, i) => (i === index ? change(station) : station)),
});

export const sizeMoved =
  (by: number): Change =>
  (station) => ({ ...station, reading: { ...station.reading, mm: station.reading.mm + by } });

/** A place read once is moved where it counts as a reading; read both ways it always is. Stations typed as one move as one. */
function placeInputs(blank: Blank, station: Station, index: number): readonly Input[] {
  const { position, typed } = station;
  if (typed !== undefined && blank.stations[index - 1]?.typed?.station === typed.station) return [];
  // A wall that bends goes by heights, or by alongs: what was read beside them only checks them.
  const isBoth = blank.wall === 'straight' && position.along !== undefined;
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

/** After paper fits the highest place of a straight wall counts as a reading: the wall's end is moved by it. */
const isTopOfFits = ({ wall, fits = [], stations }: Blank, index: number): boolean =>
  wall === 'straight' && fits.length > 0 && stations[index]?.position.mm === stations.at(-1)?.position.mm;

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
