// Cover strips on a pattern, as typed: how wide, and where they were worked out to lie.

import { standardStrip } from './resolved-job.ts';
import { optional, type Reader, readKeys, standard } from './schema.ts';
import { given, length, lengthOrZero, list, number } from './schema-values.ts';
import type { AskedStrips } from './strips.ts';

/** A strip wider than this is no strip, mm. Common practice, no source. */
export const widestStrip = 100;

/** `turns` and `along` are there in a job that was worked out, so that its strips can be proved. */
export const stripsKeys = {
  width: standard('Cover strips', length({ most: widestStrip }), standardStrip),
  turns: optional('Turns of cover strips', list(number({ least: 0, most: 1 }))),
  along: optional('Heights of cover strips', list(lengthOrZero)),
};

export const readStrips: Reader<AskedStrips> = (value, place) => {
  const keys = readKeys(value, stripsKeys, place);
  return keys && { width: keys.width, ...given({ turns: keys.turns, along: keys.along }) };
};
