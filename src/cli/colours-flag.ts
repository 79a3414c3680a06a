// `--colours N`: in how many colours a picture made of pixels is traced.
import { mostColours, type TraceOptions } from '../job/tracing.ts';
import type { FlagLengths } from './flag-lengths.ts';

export const coloursOf = (typed: string | undefined, lengths: FlagLengths): number | undefined => {
  if (typed === undefined) return undefined;
  const colours = /^\d+$/.test(typed) ? Number(typed) : 0;
  if (colours >= 2 && colours <= mostColours) return colours;
  return lengths.refuse('--colours', `"${typed}" is no number of colours here; give 2 to ${mostColours}`);
};

/** What of size and colours was given. */
export const traceOf = ({
  across,
  colours,
}: Record<'across' | 'colours', number | undefined>): TraceOptions => ({
  ...(across === undefined ? {} : { across }),
  ...(colours === undefined ? {} : { colours }),
});
