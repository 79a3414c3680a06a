// Film, sheet and cutter of a job: typed in it, or in a file of their own that the job names.
import { type Finding, Refused } from '../../finding.ts';
import { degrees, radians } from '../../lengths/angle.ts';
import { inMm } from '../../lengths/length.ts';
import { givingKeys, readGiving } from './film-giving.ts';
import { type Film, mostGiving, standardFilm, standardSpacing } from './material.ts';
import type { Job } from './resolved-job.ts';
import {
  holding,
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
import {
  choice,
  given,
  inUnits,
  length,
  lengthOrZero,
  number,
  share,
  text,
  units,
  unitsOf,
  yesOrNo,
} from './schema-values.ts';

/** The files a job names, by path as typed, each parsed. */
export type NamedFiles = Readonly<Record<string, unknown>>;

/** The files a parsed job names for its film, sheet, cutter and printer, each with the key that names it. */
export function materialFiles(job: unknown): readonly { readonly key: string; readonly file: string }[] {
  return (['film', 'sheet', 'cutter', 'printer'] as const).flatMap((key) => {
    const file = isObject(job) ? job[key] : undefined;
    return typeof file === 'string' && file.trim() !== '' ? [{ key, file }] : [];
  });
}

/** A source for each of some figures. */
function sources(value: unknown, place: Place): Readonly<Record<string, string>> | undefined {
  if (!isObject(value)) return report(place, 'not-an-object', 'will not do here; give an object of texts');
  const entries = Object.entries(value).flatMap(([key, source]) => {
    const read = text(source, within(place, key));
    return read === undefined ? [] : [[key, read] as const];
  });
  return Object.fromEntries(entries);
}

/** What a file of a material says of itself, besides its figures. */
const materialKeys = {
  name: optional('Name', text),
  source: optional('Source', text),
  sources: optional('Source of each figure', sources),
  units: optional('Units', units),
};

/**
 * mm: film that holds only where it is wider than `most` is none, and mending by it would take minutes; under `least`, a tenth of what is
 * cut to, no film or gap is looked for: places as near to each other as that would be looked at without end.
 */
export const boundsOfWidth = { most: 10, least: 0.001 };

const leastWidth = length({ sign: 'zero-too', ...boundsOfWidth });

export const filmKeys = {
  thickness: standard('Film thickness', lengthOrZero, standardFilm.thickness),
  stretch: standard('Film stretch', share(mostGiving), standardFilm.stretch),
  gather: standard('Film gather', share(mostGiving), standardFilm.gather),
  minWidth: standard('Thinnest film', leastWidth, standardFilm.minWidth),
  minGap: standard('Narrowest gap', leastWidth, standardFilm.minGap),
  minPiece: standard('Smallest piece, mm²', number({ least: 0, most: 1e6 }), standardFilm.minPiece),
  minAngle: standard(
    'Sharpest point, degrees',
    number({ least: 0, most: 90 }),
    degrees(standardFilm.minAngle),
  ),
  use: standard('Use', choice<Film['use']>(['decal', 'mask']), standardFilm.use),
  measured: holding(optional('What its test strip measured', readGiving), givingKeys),
  grain: optional('Grain', choice<'across' | 'up'>(['across', 'up'])),
};

export const sheetKeys = {
  across: required('Sheet across', length()),
  up: optional('Sheet up', length()),
  margin: standard('Sheet margin', lengthOrZero, 0),
  spacing: standard('Between pieces', lengthOrZero, standardSpacing),
  mirror: standard('Mirrored', yesOrNo, false),
  price: optional('Price of a sheet, or of a metre of a roll', number({ least: 0, most: 1e6 })),
};

/** Keys typed in the job; or, where a path is typed, those of its file. `at`: where they were really typed. */
export function keysOf<K extends Keys>(
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
    const { thickness, stretch, gather, minWidth, minGap, minPiece, minAngle, use, grain, measured } =
      read.values;
    const sizes = { thickness, stretch, gather, minWidth, minGap, minPiece };
    return { ...sizes, minAngle: radians(minAngle), use, ...given({ grain, measured }) };
  };

export const sheetReader =
  (named: NamedFiles): Reader<Job['sheet']> =>
  (value, place) => {
    const read = keysOf(value, place, sheetKeys, named);
    if (read?.values.across === undefined) return undefined;
    const { across, up, margin, spacing, mirror, price } = read.values;
    if (2 * margin < Math.min(across, up ?? across))
      return { across, margin, spacing, mirror, ...given({ up, price }) };
    const says = `${inMm(margin)} on either side leaves nothing of the sheet; give a smaller margin`;
    return report(within(read.at, 'margin'), 'margin-too-wide', says);
  };

/** The film or the cutter of a parsed file that is nothing else. @throws Refused */
export function ownFile<T>(reader: (named: NamedFiles) => Reader<T>, content: unknown, file: string): T {
  const problems: Finding[] = [];
  const place: Place = { file: '', key: '', units: 'mm', report: (finding) => void problems.push(finding) };
  const read = reader({ [file]: content })(file, place);
  if (read === undefined || problems.length > 0) throw new Refused(problems);
  return read;
}

export const readFilm = (content: unknown, file: string): Film => ownFile(filmReader, content, file);
