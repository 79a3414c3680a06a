// A motif of a job, whatever kind it is: read, and where it is to lie.
import type { Finding } from '../../finding.ts';
import type { Motif, MotifPlace } from '../../pattern/rigid/motif.ts';
import type { Footprint } from '../../unroll/footprint.ts';
import type { Job, Lettering } from './resolved-job.ts';

/** What only one kind of motif has. */
export interface ToldMotif {
  readonly file?: string;
  readonly text?: string;
  readonly font?: string;
  /** Height of capitals as it came to be, mm. */
  readonly capHeight?: number;
}

/** A motif read, and where it is to lie. */
export interface PlacedMotif extends MotifPlace {
  /** Stem of its own files, and the name of its layers on a wrap, such as `item-1`. */
  readonly name: string;
  /** The key it was typed at. */
  readonly key: string;
  /** What the maker knows it by: its file, or its text in quotes. */
  readonly says: string;
  /** What the report tells of it besides its place. */
  readonly told: ToldMotif;
  readonly motif: Motif;
  /** Size of its frame, mm. */
  readonly size: Footprint;
  /** Whether it is cut as a piece of its own, and not with the wrap. */
  readonly isApart: boolean;
  /** How far around it the pattern under it is taken away, mm; left out, it lies on the pattern. */
  readonly clear?: number;
  readonly findings: readonly Finding[];
}

/** Motifs are cut apart where there is no pattern to cut them with; a mask is one sheet with everything cut out of it. */
export const cutApart = ({ artwork, film }: Pick<Job, 'artwork' | 'film'>, typed?: boolean): boolean =>
  typed ?? (artwork === undefined && film.use === 'decal');

/** Whether all that decorates is cut apart: the wrap is then a plain template of paper, to try and to lay it by. */
export function decoratesApart(job: Pick<Job, 'artwork' | 'film' | 'items' | 'lettering'>): boolean {
  const motifs = [...(job.items ?? []), ...(job.lettering ?? []).filter(isThere)];
  return job.artwork === undefined && motifs.length > 0 && motifs.every(({ apart }) => cutApart(job, apart));
}

/** Whether there is anything of a text: one that may be left out is, where it is empty. */
export const isThere = ({ text }: Pick<Lettering, 'text'>): boolean => text.trim() !== '';
