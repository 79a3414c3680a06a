// Between what stands in a field and what stands in the file.
import { formatLength, parseLength, type Units } from '../../lengths/length.ts';
import type { Json } from './bench.ts';

/**
 * A length as it is kept in the file: a number where it is one of the file's own unit, else a text with its unit. What
 * can't be read is kept as typed, so that the engine says what is wrong with it.
 */
export function lengthToFile(text: string, units: Units, fileUnits: Units): Json | undefined {
  const typed = text.trim();
  if (typed === '') return undefined;
  const hasUnit = parseLength(typed, { units, bare: 'number', sign: 'any' }).ok;
  if (hasUnit || !parseLength(typed, { units, bare: 'text-too', sign: 'any' }).ok) return typed;
  const number = Number(typed);
  return Number.isFinite(number) && units === fileUnits ? number : `${typed}${units}`;
}

/** Digits of a length that the page works out, by the file's unit: a hundredth of a mm, a thousandth of an inch. */
const digits: Readonly<Record<Units, number>> = { mm: 2, in: 3 };

/** A length in mm as a file of these units has it. */
export const lengthInFile = (mm: number, fileUnits: Units): number =>
  Number((fileUnits === 'in' ? mm / 25.4 : mm).toFixed(digits[fileUnits]));

/** What a field shows of a length in the file: a number of another unit than the maker's own says so. */
export const lengthToField = (value: Json | undefined, units: Units, fileUnits: Units): string =>
  typeof value === 'number' && units !== fileUnits ? `${value}${fileUnits}` : shownText(value);

/** Whether what stands in a field is a length with a unit of its own: then the maker's is not beside it. */
export const namesItsUnit = (shown: string): boolean =>
  parseLength(shown, { units: 'mm', bare: 'number', sign: 'any' }).ok;

/** What goes without saying, in the maker's unit, which stands beside it: `6 mm` as `6`, or as `0.2362`; words as they are. */
export function standardToField(standard: string, units: Units): string {
  const length = parseLength(standard, { units: 'mm', bare: 'number' });
  return length.ok ? formatLength(length.mm, units).replace(/ (mm|in)$/, '') : standard;
}

/** Lengths parted by commas, each as `lengthToFile` keeps it. */
export function lengthsToFile(text: string, units: Units, fileUnits: Units): Json | undefined {
  const lengths = text.split(/[,;]/).flatMap((part) => lengthToFile(part, units, fileUnits) ?? []);
  return lengths.length > 0 ? lengths : undefined;
}

/** What a field shows of a list of lengths. */
export const lengthsToField = (value: Json | undefined, units: Units, fileUnits: Units): string =>
  Array.isArray(value)
    ? value.map((one) => lengthToField(one, units, fileUnits)).join(', ')
    : shownText(value);

/** A number as it is kept in the file. */
export function numberToFile(text: string): Json | undefined {
  const typed = text.trim();
  if (typed === '') return undefined;
  const number = Number(typed);
  return Number.isFinite(number) ? number : typed;
}

export const shownText = (value: Json | undefined): string => {
  if (value === undefined || value === null) return '';
  if (typeof value === 'string') return value;
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : JSON.stringify(value);
};
