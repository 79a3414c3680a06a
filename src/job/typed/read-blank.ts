// A blank as typed in a *.blank.json file, or within a job, to the resolved blank.
import { type Blank, type Handle, standardReading } from '../../blank/blank.ts';
import { standardFlatGap } from '../../blank/straightedge.ts';
import { type Finding, Refused } from '../../finding.ts';
import type { Units } from '../../lengths/length.ts';
import { fitKeys, readFit } from './read-fits.ts';
import { keepOutKeys, readKeepOut } from './read-keep-outs.ts';
import { readStations, stationKeys } from './read-stations.ts';
import {
  holding,
  holdingList,
  isObject,
  isTyped,
  optional,
  placed,
  type Reader,
  readKeys,
  report,
  required,
  standard,
} from './schema.ts';
import { choice, given, inUnits, length, lengthOrZero, list, text, units, unitsOf } from './schema-values.ts';
import { settleBlank } from './settle-blank.ts';

export type { Blank };

const handleKeys = {
  spans: required('Handle spans', length()),
  keepOff: standard('Keep off the handle', lengthOrZero, 0),
};

const readHandle: Reader<Handle> = (value, place) => {
  const keys = readKeys(value, handleKeys, place);
  return keys?.spans === undefined ? undefined : { spans: keys.spans, keepOff: keys.keepOff };
};

export const blankKeys = {
  name: standard('Name', text, 'unnamed blank'),
  units: optional('Units', units),
  stations: holdingList(required('Stations', readStations), stationKeys),
  footRound: standard('Foot round', lengthOrZero, 0),
  lipRound: standard('Lip round', lengthOrZero, 0),
  wall: standard(
    'Wall',
    choice<'straight' | 'stepped' | 'smooth'>(['straight', 'stepped', 'smooth']),
    'straight',
  ),
  flatGap: standard('Gap under a straightedge', lengthOrZero, standardFlatGap),
  handle: holding(optional('Handle', readHandle), handleKeys),
  reading: standard('Reading', lengthOrZero, standardReading),
  heightReading: standard('Height reading', lengthOrZero, 0),
  tape: standard('Tape thickness', lengthOrZero, 0),
  keepOut: holdingList(standard('Keep out', list(readKeepOut), []), keepOutKeys),
  fits: holdingList(standard('Fits', list(readFit), []), fitKeys),
  use: optional('Use', choice<'drinking' | 'other'>(['drinking', 'other'])),
  lipZone: optional('Lip zone', lengthOrZero),
  source: optional('Source', text),
};

/** Whether a file's content is a job: as a blank it would be told key by key. */
export const isJob = (value: unknown): boolean =>
  isObject(value) && 'blank' in value && !('stations' in value);

/** A blank within another value. Its own `units` go before those around it. */
export const readBlankAt: Reader<Blank> = (value, around) => {
  const found: Finding[] = [];
  const place = {
    ...inUnits(around, unitsOf(value, around.units)),
    report: (f: Finding) => void found.push(f),
  };
  if (isJob(value))
    return report(around, 'not-a-blank', 'is a job, not a blank; give the file its "blank" names');
  const keys = readKeys(value, blankKeys, place);
  if (keys?.stations !== undefined && found.length === 0) {
    const { units: _, fits, stations, handle, keepOut, use, lipZone, source, ...rest } = keys;
    const kept = {
      ...(keepOut.length > 0 ? { keepOuts: keepOut } : {}),
      ...(isTyped(value, 'reading') ? {} : { isReadingAssumed: true as const }),
    };
    const bare: Blank = { ...rest, stations, ...given({ handle, use, lipZone, source }), ...kept };
    const settled = settleBlank(bare, fits);
    if ('blank' in settled) return settled.blank;
    found.push(...placed(settled.problems, place));
  }
  found.forEach(around.report);
  return undefined;
};

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
