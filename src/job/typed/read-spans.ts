// From and to: a stretch up the wall, or around it.
import { inMm } from '../../lengths/length.ts';
import { type Reader, readKeys, report, required } from './schema.ts';
import { length, lengthOrZero, number } from './schema-values.ts';

export interface Span {
  readonly from: number;
  readonly to: number;
}

export const alongKeys = {
  from: required('Where it begins, along the wall', lengthOrZero),
  to: required('Where it ends, along the wall', length()),
};

/** A stretch of wall, mm along; it may not be upside down. */
export const readAlong: Reader<Span> = (value, place) => {
  const keys = readKeys(value, alongKeys, place);
  if (keys?.from === undefined || keys.to === undefined) return undefined;
  const { from, to } = keys;
  if (from < to) return { from, to };
  const says = `runs from ${inMm(from)} to ${inMm(to)}; give a "to" above its "from"`;
  return report(place, 'upside-down', says);
};

const turn = number({ least: 0, most: 1 });

const turnKeys = { from: required('Turn where it begins', turn), to: required('Turn where it ends', turn) };

/** A run around the wall, each end 0 to 1; from over to runs through turn 0. */
export const readTurn: Reader<Span> = (value, place) => {
  const keys = readKeys(value, turnKeys, place);
  if (keys?.from === undefined || keys.to === undefined) return undefined;
  const { from, to } = keys;
  if (from !== to) return { from, to };
  return report(place, 'no-width', `starts and ends at turn ${from}; leave "turn" out for all around`);
};
