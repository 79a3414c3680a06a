// The seam of a job, as typed.
import { inMm } from '../lengths/length.ts';
import type { Job } from './resolved-job.ts';
import { standardOverlap } from './resolved-job.ts';
import { optional, type Reader, readKeys, report, standard, within } from './schema.ts';
import { choice, given, later, lengthOrZero } from './schema-values.ts';

export const seamKeys = {
  style: standard(
    'Seam',
    choice<'butt' | 'overlap'>(['butt', 'overlap'], ['cut-through', 'winding', 'strip']),
    'overlap',
  ),
  overlap: optional('Overlap', lengthOrZero),
  hold: optional('Least overlap that holds', lengthOrZero),
  strip: optional('Cover strip', later('leave it out, and use a "butt" or an "overlap" seam')),
};

export const readSeam: Reader<Job['seam']> = (value, place) => {
  const keys = readKeys(value, seamKeys, place);
  if (keys === undefined) return undefined;
  const { style, hold, overlap = style === 'butt' ? 0 : standardOverlap } = keys;
  if (style !== 'butt' || overlap === 0) return { style, overlap, ...given({ hold }) };
  const says = `${inMm(overlap)} is more than a "butt" seam has; leave it out, or give the style "overlap"`;
  return report(within(place, 'overlap'), 'butt-overlap', says);
};
