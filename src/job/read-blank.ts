// A blank as typed in a *.blank.json file, or within a job, to the resolved blank.
import { type Blank, type Handle, type Station, standardReading } from '../blank/blank.ts';
import { flatBand } from '../blank/flat-band.ts';
import { handleProblems } from '../blank/handle-room.ts';
import { fitStraightWall } from '../blank/straight-wall.ts';
import { type Finding, Refused } from '../finding.ts';
import type { Units } from '../lengths/length.ts';
import {
  optional,
  type Place,
  placed,
  type Reader,
  readKeys,
  report,
  required,
  standard,
  within,
} from './schema.ts';
import { choice, inUnits, later, length, lengthOrZero, list, text, units, unitsOf } from './schema-values.ts';

export type { Blank };

export const stationKeys = {
  height: optional('Height', lengthOrZero),
  along: optional('Along the wall', lengthOrZero),
  across: optional('Across', length()),
  girth: optional('Girth', length()),
};

export const handleKeys = {
  spans: required('Handle spans', length()),
  keepOff: standard('Keep off the handle', lengthOrZero, 0),
};

const readStation: Reader<Station> = (value, place) => {
  const keys = readKeys(value, stationKeys, place);
  if (keys === undefined) return undefined;
  const position = oneOfTwo(value, keys, 'height', 'along', place);
  const reading = oneOfTwo(value, keys, 'across', 'girth', place);
  return position && reading ? { position, reading } : undefined;
};

/** The one of two keys that is given, with its value; both or neither is reported. */
function oneOfTwo<A extends string, B extends string>(
  given: unknown,
  values: Readonly<Record<A | B, number | undefined>>,
  a: A,
  b: B,
  place: Place,
): { readonly kind: A | B; readonly mm: number } | undefined {
  const kinds = [a, b].filter((name) => Object.hasOwn(Object(given), name));
  const [kind] = kinds;
  if (kind === undefined) return report(place, 'one-of-two', `has no "${a}" and no "${b}"; give one of them`);
  if (kinds.length > 1)
    return report(within(place, b), 'one-of-two', `is given beside "${a}"; keep one of the two`);
  const mm = values[kind];
  return mm === undefined ? undefined : { kind, mm };
}

const readHandle: Reader<Handle> = (value, place) => {
  const keys = readKeys(value, handleKeys, place);
  return keys?.spans === undefined ? undefined : { spans: keys.spans, keepOff: keys.keepOff };
};

export const blankKeys = {
  name: standard('Name', text, 'unnamed blank'),
  units: optional('Units', units),
  stations: required('Stations', list(readStation)),
  footRound: standard('Foot round', lengthOrZero, 0),
  lipRound: standard('Lip round', lengthOrZero, 0),
  wall: standard('Wall', choice<'straight'>(['straight'], ['stepped', 'smooth']), 'straight'),
  handle: optional('Handle', readHandle),
  reading: standard('Reading', lengthOrZero, standardReading),
  heightReading: standard('Height reading', lengthOrZero, 0),
  tape: standard('Tape thickness', lengthOrZero, 0),
  fits: optional('Fits', later('leave it out, and correct the stations by hand')),
};

/** A blank within another value. Its own `units` go before those around it. */
export const readBlankAt: Reader<Blank> = (value, around) => {
  const found: Finding[] = [];
  const place = {
    ...inUnits(around, unitsOf(value, around.units)),
    report: (f: Finding) => void found.push(f),
  };
  const keys = readKeys(value, blankKeys, place);
  if (keys?.stations !== undefined && found.length === 0) {
    const { units: _, fits: __, stations, handle, ...rest } = keys;
    const blank: Blank = { ...rest, stations, ...(handle === undefined ? {} : { handle }) };
    found.push(...placed(wallProblems(blank), place));
    if (found.length === 0) return blank;
  }
  found.forEach(around.report);
  return undefined;
};

/** What stops these readings from being a wall that film can go onto. */
function wallProblems(blank: Blank): readonly Finding[] {
  try {
    const wall = fitStraightWall(blank);
    flatBand(wall, blank);
    return blank.handle === undefined ? [] : handleProblems(blank.handle, wall);
  } catch (error) {
    if (error instanceof Refused) return error.findings;
    throw error;
  }
}

/**
 * The blank that a parsed file holds. A blank that is given can be fitted: the fit and its flat band have been tried.
 * `around`: the unit of bare numbers when the file names none.
 * @throws Refused with every problem, each with its file and key.
 */
export function readBlank(value: unknown, file: string, around: Units = 'mm'): Blank {
  const problems: Finding[] = [];
  const blank = readBlankAt(value, { file, key: '', units: around, report: (f) => void problems.push(f) });
  if (blank === undefined) throw new Refused(problems);
  return blank;
}
