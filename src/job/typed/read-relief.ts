// Relief cuts of a job, as typed.
import type { Relief } from './resolved-mask.ts';
import { type Reader, readKeys, report, standard, within } from './schema.ts';
import { length } from './schema-values.ts';

export const reliefKeys = {
  every: standard('Strips about', length(), 40),
  clear: standard('Clear of what stays', length(), 0.5),
};

/** Film in narrower strips is shreds, mm. */
const leastStrip = 2;

export const readRelief: Reader<Relief> = (value, place) => {
  const keys = readKeys(value, reliefKeys, place);
  if (!keys || keys.every >= leastStrip) return keys;
  const says = `${keys.every} mm is narrower than film is cut in strips; give ${leastStrip} mm or more`;
  return report(within(place, 'every'), 'not-a-length', says);
};
