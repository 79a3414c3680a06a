// Readers of single values: lengths, numbers, texts, choices, lists.
import { type LengthOptions, parseLength, type Units } from '../../lengths/length.ts';
import { type NumberOptions, parseNumber, parseShare } from '../../lengths/number.ts';
import { shown } from '../../lengths/shown.ts';
import { type Given, isObject, type Place, type Reader, report, within } from './schema.ts';

/** Longest text taken for a name: more will not stand on a guide or in a file list. */
const mostText = 200;

/** A length, in mm; `sign`, `most` and `least` as in `LengthOptions`. */
export const length =
  (options: Pick<LengthOptions, 'sign' | 'most' | 'least'> = {}): Reader<number> =>
  (value, place) => {
    const parsed = parseLength(value, { ...options, units: place.units, bare: 'number' });
    return parsed.ok ? parsed.mm : report(place, 'not-a-length', parsed.says);
  };

/** A length that may be 0. */
export const lengthOrZero: Reader<number> = length({ sign: 'zero-too' });

/** A length that may be 0 or negative: a displacement. */
export const displacement: Reader<number> = length({ sign: 'any' });

export const number =
  (options: NumberOptions): Reader<number> =>
  (value, place) => {
    const parsed = parseNumber(value, options);
    return parsed.ok ? parsed.value : report(place, 'not-a-number', parsed.says);
  };

/** A share of a whole, up to `most`. */
export const share =
  (most: number): Reader<number> =>
  (value, place) => {
    const parsed = parseShare(value, most);
    return parsed.ok ? parsed.value : report(place, 'not-a-number', parsed.says);
  };

/** What no drawing or page could hold: letters that steer a printer, and places of the alphabet that no letter will ever have. */
const unwritable = /[\p{Cc}\p{Noncharacter_Code_Point}]/u;

/** A text that says something, on one line. */
export const text: Reader<string> = (value, place) => {
  if (typeof value === 'string' && value.trim() !== '' && value.length <= mostText && !unwritable.test(value))
    return value;
  return report(
    place,
    'not-text',
    `${shown(value)} will not do here; give a text of one line, up to ${mostText} letters`,
  );
};

export const yesOrNo: Reader<boolean> = (value, place) =>
  typeof value === 'boolean'
    ? value
    : report(place, 'not-yes-or-no', `${shown(value)} will not do here; give true or false`);

/** One of some words. */
export const choice =
  <T extends string>(words: readonly T[]): Reader<T> =>
  (value, place) => {
    const found = words.find((word) => word === value);
    if (found !== undefined) return found;
    const allowed = words.map(shown).join(' or ');
    return report(place, 'not-a-choice', `${shown(value)} will not do here; give ${allowed}`);
  };

/** More in one list is a slip, or made to do harm: all that a job lays singly is held against all else. */
export const mostInList = 200;

/** A list, each item read by `read`; an item that was reported is left out of what is given. */
export const list =
  <T>(read: Reader<T>): Reader<readonly T[]> =>
  (value, place) => {
    if (!Array.isArray(value))
      return report(place, 'not-a-list', `${shown(value)} will not do here; give a list, [ ... ]`);
    if (value.length > mostInList) return tooLong(value.length, place);
    return value.map((item, index) => read(item, within(place, index))).filter((item) => item !== undefined);
  };

/** Reports a list that is longer than any is read. */
export const tooLong = (length: number, place: Place): undefined =>
  report(place, 'too-many', `has ${length} in its list; up to ${mostInList} are read`);

/** The units a file's bare numbers are in: its own `units`, or those around it. A wrong one is reported with the keys. */
export const unitsOf = (value: unknown, around: Units): Units => {
  const units = isObject(value) ? value.units : undefined;
  return units === 'mm' || units === 'in' ? units : around;
};

export const units: Reader<Units> = choice<Units>(['mm', 'in']);

/** The same place with another unit for bare numbers. */
export const inUnits = (place: Place, unit: Units): Place => ({ ...place, units: unit });

/** Only the values that are there, so that a key left out stays left out. */
export function given<T extends Given>(values: T): { readonly [N in keyof T]?: Exclude<T[N], undefined> } {
  const entries = Object.entries(values).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as { readonly [N in keyof T]?: Exclude<T[N], undefined> };
}
