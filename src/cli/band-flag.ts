// A band along the wall, as typed on the command line.
import type { Job } from '../job/typed/resolved-job.ts';
import type { FlagLengths } from './flag-lengths.ts';

/** `from..to`, two lengths. */
export function bandOf(text: string | undefined, lengths: FlagLengths): Job['band'] {
  if (text === undefined) return undefined;
  const [from, to, ...rest] = text.split('..');
  if (!from?.trim() || !to?.trim() || rest.length > 0)
    return lengths.refuse(
      '--band',
      `"${text}" is not a band; give two lengths along the wall, such as 12..130`,
    );
  const band = { from: lengths.read('--band', from), to: lengths.read('--band', to, 'positive') };
  if (band.from === undefined || band.to === undefined) return undefined;
  if (band.from >= band.to)
    return lengths.refuse('--band', `"${text}" is upside down; give the lower height first, such as 12..130`);
  return { from: band.from, to: band.to };
}
