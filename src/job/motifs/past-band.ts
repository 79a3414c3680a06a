// Motifs that the picture of the finished vessel can't show whole: it shows the band that a wrap goes around.
import type { Band } from '../../blank/flat-band.ts';
import { type Finding, note } from '../../finding.ts';
import { precision } from '../../geometry/tolerance.ts';
import { inMm } from '../../lengths/length.ts';
import { bandOnWall } from '../plan/on-sheet.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';
import type { LaidMotif } from './laid-apart.ts';

/** Notes `past-band`, of motifs that are cut apart and lie past the `band` of all pieces together, mm along the bare wall. */
export const pastBand = (laid: readonly LaidMotif[], band: Band, jobFile: TypedIn): readonly Finding[] =>
  laid.flatMap(({ placed: { says, key, at, isApart }, reach, lengths }) => {
    const { from, to } = bandOnWall(reach, lengths);
    if (!isApart || (from > band.from - precision && to < band.to + precision)) return [];
    const lies = to < band.from || from > band.to ? 'lies' : 'reaches';
    const why = `${says} ${lies} past the band of the wrap, ${inMm(band.from)} to ${inMm(band.to)} along, and what lies past it is not in the picture of the vessel; give a "band" that holds it to see it there`;
    return [note('past-band', typedAt(jobFile, `${key}.at`, at), why)];
  });
