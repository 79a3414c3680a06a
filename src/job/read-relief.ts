// Relief cuts of a job, as typed.
import type { Relief } from './resolved-mask.ts';
import { type Reader, readKeys, standard } from './schema.ts';
import { length } from './schema-values.ts';

export const reliefKeys = {
  every: standard('Strips about', length(), 40),
  clear: standard('Clear of what stays', length(), 0.5),
};

export const readRelief: Reader<Relief> = (value, place) => readKeys(value, reliefKeys, place);
