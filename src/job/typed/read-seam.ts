// The seam of a job, as typed.
import { inMm } from '../../lengths/length.ts';
import { widestStrip } from './read-strips.ts';
import { type Seam, standardOverlap, standardStrip } from './resolved-job.ts';
import { optional, type Place, type Reader, readKeys, report, standard, within } from './schema.ts';
import { choice, given, length, lengthOrZero } from './schema-values.ts';

export const seamKeys = {
  style: standard(
    'Seam',
    choice<Seam['style']>(['butt', 'overlap', 'cut-through', 'strip', 'winding']),
    'overlap',
  ),
  overlap: optional('Overlap', lengthOrZero),
  hold: optional('Least overlap that holds', lengthOrZero),
  strip: optional('Cover strip', length({ most: widestStrip })),
  top: optional('End on top', choice<NonNullable<Seam['top']>>(['finish', 'start'])),
};

/** Styles whose ends meet edge to edge. */
const edgeToEdge: readonly Seam['style'][] = ['butt', 'strip'];

/** What of a seam can't be meant with its style. */
function misfits({ style, overlap, strip, top }: Partial<Seam>, place: Place): boolean {
  if (style !== undefined && edgeToEdge.includes(style) && overlap)
    report(
      within(place, 'overlap'),
      'butt-overlap',
      `${inMm(overlap)} is more than a "${style}" seam has, whose ends meet edge to edge; leave it out, or give the style "overlap"`,
    );
  else if (style === 'cut-through' && overlap === 0)
    report(
      within(place, 'overlap'),
      'nothing-to-cut',
      'leaves nothing to cut through; give 4 to 10 mm, or the style "butt"',
    );
  else if (style !== 'strip' && strip !== undefined)
    report(
      within(place, 'strip'),
      'strip-without',
      `is the width of a cover strip, and a "${style}" seam has none; leave it out, or give the style "strip"`,
    );
  else if (top !== undefined && style !== 'overlap')
    report(
      within(place, 'top'),
      'top-without',
      `tells which end lies on top, and a "${style}" seam has no choice of it; leave it out, or give the style "overlap"`,
    );
  else return false;
  return true;
}

export const readSeam: Reader<Seam> = (value, place) => {
  const keys = readKeys(value, seamKeys, place);
  if (keys === undefined) return undefined;
  const { style, hold, strip, top, overlap = edgeToEdge.includes(style) ? 0 : standardOverlap } = keys;
  if (misfits({ style, overlap, ...given({ strip, top }) }, place)) return undefined;
  return {
    style,
    overlap,
    ...given({ hold, top }),
    ...(style === 'strip' ? { strip: strip ?? standardStrip } : {}),
  };
};
