// Items of a job: single motifs, each at a place of its own.
import type { Item } from './resolved-job.ts';
import { optional, type Reader, readKeys, required, standard } from './schema.ts';
import { choice, given, length, lengthOrZero, number, text, yesOrNo } from './schema-values.ts';

export const placeKeys = {
  turn: required('Around', number({ least: 0, most: 1 })),
  along: required('Along the wall', lengthOrZero),
};

export const readPlace: Reader<Item['at']> = (value, place) => {
  const keys = readKeys(value, placeKeys, place);
  return keys?.turn === undefined || keys.along === undefined
    ? undefined
    : { turn: keys.turn % 1, along: keys.along };
};

/** How a motif is laid, whatever kind it is. */
export const layKeys = {
  apart: optional('Cut apart', yesOrNo),
  clear: optional('Kept clear around it', lengthOrZero),
};

export const readLay = choice<Item['lay']>(['rigid', 'even', 'conformal']);

export const itemKeys = {
  file: required('Artwork', text),
  across: required('Across', length()),
  up: optional('Up', length()),
  at: required('Middle', readPlace),
  lay: standard('Lay', readLay, 'rigid'),
  ...layKeys,
};

export const readItem: Reader<Item> = (value, place) => {
  const keys = readKeys(value, itemKeys, place);
  if (keys?.file === undefined || keys.across === undefined || keys.at === undefined) return undefined;
  const { file, across, at, lay, up, apart, clear } = keys;
  return { file, across, at, lay, ...given({ up, apart, clear }) };
};
