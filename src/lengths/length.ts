// Lengths as people type them, to mm and back.
import { shown } from './shown.ts';

/** The unit that a bare number is in. */
export type Units = 'mm' | 'in';

/** Longest length taken as meant, mm: nobody wraps a vessel of 10 m by hand, so past it a unit or a key has slipped. */
export const mostLength = 10_000;

/** Least size of a vessel or of artwork taken as meant, mm: under it a unit has slipped. */
export const leastSize = 0.1;

export interface LengthOptions {
  /** The unit of a bare number. */
  readonly units: Units;
  /** `number`: only a real number may go without a unit, as in a file. `text-too`: so may text, as on the command line. */
  readonly bare: 'number' | 'text-too';
  /** Which signs are allowed; default `positive`. */
  readonly sign?: 'positive' | 'zero-too' | 'any';
  /** Greatest size allowed, mm; default `mostLength`. */
  readonly most?: number;
  /** Smallest size allowed but for 0, mm; default any. */
  readonly least?: number;
}

export type ParsedLength =
  | { readonly ok: true; readonly mm: number }
  | { readonly ok: false; readonly says: string };

/** A length as typed: numerator / denominator of the unit, so that it is rounded only once on its way to mm. */
interface Quantity {
  readonly numerator: number;
  readonly denominator: number;
  /** What stood after the number. */
  readonly rest: string;
}

const refusal = (says: string): ParsedLength => ({ ok: false, says });

/**
 * A length as typed, in mm: `86`, `"86mm"`, `"8.6cm"`, `"3.375in"`, `"3 3/8in"`, `3-3/8"`, `3⅜″`.
 *
 * An inch is 25.4 mm exactly (international yard and pound agreement, 1959); the result is the nearest double to the
 * exact value for anything a person would type. Refuses, in a sentence that names the value as typed: what is missing,
 * not finite, of a wrong sign, over `most` or under `least`, without a unit where text needs one, with an unknown unit, with a decimal
 * comma, or with a fraction that makes no sense.
 */
export function parseLength(value: unknown, options: LengthOptions): ParsedLength {
  if (value === undefined || value === null)
    return refusal(`is missing; give a length, ${suchAs(options.units)}`);
  if (typeof value === 'number') return fromNumber(value, options);
  if (typeof value === 'string') return fromText(value, options);
  return refusal(`${shown(value)} is not a length; give one, ${suchAs(options.units)}`);
}

/** A length as a maker would type it: mm to 0.001, inches as a fraction where they are whole 64ths, else to 0.0001. */
export function formatLength(mm: number, units: Units): string {
  if (units === 'mm') return `${rounded(mm, 3)} mm`;
  const parts = (mm / 25.4) * 64;
  // A 64th is the finest division of a maker's rule; the margin only absorbs rounding of the division above.
  const isWhole = Math.abs(parts - Math.round(parts)) < 1e-9 * Math.max(1, Math.abs(parts));
  return isWhole ? `${inSixtyFourths(Math.round(parts))} in` : `${rounded(mm / 25.4, 4)} in`;
}

/** A length as findings and guides tell it: in mm, to the 0.01 mm that is cut to; what is thinner than 1 mm to 0.001. */
export const inMm = (mm: number): string => `${rounded(mm, Math.abs(mm) < 1 ? 3 : 2)} mm`;

/** The same in the maker's unit, from the length itself: in inches to 0.001, what is thinner than 1 mm to 0.0001. */
export const cutLength = (mm: number, units: Units): string =>
  units === 'mm' ? inMm(mm) : `${rounded(mm / 25.4, Math.abs(mm) < 1 ? 4 : 3)} in`;

/**
 * How far a length of 1 mm and more that `inMm` tells may lie from the true one, mm: half its last digit, and half a thousandth where it
 * is told in inches. Who types back what was told has done enough.
 */
export const inMmErrs = 0.01 / 2 + 0.0254 / 2;

/** A small area of film, mm². */
export const smallArea = (area: number): string =>
  area < 0.01 ? 'under 0.01 mm²' : `${area.toFixed(2)} mm²`;

/** A length that was read, or follows from what was: to 0.1 mm or 0.001 in; finer would claim more than a tape can tell. */
export const measuredLength = (mm: number, units: Units): string =>
  units === 'mm' ? `${rounded(mm, 1)} mm` : `${rounded(mm / 25.4, 3)} in`;

/** How far a length that `measuredLength` tells in mm may lie from the true one, as of `inMm`. */
export const measuredErrs = 0.1 / 2 + 0.0254 / 2;

/** What is set on a machine, which is asked for it in one unit or the other: `0.25 mm (0.0098 in)`. */
export const inBothUnits = (mm: number): string => `${inMm(mm)} (${rounded(mm / 25.4, 4)} in)`;

/** A length as a tape in inches shows it, to its nearest sixteenth: `22 3/8`. */
export const onInchTape = (mm: number): string => inSixtyFourths(Math.round((mm / 25.4) * 16) * 4);

const suchAs = (units: Units): string => (units === 'mm' ? 'such as "62mm"' : 'such as "2 1/2in"');

/** Decimal digits without an exponent, closing zeros or a negative zero. Halves go away from 0, as people round: 6.35 to 6.4. */
function rounded(value: number, digits: number): string {
  const scale = 10 ** digits;
  // The margin takes in halves that binary digits leave just below: 6.35 is 6.3499999999999996.
  const size = Math.round(Math.abs(value) * scale * (1 + 1e-12)) / scale;
  return String(Number((Math.sign(value) * size).toFixed(digits)) + 0);
}

function inSixtyFourths(parts: number): string {
  const size = Math.abs(parts);
  const sign = parts < 0 ? '-' : '';
  const whole = Math.floor(size / 64);
  let [numerator, denominator] = [size % 64, 64];
  if (numerator === 0) return `${sign}${whole}`;
  while (numerator % 2 === 0) [numerator, denominator] = [numerator / 2, denominator / 2];
  return `${sign}${whole > 0 ? `${whole} ` : ''}${numerator}/${denominator}`;
}

function fromNumber(value: number, options: LengthOptions): ParsedLength {
  if (!Number.isFinite(value))
    return refusal(`${value} is not a length; give a finite one, ${suchAs(options.units)}`);
  // Through its digits, so that 0.1 in a file of inches and "0.1in" are the same length to the last bit.
  const quantity = toDecimal(String(value)) ?? { numerator: value, denominator: 1, rest: '' };
  return inRange(value, toMm(quantity, options.units), options);
}

function fromText(typed: string, options: LengthOptions): ParsedLength {
  const text = plainDigits(typed);
  const { units } = options;
  if (text === '') return refusal(`${shown(typed)} is empty; give a length, ${suchAs(units)}`);
  if (/\d,\d/.test(text)) return refusal(withComma(typed, text));
  const quantity = toFraction(text) ?? toDecimal(text);
  if (quantity === undefined) return refusal(`${shown(typed)} is not a length; give one, ${suchAs(units)}`);
  if (quantity === 'no-sense')
    return refusal(`${shown(typed)} has a fraction that makes no sense; give one such as "3 3/8in"`);
  const unit = quantity.rest === '' ? units : unitNamed(quantity.rest);
  if (unit === undefined) return refusal(withUnknownUnit(typed, quantity));
  if (quantity.rest === '' && options.bare === 'number')
    return refusal(
      `${shown(typed)} has no unit; write ${shown(text + units)}${text.includes('/') ? '' : ', or the number without quotes'}`,
    );
  return inRange(typed, toMm(quantity, unit), options);
}

/** Typographic minus, fraction slash, spaces and ready-made fractions (`⅜`) turned into what a keyboard has. */
const plainDigits = (text: string): string =>
  text
    .replace(/[¼-¾⅐-⅞↉]/g, (fraction) => ` ${fraction.normalize('NFKC')}`)
    .replaceAll('\u2044', '/')
    .replaceAll('\u2212', '-')
    .replace(/\s+/g, ' ')
    .trim();

/** `3 3/8in`, `3-3/8"` or `3/8in`; `no-sense` when nothing can be divided so. */
function toFraction(text: string): Quantity | 'no-sense' | undefined {
  const match = /^([+-]?) ?(?:(\d+)(?: | ?- ?))?(\d+) ?\/ ?(\d+)(.*)$/.exec(text);
  if (match === null) return undefined;
  const [, sign, wholeText, over = '', under = '', rest = ''] = match;
  const [numerator, denominator] = [Number(over), Number(under)];
  // 3 9/8 is a slip of the key, not a way to write 4 1/8.
  const isImproper = wholeText !== undefined && numerator >= denominator;
  if (denominator === 0 || isImproper) return 'no-sense';
  const size = Number(wholeText ?? 0) * denominator + numerator;
  return { numerator: sign === '-' ? -size : size, denominator, rest: rest.trim() };
}

/** `86mm`, `.5in`; undefined when the text does not begin with a number. */
function toDecimal(text: string): Quantity | undefined {
  const match = /^([+-]?) ?(\d*)(?:\.(\d*))?(.*)$/.exec(text);
  if (match === null) return undefined;
  const [, sign, whole = '', fraction = '', rest = ''] = match;
  const digits = whole + fraction;
  if (digits === '' || /^e[+-]?\d+$/i.test(rest)) return undefined;
  // Up to 15 digits a double holds the digits exactly, and the powers of ten too.
  const isShort = digits.length <= 15;
  const size = isShort ? Number(digits) : Number(`${whole}.${fraction}`);
  const denominator = isShort ? 10 ** fraction.length : 1;
  return { numerator: sign === '-' ? -size : size, denominator, rest: rest.trim() };
}

type Unit = Units | 'cm';

function unitNamed(typed: string): Unit | undefined {
  const name = typed.toLowerCase();
  if (name === 'mm' || name === 'cm') return name;
  return ['in', 'inch', 'inches', '"', '″', '”', "''"].includes(name) ? 'in' : undefined;
}

/** One division at the end: 254 tenths of a mm to the inch, so no factor is rounded before it is used. */
function toMm({ numerator, denominator }: Quantity, unit: Unit): number {
  if (unit === 'in') return (numerator * 254) / (denominator * 10);
  return (unit === 'cm' ? numerator * 10 : numerator) / denominator;
}

function inRange(typed: unknown, mm: number, options: LengthOptions): ParsedLength {
  const { sign = 'positive', most = mostLength, least: smallest = 0, units } = options;
  if (Math.abs(mm) > most)
    return refusal(`${shown(typed)} is over ${inMm(most)}, which cannot be meant; check the unit`);
  if (mm !== 0 && Math.abs(mm) < smallest)
    return refusal(
      `${shown(typed)} is under ${inMm(smallest)}, which cannot be meant; check the unit${sign === 'positive' ? '' : ', or give 0'}`,
    );
  if (mm < 0 && sign !== 'any') {
    const least = sign === 'positive' ? 'more than 0' : '0 or more';
    return refusal(`${shown(typed)} is negative; give ${least}, ${suchAs(units)}`);
  }
  if (mm === 0 && sign === 'positive')
    return refusal(`${shown(typed)} is no size; give more than 0, ${suchAs(units)}`);
  return { ok: true, mm: mm + 0 };
}

function withComma(typed: string, text: string): string {
  // Three digits after one comma may be thousands: then only the maker knows what to write.
  const isDecimal = text.split(',').length === 2 && !/,\d{3}(?!\d)/.test(text);
  const example = isDecimal ? text.replace(',', '.') : '8.6cm';
  return `${shown(typed)} has a comma in it; write a decimal point, ${isDecimal ? '' : 'as in '}${shown(example)}`;
}

const withUnknownUnit = (typed: string, { rest }: Quantity): string =>
  `${shown(typed)} ends in ${shown(rest)}, which is no unit here; write mm, cm or in, such as "62mm" or "2 1/2in"`;
