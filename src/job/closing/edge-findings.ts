// What the finished edges of the band left out of the pattern, told to the maker.

import type { Band } from '../../blank/flat-band.ts';
import { type Finding, look, note } from '../../finding.ts';
import { inMm, smallArea } from '../../lengths/length.ts';
import type { BandHeights, EdgeOptions, EdgesLaid, LeftOut } from '../../pattern/lay/band-edges.ts';
import type { Job } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';

/** What a piece's ends do to the pattern: only those where the whole band ends, at such heights of the laid pattern, are finished edges. */
export const edgeOptions = (
  { edges, film, artwork }: Pick<Job, 'edges' | 'film' | 'artwork'>,
  piece: Band,
  whole: Band,
  heights: BandHeights,
): EdgeOptions => ({
  isFaded: edges === 'fade',
  whole: heights,
  ends: [
    ...(piece.from === whole.from ? (['foot'] as const) : []),
    ...(piece.to === whole.to ? (['lip'] as const) : []),
  ],
  // A mask's artwork is the film that goes: what is small there shows, and nothing has to hold.
  film: film.use === 'mask' ? { minPiece: 0, minWidth: 0 } : film,
  ...(artwork?.together === undefined ? {} : { together: artwork.together }),
});

const pieces = (count: number): string => (count === 1 ? 'one piece' : `${count} pieces`);
const motifs = (count: number): string => (count === 1 ? 'one motif' : `${count} motifs`);

/** What counts as one motif, and how to say otherwise. */
export const togetherWords = (gap: number): string =>
  gap > 0
    ? `pieces up to ${inMm(gap)} apart count as one motif ("together")`
    : 'what does not touch is a motif of its own; where several pieces make one, give how far apart they stand, such as "together": "2mm"';

/** Findings `sliver` and `faded` (note), and `fade-net` (look). */
export function edgeFindings(
  { slivers, faded }: EdgesLaid,
  { film }: Pick<Job, 'film'>,
  file: TypedIn,
): Finding[] {
  const at = ({ turn, along }: LeftOut) => typedAt(file, 'edges', { turn, along });
  return [
    ...slivers.map(({ smallest, ...left }) => ({
      ...note(
        'sliver',
        at(left),
        `a straight cut at the ${left.end} edge would leave ${pieces(left.count)} smaller than this film holds (${film.minPiece} mm² or ${inMm(film.minWidth)} up the wall), the smallest ${smallArea(smallest)}, so that much of the pattern is left out there`,
      ),
      times: left.count,
      size: smallest,
    })),
    ...(faded?.motifs ?? []).map((left) =>
      note(
        'faded',
        at(left),
        `${motifs(left.count)} that the ${left.end} edge would cut ${left.count === 1 ? 'is' : 'are'} left out; ${togetherWords(faded?.together ?? 0)}`,
      ),
    ),
    ...(faded?.hasNet
      ? [
          look(
            'fade-net',
            typedAt(file, 'edges'),
            'the pattern, or a part of it, hangs together all around, so no motif of it can be left out: there it is cut straight; use "whole-rows", a band that ends between rows, or artwork whose motifs stand apart',
          ),
        ]
      : []),
  ];
}
