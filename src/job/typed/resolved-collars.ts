// The collars that a job asks for: paper arcs that give level lines before the film is laid.
import { standardPaper } from '../../blank/paper-fit.ts';
import type { CollarEdge } from '../../cut/drawings/collar.ts';

/** What holds where the maker says nothing else, mm. */
export const standardCollar = { width: 20, paper: standardPaper, tab: 10 };

/** A level line, mm along, and which edge of the paper runs on it. */
export interface CollarLine {
  readonly along: number;
  /** Left out: the one that keeps the paper on the band. */
  readonly edge?: CollarEdge;
}

export interface Collars {
  /** Left out: both edges of the band. */
  readonly at?: readonly CollarLine[];
  /** Across the paper, its thickness, and the tab past the seam, mm. */
  readonly width: number;
  readonly paper: number;
  readonly overlap: number;
}

/** Collars with their lines and edges told: unless said otherwise, paper lies on the band. */
export function collarsOn(
  { at, ...rest }: Collars,
  band: { readonly from: number; readonly to: number },
): Collars & Required<Pick<Collars, 'at'>> {
  const middle = (band.from + band.to) / 2;
  const lines = at ?? [{ along: band.from }, { along: band.to }];
  const edgeOf = (along: number): CollarEdge => (along < middle ? 'lower' : 'upper');
  return { ...rest, at: lines.map(({ along, edge = edgeOf(along) }) => ({ along, edge })) };
}
