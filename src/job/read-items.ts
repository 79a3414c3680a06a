// Items of a job: single motifs, each at a place of its own.
import type { Item } from './resolved-job.ts';
import { optional, type Reader, readKeys, required } from './schema.ts';
import { length, lengthOrZero, number, text } from './schema-values.ts';

export const placeKeys = {
  turn: required('Around', number({ least: 0, most: 1 })),
  along: required('Along the wall', lengthOrZero),
};

const readPlace: Reader<Item['at']> = (value, place) => {
  const keys = readKeys(value, placeKeys, place);
  return keys?.turn === undefined || keys.along === undefined
    ? undefined
    : { turn: keys.turn % 1, along: keys.along };
};

export const itemKeys = {
  file: required('Artwork', text),
  across: required('Across', length()),
  up: optional('Up', length()),
  at: required('Middle', readPlace),
};

export const readItem: Reader<Item> = (value, place) => {
  const keys = readKeys(value, itemKeys, place);
  if (keys?.file === undefined || keys.across === undefined || keys.at === undefined) return undefined;
  const { file, across, up, at } = keys;
  return { file, across, at, ...(up === undefined ? {} : { up }) };
};
