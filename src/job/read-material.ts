// Film and sheet of a job: typed in it, or in a file of their own that the job names.
import { inMm } from '../lengths/length.ts';
import { type Film, type Job, standardFilm } from './resolved-job.ts';
import {
  isObject,
  type Keys,
  optional,
  type Place,
  type Reader,
  readKeys,
  report,
  required,
  standard,
  type Values,
  within,
} from './schema.ts';
import { inUnits, length, lengthOrZero, number, text, units, unitsOf } from './schema-values.ts';

/** The files a job names, by path as typed, each parsed. */
export type NamedFiles = Readonly<Record<string, unknown>>;

/** The files a parsed job names for its film and its sheet, each with the key that names it. */
export function materialFiles(job: unknown): readonly { readonly key: string; readonly file: string }[] {
  return (['film', 'sheet'] as const).flatMap((key) => {
    const file = isObject(job) ? job[key] : undefined;
    return typeof file === 'string' && file.trim() !== '' ? [{ key, file }] : [];
  });
}

/** What a file of a material says of itself, besides its figures. */
const materialKeys = {
  name: optional('Name', text),
  source: optional('Source', text),
  units: optional('Units', units),
};

export const filmKeys = {
  thickness: standard('Film thickness', lengthOrZero, standardFilm.thickness),
  stretch: standard('Film stretch', number({ least: 0, most: 0.5 }), standardFilm.stretch),
  gather: standard('Film gather', number({ least: 0, most: 0.5 }), standardFilm.gather),
  minWidth: standard('Thinnest film', lengthOrZero, standardFilm.minWidth),
  minGap: standard('Narrowest gap', lengthOrZero, standardFilm.minGap),
  minPiece: standard('Smallest piece, mm²', number({ least: 0, most: 1e6 }), standardFilm.minPiece),
};

export const sheetKeys = {
  across: required('Sheet across', length()),
  up: required('Sheet up', length()),
  margin: standard('Sheet margin', lengthOrZero, 0),
};

/** Keys typed in the job; or, where a path is typed, those of its file. `at`: where they were really typed. */
function keysOf<K extends Keys>(
  value: unknown,
  place: Place,
  keys: K,
  named: NamedFiles,
): { readonly values: Values<K>; readonly at: Place } | undefined {
  if (typeof value !== 'string') {
    const values = readKeys(value, keys, place);
    return values && { values, at: place };
  }
  const file = text(value, place);
  if (file === undefined) return undefined;
  if (!Object.hasOwn(named, file))
    return report(place, 'unreadable', 'names a file that was not read; give the figures themselves');
  const content = named[file];
  const at = { ...inUnits(place, unitsOf(content, 'mm')), file, key: '' };
  // The file's own name and source are read for their faults only.
  const values = readKeys(content, { ...materialKeys, ...keys }, at);
  return values && { values, at };
}

export const filmReader =
  (named: NamedFiles): Reader<Film> =>
  (value, place) => {
    const read = keysOf(value, place, filmKeys, named);
    if (!read) return undefined;
    const { thickness, stretch, gather, minWidth, minGap, minPiece } = read.values;
    return { thickness, stretch, gather, minWidth, minGap, minPiece };
  };

export const sheetReader =
  (named: NamedFiles): Reader<Job['sheet']> =>
  (value, place) => {
    const read = keysOf(value, place, sheetKeys, named);
    if (read?.values.across === undefined || read.values.up === undefined) return undefined;
    const { across, up, margin } = read.values;
    if (2 * margin < Math.min(across, up)) return { across, up, margin };
    const says = `${inMm(margin)} on either side leaves nothing of the sheet; give a smaller margin`;
    return report(within(read.at, 'margin'), 'margin-too-wide', says);
  };
