// Plain numbers (counts, shares, areas) as they are typed.
import { shown } from './shown.ts';

export interface NumberOptions {
  /** Least value allowed. */
  readonly least: number;
  /** Greatest value allowed. */
  readonly most: number;
  /** Whether only whole numbers are allowed; default false. */
  readonly whole?: boolean;
}

export type ParsedNumber =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly says: string };

/** A number within its bounds, or a sentence that names the value as typed and the bounds. Text is refused. */
export function parseNumber(value: unknown, { least, most, whole = false }: NumberOptions): ParsedNumber {
  const fits = typeof value === 'number' && value >= least && value <= most;
  if (fits && (!whole || Number.isInteger(value))) return { ok: true, value: value + 0 };
  const kind = whole ? 'a whole number' : 'a number';
  return { ok: false, says: `${shown(value)} will not do here; give ${kind} from ${least} to ${most}` };
}

/** How a share is written in percent: `2%`, `2.5 %`, and as spreadsheets of many countries have it, `2,5 %`. */
const percent = /^\+?(\d*[.,]?\d+)\s*%$/;

/** A share of a whole, from 0 to `most`: as a number, `0.02`, or in percent, `"2%"`; else a sentence that says so. */
export function parseShare(value: unknown, most: number): ParsedNumber {
  const typed = typeof value === 'string' ? percent.exec(value.trim())?.[1] : undefined;
  const share = typed === undefined ? value : Number(typed.replace(',', '.')) / 100;
  if (typeof share === 'number' && share >= 0 && share <= most) return { ok: true, value: share + 0 };
  const says = `${shown(value)} will not do here; give a share of it, from 0 to ${most}, or "0%" to "${most * 100}%"`;
  return { ok: false, says };
}
