// Plain numbers (counts, shares, areas) as they stand in a file.
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
