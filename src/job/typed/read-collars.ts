// The collars that are cut with a job, as typed: paper arcs that give level lines before the film is laid.
import type { CollarEdge } from '../../cut/drawings/collar.ts';
import { type CollarLine, type Collars, standardCollar } from './resolved-collars.ts';
import { optional, type Reader, readKeys, required, standard } from './schema.ts';
import { choice, given, length, lengthOrZero, list } from './schema-values.ts';

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
