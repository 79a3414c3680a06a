// Places on the wall that have to be kept clear: weld lines, dents, marks, lids, threads, windows.
import { type Finding, stop } from '../finding.ts';
import { inMm } from '../lengths/length.ts';

export const keepOutKinds = ['weld line', 'dent', 'embossed mark', 'lid', 'thread', 'window'] as const;
export type KeepOutKind = (typeof keepOutKinds)[number];

export interface KeepOut {
  readonly what: KeepOutKind;
  /** From and to around the wall, each 0 to 1; from over to runs through turn 0. Left out: all around. */
  readonly turn?: { readonly from: number; readonly to: number };
  /** From and to up the wall, mm. Left out: from foot to lip. */
  readonly along?: { readonly from: number; readonly to: number };
}

/** What keeps these from standing on a wall so long, mm (rule `keep-out-outside`); keys as typed in the blank. */
export const keepOutProblems = (keepOuts: readonly KeepOut[], length: number): readonly Finding[] =>
  keepOuts.flatMap(({ what, along }, index) => {
    if (along === undefined || along.from < length) return [];
    const says = `${inMm(along.from)} is past the lip, and so no ${what} of this wall, which is ${inMm(length)} along; count from the foot corner`;
    return [stop('keep-out-outside', { key: `keepOut[${index}].along.from` }, says)];
  });
