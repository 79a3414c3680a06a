// How a template is to be cut, as typed: one piece, stacked pieces or gores.
import type { GoresAsked } from '../job/plan/gore-plan.ts';
import { goreCounts } from '../job/typed/resolved-job.ts';
import type { FlagLengths } from './flag-lengths.ts';

export interface GoreFlags {
  readonly pieces: string;
  readonly gores?: string;
  readonly joined?: string;
  readonly strip?: string;
}

const isOneOf = <T extends string>(value: string, all: readonly T[]): value is T =>
  all.some((one) => one === value);

const waysOfPieces = ['one', 'stacked', 'gores', 'darts'] as const;
const waysOfJoining = ['foot', 'lip', 'loose'] as const;
const standardStrip = 5;
/** A narrower strip tears when the comb is lifted. Common practice, no source. */
const leastStrip = 1;

export function piecesOf(flags: GoreFlags, lengths: FlagLengths): (typeof waysOfPieces)[number] {
  const { pieces, gores, joined, strip } = flags;
  if (!isOneOf(pieces, waysOfPieces)) {
    lengths.refuse('--pieces', `"${pieces}" is not a way to cut it; give one, stacked, gores or darts`);
    return 'one';
  }
  const needless = Object.entries({ '--gores': gores, '--joined': joined, '--strip': strip });
  if (pieces === 'darts' && strip !== undefined)
    lengths.refuse('--strip', 'darts end by themselves where film lies down; leave --strip out');
  if (pieces !== 'gores' && pieces !== 'darts')
    for (const [flag, value] of needless)
      if (value !== undefined)
        lengths.refuse(flag, `"${value}" is for gores only; add --pieces gores, or leave ${flag} out`);
  return pieces;
}

export function goresOf(flags: GoreFlags, lengths: FlagLengths): GoresAsked {
  const isDarts = flags.pieces === 'darts';
  const { gores, joined = isDarts ? 'foot' : 'loose', strip } = flags;
  const { least, most } = goreCounts;
  const count = gores === undefined ? undefined : Number(gores);
  if (count !== undefined && !(Number.isInteger(count) && count >= least && count <= most))
    lengths.refuse(
      '--gores',
      `"${gores}" is not a number of gores; give a whole number from ${least} to ${most}`,
    );
  if (!isOneOf(joined, waysOfJoining)) {
    lengths.refuse('--joined', `"${joined}" is not a way to join gores; give foot, lip or loose`);
    return { joined: 'loose', strip: 0 };
  }
  if (isDarts && joined === 'loose')
    lengths.refuse('--joined', 'darts leave one edge whole; give foot or lip');
  if (isDarts) return { ...(count === undefined ? {} : { count }), joined, strip: 'longest' };
  if (joined === 'loose' && strip !== undefined)
    lengths.refuse(
      '--strip',
      `"${strip}" joins nothing while gores are loose; add --joined foot or --joined lip`,
    );
  const wide = lengths.read('--strip', strip, 'positive') ?? standardStrip;
  if (wide < leastStrip)
    lengths.refuse(
      '--strip',
      `"${strip}" is too narrow to hold gores together; give ${leastStrip} mm or more`,
    );
  return { ...(count === undefined ? {} : { count }), joined, strip: joined === 'loose' ? 0 : wide };
}
