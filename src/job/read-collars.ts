// The collars that are cut with a job, as typed: paper arcs that give level lines before the film is laid.
import type { CollarEdge } from '../cut/collar.ts';
import { standardCollar } from './collar-plan.ts';
import { optional, type Reader, readKeys, required, standard } from './schema.ts';
import { choice, given, length, lengthOrZero, list } from './schema-values.ts';

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

const lineKeys = {
  along: required('Level line, along the wall', lengthOrZero),
  edge: optional('Edge of the paper on it', choice<CollarEdge>(['upper', 'lower'])),
};

const readLine: Reader<CollarLine> = (value, place) => {
  if (typeof value === 'number' || typeof value === 'string') {
    const along = lengthOrZero(value, place);
    return along === undefined ? undefined : { along };
  }
  const keys = readKeys(value, lineKeys, place);
  return keys?.along === undefined ? undefined : { along: keys.along, ...given({ edge: keys.edge }) };
};

export const collarKeys = {
  at: optional('Level lines of collars', list(readLine)),
  width: standard('Width of a collar', length(), standardCollar.width),
  paper: standard('Thickness of its paper', lengthOrZero, standardCollar.paper),
  overlap: standard('Tab of a collar', lengthOrZero, standardCollar.tab),
};

export const readCollars: Reader<Collars> = (value, place) => {
  const keys = readKeys(value, collarKeys, place);
  if (keys === undefined) return undefined;
  const { at, ...rest } = keys;
  return { ...rest, ...given({ at }) };
};

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
