// `--colours N`, in how many colours a picture made of pixels is traced; `--ground COLOUR`, which of artwork are not cut.
import { mostColours, type TraceOptions } from '../job/typed/tracing.ts';
import type { FlagLengths } from './flag-lengths.ts';

export const coloursOf = (typed: string | undefined, lengths: FlagLengths): number | undefined => {
  if (typed === undefined) return undefined;
  const colours = /^\d+$/.test(typed) ? Number(typed) : 0;
  if (colours >= 2 && colours <= mostColours) return colours;
  return lengths.refuse('--colours', `"${typed}" is no number of colours here; give 2 to ${mostColours}`);
};

/** Colours of the ground as typed, in the words of files. */
export const groundOf = (typed: readonly string[] = [], lengths: FlagLengths): readonly string[] =>
  typed.flatMap((one) =>
    /^#[0-9a-f]{6}$/i.test(one)
      ? [one.toLowerCase()]
      : (lengths.refuse(
          '--ground',
          `"${one}" will not do here; give a colour such as "#17566b", in quotes`,
        ) ?? []),
  );

/** What of size, colours and ground was given. */
export const traceOf = ({
  across,
  colours,
  ground,
}: Record<'across' | 'colours', number | undefined> & {
  readonly ground: readonly string[];
}): TraceOptions => ({
  ...(across === undefined ? {} : { across }),
  ...(colours === undefined ? {} : { colours }),
  ...(ground.length === 0 ? {} : { ground }),
});
