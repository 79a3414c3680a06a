// What clearing the pattern around motifs left out: told to the maker, and how far around each the pattern is gone in fact.
import type { Band } from '../../blank/flat-band.ts';
import { type Finding, note } from '../../finding.ts';
import { inMm, smallArea } from '../../lengths/length.ts';
import type { FilmLimits } from '../../pattern/lay/edge-slivers.ts';
import type { ClearSliver } from '../../pattern/seam/clear-slivers.ts';
import { type FlatWall, girthAt, type WallPoint } from '../../unroll/flat-wall.ts';
import type { MakeInput } from '../make-input.ts';
import type { Film } from '../typed/material.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';
import { typedAt } from '../typed/typed-at.ts';

/**
 * The least that clearing may leave of a pattern: what the film holds. Of a mask the pattern is the film that goes, so nothing of it has to
 * hold, but an opening has to be cut: one that no square of the least gap's width lies in twice shows as a dot, if at all.
 */
export const leastLeft = ({ use, minPiece, minWidth, minGap }: Film): FilmLimits =>
  use === 'mask' ? { minPiece: 2 * minGap ** 2, minWidth: minGap } : { minPiece, minWidth };

/** Findings `clear-sliver`, one a motif. */
export const clearFindings = (
  { job: { film }, jobFile }: Pick<MakeInput, 'job' | 'jobFile'>,
  motifs: readonly PlacedMotif[],
  leftOut: readonly ClearSliver[],
): Finding[] =>
  motifs.flatMap(({ name, key, says }) => {
    const own = leftOut.filter((sliver) => sliver.name === name);
    if (own.length === 0) return [];
    const smallest = Math.min(...own.map(({ area }) => area));
    const [piece, than] =
      film.use === 'mask'
        ? ['opening', `a blade opens clean (${inMm(film.minGap)})`]
        : ['piece', `this film holds (${film.minPiece} mm²)`];
    const what =
      own.length === 1
        ? `one ${piece} smaller than ${than}, ${smallArea(smallest)}; it is left out`
        : `${own.length} ${piece}s smaller than ${than}, the smallest ${smallArea(smallest)}; they are left out`;
    const finding = note(
      'clear-sliver',
      typedAt(jobFile, `${key}.clear`),
      `clearing around ${says} would leave ${what}`,
    );
    return [{ ...finding, times: own.length, size: smallest }];
  });

/** How far around a motif, whose reach is given, the pattern is gone, mm: what is asked, or as far as what was left out went. */
export function clearedBy(
  { name, clear }: { readonly name: string; readonly clear: number },
  reach: Band & { readonly turns: Band },
  wall: FlatWall,
  leftOut: readonly ClearSliver[],
): number {
  const away = (value: number, { from, to }: Band): number => Math.max(from - value, value - to, 0);
  const awayOf = ({ turn, along }: WallPoint): number =>
    Math.max(away(along, reach), away(turn, reach.turns) * girthAt(wall, along));
  const places = leftOut.filter((sliver) => sliver.name === name).flatMap((sliver) => sliver.places);
  return places.reduce((most, place) => Math.max(most, awayOf(place)), clear);
}
